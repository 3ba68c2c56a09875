//! Sums of lenses that are not looked through at their centres.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::prism::EYE;
use super::read::{self, eye, lens, number};
use super::shared::{eye_name, prism_lines, way};
use crate::prism::{Decentration, Prism, Reading as Point};
use crate::{Eyes, Line, limits};
use ::words::optics::sums_prism as say;

const LENS: Ask = Ask::new("lens", say::ask_lens, "−5.00 / −1.00 × 45", Kind::Lens);
const IN: Ask = Ask::new(
    "in",
    say::ask_centre_in,
    "−3 mm",
    Kind::Number(limits::DECENTRATION_MM),
);
const UP: Ask = Ask::new(
    "up",
    say::ask_centre_up,
    "2 mm",
    Kind::Number(limits::DECENTRATION_MM),
)
.or(say::or_level);

/// Prism from decentration.
pub(super) const DECENTRED: Sum = Sum {
    slug: "decentred",
    name: say::title_decentred,
    about: say::about_decentred,
    asks: &[EYE, LENS, IN, UP],
    answer: decentred,
};

fn decentred(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let inward = asked.need(&IN, number)?;
    let up = asked.find(&UP, number)?.unwrap_or(0.0);
    let off = Decentration::inward(eye, inward, up)?;
    let mut lines = vec![Line::new(say::centre_stands(), way(inward, up))];
    lines.extend(prism_lines(
        say::prism(),
        Prism::of_decentred(&lens, off)?,
        eye,
    ));
    Ok(lines)
}

const WISH: Ask = Ask::new("prism", say::ask_prism_wanted, "2.00 out", Kind::Prism);

/// Decentration for a prism.
pub(super) const WANTED: Sum = Sum {
    slug: "decentre",
    name: say::title_decentre,
    about: say::about_decentre,
    asks: &[EYE, LENS, WISH],
    answer: wanted,
};

fn wanted(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let wish = asked.need_by(&WISH, |text| read::prism(text, eye))?;
    let off = Decentration::wanted(&lens, wish)?;
    Ok(vec![
        Line::new(say::prism_wanted(), wish.written(eye)),
        Line::new(say::move_centre(), way(off.in_mm(eye), off.up_mm())),
    ])
}

const CENTRE_MM: Ask = Ask::new(
    "centre",
    say::ask_centre_from_bridge,
    "34 mm",
    Kind::Number(limits::HALF_DISTANCE_MM),
);
const PUPIL: Ask = Ask::new(
    "pupil",
    say::ask_pupil_from_bridge,
    "31 mm",
    Kind::Number(limits::HALF_DISTANCE_MM),
);

/// Centres against pupils.
pub(super) const CENTRE: Sum = Sum {
    slug: "centre",
    name: say::title_centre,
    about: say::about_centre,
    asks: &[EYE, LENS, CENTRE_MM, PUPIL],
    answer: centre,
};

fn centre(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let centre = asked.need(&CENTRE_MM, number)?;
    let off = Decentration::of_centre(eye, centre, asked.need(&PUPIL, number)?)?;
    let mut lines = vec![Line::new(
        say::centre_stands(),
        way(off.in_mm(eye), off.up_mm()),
    )];
    lines.extend(prism_lines(
        say::prism(),
        Prism::of_decentred(&lens, off)?,
        eye,
    ));
    Ok(lines)
}

const BETWEEN_MIDDLES: Ask = Ask::new(
    "frame",
    say::ask_frame_middles,
    "70 mm",
    Kind::Number(limits::CENTRE_DISTANCE_MM),
);

/// A frame against the pupil.
pub(super) const FRAME: Sum = Sum {
    slug: "frame",
    name: say::title_frame,
    about: say::about_frame,
    asks: &[EYE, LENS, BETWEEN_MIDDLES, PUPIL],
    answer: frame,
};

fn frame(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let middles = asked.need(&BETWEEN_MIDDLES, number)?;
    let to_move = Decentration::to_pupil(eye, middles, asked.need(&PUPIL, number)?)?;
    let left_alone = Prism::of_decentred(&lens, -to_move)?;
    let mut lines = vec![Line::new(
        say::move_centre(),
        way(to_move.in_mm(eye), to_move.up_mm()),
    )];
    lines.extend(prism_lines(say::left_in_middle(), left_alone, eye));
    Ok(lines)
}

const RIGHT: Ask = Ask::new("right", say::ask_right_lens, "−4.00", Kind::Lens);
const LEFT: Ask = Ask::new("left", say::ask_left_lens, "−1.00", Kind::Lens);
const DOWN: Ask = Ask::new(
    "down",
    say::ask_reading_point_below_the_centres,
    "10 mm",
    Kind::Number(limits::READING_DROP_MM),
);
const INWARD: Ask = Ask::new(
    "in",
    say::ask_reading_point_nearer_the_nose,
    "2 mm",
    Kind::Number(limits::DECENTRATION_MM),
)
.or(say::or_straight_below);

/// Imbalance at the reading point.
pub(super) const READING: Sum = Sum {
    slug: "imbalance",
    name: say::title_imbalance,
    about: say::about_imbalance,
    asks: &[RIGHT, LEFT, DOWN, INWARD],
    answer: imbalance,
};

fn imbalance(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lenses = Eyes {
        right: asked.need(&RIGHT, lens)?,
        left: asked.need(&LEFT, lens)?,
    };
    let down = asked.need(&DOWN, number)?;
    let inward = asked.find(&INWARD, number)?.unwrap_or(0.0);
    let there = Point::new(down, inward)?.through(&lenses)?;
    let mut lines: Vec<Line> = there
        .each
        .each()
        .map(|(eye, prism)| Line::new(eye_name(eye), prism.written(eye)))
        .into();
    lines.push(Line::new(say::conclusion(), there.sentence()));
    if there.asks() {
        lines.push(Line::new(say::ask(), say::ask_trouble()));
    }
    Ok(lines)
}
