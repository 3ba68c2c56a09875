//! Sums of prism by itself.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{self, eye, number};
use super::shared::{eye_name, prism_lines, size};
use crate::format::plain;
use crate::prism::{Prism, of_deviation, relative, split};
use crate::{Eye, Line, limits};
use ::words::optics::sums_prism as say;

pub(super) const EYE: Ask = Ask::new("eye", say::ask_eye, "right", Kind::Eye);
const FIRST: Ask = Ask::new("prism", say::ask_prism, "1.50 up & 2.00 in", Kind::Prism);
const SECOND: Ask =
    Ask::new("second", say::ask_second_prism, "1.00 down", Kind::Prism).or(say::or_no_second);

/// Prism combined, and resolved.
pub(super) const COMBINED: Sum = Sum {
    slug: "prism",
    name: say::title_prism,
    about: say::about_prism,
    asks: &[EYE, FIRST, SECOND],
    answer: combined,
};

fn combined(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let eye = asked.need(&EYE, eye)?;
    let first = asked.need_by(&FIRST, |text| read::prism(text, eye))?;
    let second = asked.find_by(&SECOND, |text| read::prism(text, eye))?;
    let whole: Prism = [Some(first), second].into_iter().flatten().sum();
    let mut lines = prism_lines(say::together(), whole, eye);
    lines.push(Line::new(
        say::turns_light(),
        say::degrees(&plain(whole.deviation_degrees(), 2)),
    ));
    Ok(lines)
}

const SHARE: Ask = Ask::new(
    "share",
    say::ask_share_that_stays_before_the_eye,
    "0.5",
    Kind::Number(limits::SHARE),
)
.or(say::or_half);

/// Prism shared between the eyes.
pub(super) const SPLIT: Sum = Sum {
    slug: "split",
    name: say::title_split,
    about: say::about_split,
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
        .map(|(eye, prism)| Line::new(eye_name(eye), prism.written(eye)));
    Ok(each.into())
}

const RIGHT: Ask = Ask::new("right", say::ask_right_eyes_prism, "2.00 in", Kind::Prism);
const LEFT: Ask = Ask::new("left", say::ask_left_eyes_prism, "1.00 in", Kind::Prism);

/// What one eye has more than the other.
pub(super) const BETWEEN: Sum = Sum {
    slug: "between",
    name: say::title_between,
    about: say::about_between,
    asks: &[RIGHT, LEFT],
    answer: between,
};

fn between(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let right = asked.need_by(&RIGHT, |text| read::prism(text, Eye::Right))?;
    let left = asked.need_by(&LEFT, |text| read::prism(text, Eye::Left))?;
    Ok(prism_lines(
        say::all_right(),
        relative(right, left),
        Eye::Right,
    ))
}

const DEGREES: Ask = Ask::new(
    "angle",
    say::ask_angle,
    "4°",
    Kind::Number(limits::DEVIATION),
);

/// Degrees to prism dioptres.
pub(super) const ANGLE: Sum = Sum {
    slug: "angle",
    name: say::title_angle,
    about: say::about_angle,
    asks: &[DEGREES],
    answer: angle,
};

fn angle(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let degrees = asked.need(&DEGREES, number)?;
    let prism = of_deviation(degrees)?;
    Ok(vec![Line::new(
        say::degrees_are(&plain(degrees, 2)),
        format!("{} Δ", size(prism)),
    )])
}
