//! Sums of prism by itself.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{self, eye, number};
use super::shared::{prism_lines, size};
use crate::format::plain;
use crate::prism::{Prism, of_deviation, relative, split};
use crate::{Eye, Line, limits};

pub(super) const EYE: Ask = Ask::new("eye", "eye", "right", Kind::Eye);
const FIRST: Ask = Ask::new("prism", "prism", "1.50 up & 2.00 in", Kind::Prism);
const SECOND: Ask =
    Ask::new("second", "second prism", "1.00 down", Kind::Prism).or("there is no second one");

/// Prism combined, and resolved.
pub(super) const COMBINED: Sum = Sum {
    slug: "prism",
    name: "Prism combined and resolved",
    about: "One or two prisms before an eye as one, by bases and on the compass; the compass is written 2.50 @ 37.",
    asks: &[EYE, FIRST, SECOND],
    answer: combined,
};

fn combined(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let eye = asked.need(&EYE, eye)?;
    let first = asked.need_by(&FIRST, |text| read::prism(text, eye))?;
    let second = asked.find_by(&SECOND, |text| read::prism(text, eye))?;
    let whole: Prism = [Some(first), second].into_iter().flatten().sum();
    let mut lines = prism_lines("together", whole, eye);
    lines.push(Line::new(
        "turns light by",
        format!("{} degrees", plain(whole.deviation_degrees(), 2)),
    ));
    Ok(lines)
}

const SHARE: Ask = Ask::new(
    "share",
    "share that stays before the eye",
    "0.5",
    Kind::Number(limits::SHARE),
)
.or("half is taken");

/// Prism shared between the eyes.
pub(super) const SPLIT: Sum = Sum {
    slug: "split",
    name: "Prism split between the eyes",
    about: "A prism written for one eye, shared between both.",
    asks: &[EYE, FIRST, SHARE],
    answer: shared_out,
};

fn shared_out(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let before = asked.need(&EYE, eye)?;
    let whole = asked.need_by(&FIRST, |text| read::prism(text, before))?;
    let share = asked.find(&SHARE, number)?.unwrap_or(0.5);
    let shared = split(whole, before, share)?;
    let each = shared
        .each()
        .map(|(eye, prism)| Line::new(format!("{} eye", eye.word()), prism.written(eye)));
    Ok(each.into())
}

const RIGHT: Ask = Ask::new("right", "right eye’s prism", "2.00 in", Kind::Prism);
const LEFT: Ask = Ask::new("left", "left eye’s prism", "1.00 in", Kind::Prism);

/// What one eye has more than the other.
pub(super) const BETWEEN: Sum = Sum {
    slug: "between",
    name: "Prism between the eyes",
    about: "What the two eyes' prisms come to, as though all of it stood before the right eye.",
    asks: &[RIGHT, LEFT],
    answer: between,
};

fn between(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let right = asked.need_by(&RIGHT, |text| read::prism(text, Eye::Right))?;
    let left = asked.need_by(&LEFT, |text| read::prism(text, Eye::Left))?;
    Ok(prism_lines(
        "all before the right eye",
        relative(right, left),
        Eye::Right,
    ))
}

const DEGREES: Ask = Ask::new("angle", "angle", "4°", Kind::Number(limits::DEVIATION));

/// Degrees to prism dioptres.
pub(super) const ANGLE: Sum = Sum {
    slug: "angle",
    name: "An angle in prism dioptres",
    about: "The prism that turns light by an angle.",
    asks: &[DEGREES],
    answer: angle,
};

fn angle(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let degrees = asked.need(&DEGREES, number)?;
    let prism = of_deviation(degrees)?;
    Ok(vec![Line::new(
        format!("{} degrees are", plain(degrees, 2)),
        format!("{} Δ", size(prism)),
    )])
}
