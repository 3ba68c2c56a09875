//! Sums of one lens, of two, and of many readings.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{lens, number, readings};
use super::shared::{blur, dioptres, nearest, size};
use crate::format::{plain, signed};
use crate::{
    CrossedCylinders, Line, Meridian, PowerVector, SphereCyl, Spread, Step, contact, limits,
    off_axis, spread, vertex,
};

const LENS: Ask = Ask::new("lens", "lens", "+2.00 / −1.00 × 30", Kind::Lens);

/// One lens in every form.
pub(super) const FORMS: Sum = Sum {
    slug: "forms",
    name: "A lens in every form",
    about: "The same lens in minus and plus cylinder, as crossed cylinders, in its parts, and on the trial-lens step.",
    asks: &[LENS],
    answer: forms,
};

fn forms(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lens = asked.need(&LENS, lens)?;
    let vector = lens.vector();
    let mut lines = vec![
        Line::new("minus cylinder", lens.minus_form()),
        Line::new("plus cylinder", lens.plus_form()),
        Line::new("two crossed cylinders", CrossedCylinders::from(lens)),
    ];
    for principal in lens.principal() {
        lines.push(Line::new(
            format!("along {}", principal.meridian.name()),
            dioptres(principal.power),
        ));
    }
    lines.extend([
        Line::new("mean sphere", dioptres(lens.mean_sphere())),
        Line::new("vector M, J0, J45", parts(vector)),
        Line::new("all of it as blur", blur(vector.blur_strength())),
        Line::new("the cylinder as blur", blur(vector.astigmatism())),
    ]);
    lines.extend(nearest(&lens));
    let eighth = lens.rounded(Step::Eighth);
    lines.push(Line::new("to the nearest eighth", eighth.value));
    if vertex::matters(&lens) {
        lines.push(Line::new(
            "mind",
            "strong enough for its vertex distance to be written down",
        ));
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
    "meridian",
    "60°",
    Kind::Number(limits::MERIDIAN),
);

/// The power along one meridian.
pub(super) const ALONG: Sum = Sum {
    slug: "along",
    name: "Power along a meridian",
    about: "What a lens does along one meridian; not for prism, since off its own meridians a lens also bends sideways.",
    asks: &[LENS, MERIDIAN],
    answer: along,
};

fn along(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lens = asked.need(&LENS, lens)?;
    let meridian = Meridian::new(asked.need(&MERIDIAN, number)?)?;
    let along = |meridian: Meridian| {
        let power = lens.power_along(meridian.degrees());
        Line::new(format!("along {}", meridian.name()), dioptres(power))
    };
    let mut lines = vec![Line::new("sphere", dioptres(lens.sphere))];
    if let Some(cylinder) = lens.cylinder {
        let from_axis = meridian.apart(cylinder.axis().power_meridian().crossed());
        let part = lens.power_along(meridian.degrees()) - lens.sphere;
        lines.push(Line::new(
            format!(
                "of the cylinder, at {} degrees from its axis",
                plain(from_axis, 1)
            ),
            format!(
                "{} of it, {}",
                plain(part / cylinder.power(), 3),
                dioptres(part)
            ),
        ));
    }
    lines.extend([along(meridian), along(meridian.crossed())]);
    Ok(lines)
}

const FIRST: Ask = Ask::new("first", "first lens", "+2.00 / −1.00 × 30", Kind::Lens);
const SECOND: Ask = Ask::new("second", "second lens", "−0.50 / −0.75 × 90", Kind::Lens);

/// Two lenses together, and what is between them.
pub(super) const TWO: Sum = Sum {
    slug: "two",
    name: "Two lenses together, and their difference",
    about: "What two lenses do in contact, and the lens that makes the second of the first; cylinders may cross.",
    asks: &[FIRST, SECOND],
    answer: two,
};

fn two(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (first, second) = (asked.need(&FIRST, lens)?, asked.need(&SECOND, lens)?);
    let together = contact::together(&[first, second])?;
    let [rounded, lost] = nearest(&together);
    Ok(vec![
        Line::new("together", together),
        rounded,
        lost,
        Line::new(
            "the second less the first",
            contact::left_over(&second, &first)?,
        ),
        Line::new("apart", blur(first.vector().distance(&second.vector()))),
    ])
}

const MEANT: Ask = Ask::new("lens", "lens meant", "−2.00 / −3.00 × 180", Kind::Lens);
const TURN: Ask = Ask::new(
    "turn",
    "turn, anticlockwise as you face it",
    "10°",
    Kind::Number(limits::TURN),
);
const FOUND_OVER: Ask = Ask::new(
    "over",
    "lens found over it",
    "+0.50 / −1.00 × 140",
    Kind::Lens,
)
.or("nothing was found over it");

/// A lens that does not stand where it was meant to.
pub(super) const OFF_AXIS: Sum = Sum {
    slug: "off-axis",
    name: "A lens standing off its axis",
    about: "What a turned lens leaves to be mended, and the lens to order from what was found over it.",
    asks: &[MEANT, TURN, FOUND_OVER],
    answer: turned,
};

fn turned(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let meant = asked.need(&MEANT, lens)?;
    let by = asked.need(&TURN, number)?;
    let residual = off_axis::residual(&meant, by)?;
    let mut lines = vec![
        Line::new("as it stands", off_axis::turned(&meant, by)?),
        Line::new("what is left over", residual),
        Line::new("that is", blur(residual.vector().blur_strength())),
    ];
    if let Some(over) = asked.find(&FOUND_OVER, lens)? {
        let order = off_axis::to_order(&meant, by, &over)?;
        lines.extend([
            Line::new("refraction", off_axis::refraction(&meant, by, &over)?),
            Line::new("to order, if it turns the same", order),
        ]);
        lines.extend(nearest(&order));
    }
    Ok(lines)
}

const SEVERAL: Ask = Ask::new(
    "readings",
    "readings, a semicolon between them",
    "−1.00 / −0.50 × 175; −1.25 / −0.75 × 5; −1.50 / −0.50 × 10",
    Kind::Readings,
);

/// Repeated readings of one eye.
pub(super) const READINGS: Sum = Sum {
    slug: "readings",
    name: "Repeated readings",
    about: "The mean of several readings of one eye, how far they scatter, and where one more would lie.",
    asks: &[SEVERAL],
    answer: mean_and_scatter,
};

fn mean_and_scatter(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let readings = asked.need(&SEVERAL, readings)?;
    let mean = spread::mean(&readings)?;
    let mut lines = vec![
        Line::new("readings", readings.len()),
        Line::new("mean", mean),
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
        Line::new("mean sphere", dioptres(mean.mean_sphere())),
        Line::new(
            "standard deviation of M, J0, J45",
            sizes(spread.deviations()),
        ),
        Line::new("one more would have a mean sphere of", range(low.m, high.m)),
        Line::new("and J0 of", range(low.j0, high.j0)),
        Line::new("and J45 of, 95 times in 100", range(low.j45, high.j45)),
    ]
}

fn sizes(vector: PowerVector) -> String {
    [vector.m, vector.j0, vector.j45]
        .map(|part| format!("{} D", size(part)))
        .join(", ")
}

fn range(low: f64, high: f64) -> String {
    format!("{} to {} D", signed(low, 2), signed(high, 2))
}
