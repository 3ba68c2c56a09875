//! Sums of one lens, of two, and of many readings.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{lens, number, readings};
use super::shared::{blur, dioptres, mind, nearest, sized};
use crate::format::{plain, signed};
use crate::{
    CrossedCylinders, Line, Meridian, PowerVector, SphereCyl, Spread, Step, contact, limits,
    off_axis, spread, vertex,
};
use ::words::optics::sums_lens as say;

const LENS: Ask = Ask::new("lens", say::ask_lens, "+2.00 / −1.00 × 30", Kind::Lens);

/// One lens in every form.
pub(super) const FORMS: Sum = Sum {
    slug: "forms",
    name: say::title_forms,
    about: say::about_forms,
    asks: &[LENS],
    answer: forms,
};

fn forms(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lens = asked.need(&LENS, lens)?;
    let vector = lens.vector();
    let mut lines = vec![
        Line::new(say::minus_cylinder(), lens.minus_form()),
        Line::new(say::plus_cylinder(), lens.plus_form()),
        Line::new(say::crossed_cylinders(), CrossedCylinders::from(lens)),
    ];
    for principal in lens.principal() {
        lines.push(Line::new(
            say::along(&principal.meridian.name()),
            dioptres(principal.power),
        ));
    }
    lines.extend([
        Line::new(say::mean_sphere(), dioptres(lens.mean_sphere())),
        Line::new(say::vector(), parts(vector)),
        Line::new(say::all_as_blur(), blur(vector.blur_strength())),
        Line::new(say::cylinder_as_blur(), blur(vector.astigmatism())),
    ]);
    lines.extend(nearest(&lens));
    let eighth = lens.rounded(Step::Eighth);
    lines.push(Line::new(say::nearest_eighth(), eighth.value));
    if vertex::matters(&lens) {
        lines.push(mind(say::strong()));
    }
    Ok(lines)
}

/// The three parts of a lens that add.
fn parts(vector: PowerVector) -> String {
    [vector.m, vector.j0, vector.j45]
        .map(|part| signed(part, 2))
        .join(", ")
}

const MERIDIAN: Ask = Ask::new(
    "meridian",
    say::ask_meridian,
    "60°",
    Kind::Number(limits::MERIDIAN),
);

/// The power along one meridian.
pub(super) const ALONG: Sum = Sum {
    slug: "along",
    name: say::title_along,
    about: say::about_along,
    asks: &[LENS, MERIDIAN],
    answer: along,
};

fn along(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lens = asked.need(&LENS, lens)?;
    let meridian = Meridian::new(asked.need(&MERIDIAN, number)?)?;
    let along = |meridian: Meridian| {
        let power = lens.power_along(meridian.degrees());
        Line::new(say::along(&meridian.name()), dioptres(power))
    };
    let mut lines = vec![Line::new(say::sphere(), dioptres(lens.sphere))];
    if let Some(cylinder) = lens.cylinder {
        let from_axis = meridian.apart(cylinder.axis().power_meridian().crossed());
        let part = lens.power_along(meridian.degrees()) - lens.sphere;
        lines.push(Line::new(
            say::of_the_cylinder(&plain(from_axis, 1)),
            say::part_of_it(&plain(part / cylinder.power(), 3), &dioptres(part)),
        ));
    }
    lines.extend([along(meridian), along(meridian.crossed())]);
    Ok(lines)
}

const FIRST: Ask = Ask::new(
    "first",
    say::ask_first_lens,
    "+2.00 / −1.00 × 30",
    Kind::Lens,
);
const SECOND: Ask = Ask::new(
    "second",
    say::ask_second_lens,
    "−0.50 / −0.75 × 90",
    Kind::Lens,
);

/// Two lenses together, and what is between them.
pub(super) const TWO: Sum = Sum {
    slug: "two",
    name: say::title_two,
    about: say::about_two,
    asks: &[FIRST, SECOND],
    answer: two,
};

fn two(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (first, second) = (asked.need(&FIRST, lens)?, asked.need(&SECOND, lens)?);
    let together = contact::together(&[first, second])?;
    let [rounded, lost] = nearest(&together);
    Ok(vec![
        Line::new(say::together(), together),
        rounded,
        lost,
        Line::new(
            say::second_less_first(),
            contact::left_over(&second, &first)?,
        ),
        Line::new(
            say::apart(),
            blur(first.vector().distance(&second.vector())),
        ),
    ])
}

const MEANT: Ask = Ask::new(
    "lens",
    say::ask_lens_meant,
    "−2.00 / −3.00 × 180",
    Kind::Lens,
);
const TURN: Ask = Ask::new("turn", say::ask_turn, "10°", Kind::Number(limits::TURN));
const FOUND_OVER: Ask = Ask::new(
    "over",
    say::ask_lens_found_over_it,
    "+0.50 / −1.00 × 140",
    Kind::Lens,
)
.or(say::or_nothing_over);

/// A lens that does not stand where it was meant to.
pub(super) const OFF_AXIS: Sum = Sum {
    slug: "off-axis",
    name: say::title_off_axis,
    about: say::about_off_axis,
    asks: &[MEANT, TURN, FOUND_OVER],
    answer: turned,
};

fn turned(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let meant = asked.need(&MEANT, lens)?;
    let by = asked.need(&TURN, number)?;
    let residual = off_axis::residual(&meant, by)?;
    let mut lines = vec![
        Line::new(say::as_it_stands(), off_axis::turned(&meant, by)?),
        Line::new(say::left_over(), residual),
        Line::new(say::that_is(), blur(residual.vector().blur_strength())),
    ];
    if let Some(over) = asked.find(&FOUND_OVER, lens)? {
        let order = off_axis::to_order(&meant, by, &over)?;
        lines.extend([
            Line::new(say::refraction(), off_axis::refraction(&meant, by, &over)?),
            Line::new(say::to_order(), order),
        ]);
        lines.extend(nearest(&order));
    }
    Ok(lines)
}

const SEVERAL: Ask = Ask::new(
    "readings",
    say::ask_readings,
    "−1.00 / −0.50 × 175; −1.25 / −0.75 × 5; −1.50 / −0.50 × 10",
    Kind::Readings,
);

/// Repeated readings of one eye.
pub(super) const READINGS: Sum = Sum {
    slug: "readings",
    name: say::title_readings,
    about: say::about_readings,
    asks: &[SEVERAL],
    answer: mean_and_scatter,
};

fn mean_and_scatter(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let readings = asked.need(&SEVERAL, readings)?;
    let mean = spread::mean(&readings)?;
    let mut lines = vec![
        Line::new(say::readings(), readings.len()),
        Line::new(say::mean(), mean),
    ];
    lines.extend(nearest(&mean));
    if readings.len() > 1 {
        lines.extend(scatter(&Spread::of(&readings)?));
    }
    Ok(lines)
}

fn scatter(spread: &Spread) -> Vec<Line> {
    let [low, high] = spread.limits_of_one();
    let mean = SphereCyl::from(spread.mean());
    vec![
        Line::new(say::mean_sphere(), dioptres(mean.mean_sphere())),
        Line::new(say::deviation(), sizes(spread.deviations())),
        Line::new(say::one_more(), range(low.m, high.m)),
        Line::new(say::and_j0(), range(low.j0, high.j0)),
        Line::new(say::and_j45(), range(low.j45, high.j45)),
    ]
}

fn sizes(vector: PowerVector) -> String {
    [vector.m, vector.j0, vector.j45].map(sized).join(", ")
}

fn range(low: f64, high: f64) -> String {
    say::range(&signed(low, 2), &signed(high, 2))
}
