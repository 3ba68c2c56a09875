//! Sums of lenses that are not looked through at their centres.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::prism::EYE;
use super::read::{self, eye, lens, number};
use super::shared::{prism_lines, way};
use crate::prism::{Decentration, Prism, Reading as Point};
use crate::{Eyes, Line, limits};

const LENS: Ask = Ask::new("lens", "lens", "−5.00 / −1.00 × 45", Kind::Lens);
const IN: Ask = Ask::new(
    "in",
    "centre’s distance in from the eye’s line, minus for out",
    "−3 mm",
    Kind::Number(limits::DECENTRATION_MM),
);
const UP: Ask = Ask::new(
    "up",
    "centre’s distance up from the eye’s line, minus for down",
    "2 mm",
    Kind::Number(limits::DECENTRATION_MM),
)
.or("it is level");

/// Prism from decentration.
pub(super) const DECENTRED: Sum = Sum {
    slug: "decentred",
    name: "Prism from decentration",
    about: "The prism of a lens whose centre is not before the eye; cylinders turn light sideways too.",
    asks: &[EYE, LENS, IN, UP],
    answer: decentred,
};

fn decentred(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let inward = asked.need(&IN, number)?;
    let up = asked.find(&UP, number)?.unwrap_or(0.0);
    let off = Decentration::inward(eye, inward, up)?;
    let mut lines = vec![Line::new("the centre stands", way(inward, up))];
    lines.extend(prism_lines("prism", Prism::of_decentred(&lens, off)?, eye));
    Ok(lines)
}

const WISH: Ask = Ask::new("prism", "prism wanted", "2.00 out", Kind::Prism);

/// Decentration for a prism.
pub(super) const WANTED: Sum = Sum {
    slug: "decentre",
    name: "Decentring for a prism",
    about: "Where the centre of a lens goes so that it gives a prism that is wanted.",
    asks: &[EYE, LENS, WISH],
    answer: wanted,
};

fn wanted(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let wish = asked.need_by(&WISH, |text| read::prism(text, eye))?;
    let off = Decentration::wanted(&lens, wish)?;
    Ok(vec![
        Line::new("prism wanted", wish.written(eye)),
        Line::new("move the centre", way(off.in_mm(eye), off.up_mm())),
    ])
}

const CENTRE_MM: Ask = Ask::new(
    "centre",
    "lens’s centre from the middle of the bridge",
    "34 mm",
    Kind::Number(limits::HALF_DISTANCE_MM),
);
const PUPIL: Ask = Ask::new(
    "pupil",
    "pupil from the middle of the bridge",
    "31 mm",
    Kind::Number(limits::HALF_DISTANCE_MM),
);

/// Centres against pupils.
pub(super) const CENTRE: Sum = Sum {
    slug: "centre",
    name: "A lens’s centre against the pupil",
    about: "The prism of glasses whose centre is not where the pupil is.",
    asks: &[EYE, LENS, CENTRE_MM, PUPIL],
    answer: centre,
};

fn centre(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let centre = asked.need(&CENTRE_MM, number)?;
    let off = Decentration::of_centre(eye, centre, asked.need(&PUPIL, number)?)?;
    let mut lines = vec![Line::new(
        "the centre stands",
        way(off.in_mm(eye), off.up_mm()),
    )];
    lines.extend(prism_lines("prism", Prism::of_decentred(&lens, off)?, eye));
    Ok(lines)
}

const BETWEEN_MIDDLES: Ask = Ask::new(
    "frame",
    "distance between the frame’s two middles",
    "70 mm",
    Kind::Number(limits::CENTRE_DISTANCE_MM),
);

/// A frame against the pupil.
pub(super) const FRAME: Sum = Sum {
    slug: "frame",
    name: "Decentring into a frame",
    about: "How far a lens goes from the middle of the frame’s eye to the pupil, and the prism if nobody moves it.",
    asks: &[EYE, LENS, BETWEEN_MIDDLES, PUPIL],
    answer: frame,
};

fn frame(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (eye, lens) = (asked.need(&EYE, eye)?, asked.need(&LENS, lens)?);
    let middles = asked.need(&BETWEEN_MIDDLES, number)?;
    let to_move = Decentration::to_pupil(eye, middles, asked.need(&PUPIL, number)?)?;
    let left_alone = Prism::of_decentred(&lens, -to_move)?;
    let mut lines = vec![Line::new(
        "move the centre",
        way(to_move.in_mm(eye), to_move.up_mm()),
    )];
    lines.extend(prism_lines("left in the middle it gives", left_alone, eye));
    Ok(lines)
}

const RIGHT: Ask = Ask::new("right", "right lens", "−4.00", Kind::Lens);
const LEFT: Ask = Ask::new("left", "left lens", "−1.00", Kind::Lens);
const DOWN: Ask = Ask::new(
    "down",
    "reading point below the centres",
    "10 mm",
    Kind::Number(limits::READING_DROP_MM),
);
const INWARD: Ask = Ask::new(
    "in",
    "reading point nearer the nose",
    "2 mm",
    Kind::Number(limits::DECENTRATION_MM),
)
.or("it is straight below");

/// Imbalance at the reading point.
pub(super) const READING: Sum = Sum {
    slug: "imbalance",
    name: "Imbalance at the reading point",
    about: "What the two lenses do below their centres, and how much more one eye gets than the other.",
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
        .map(|(eye, prism)| Line::new(format!("{} eye", eye.word()), prism.written(eye)))
        .into();
    lines.push(Line::new("so", there.sentence()));
    if there.asks() {
        lines.push(Line::new(
            "ask",
            "does it trouble them to read, or do they see double?",
        ));
    }
    Ok(lines)
}
