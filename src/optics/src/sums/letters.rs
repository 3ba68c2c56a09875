//! Sums of letters and of print: how many, how large, and what they say.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{line, number, print, whole};
use super::shared::{length, logmar};
use crate::acuity::{
    LetterScore, LogMar, NearAcuity, Print, SIZE_STEP, letter_height_mm, stroke_mm,
};
use crate::format::plain;
use crate::{Line, limits};

const AT_FOUR: Ask = Ask::new(
    "at-4-m",
    "letters read at 4 m",
    "42",
    Kind::Whole(limits::LETTERS_AT_4_M),
);
const AT_ONE: Ask = Ask::new(
    "at-1-m",
    "letters read at 1 m",
    "27",
    Kind::Whole(limits::LETTERS_AT_1_M),
)
.or("nobody was asked, since 20 or more were read at 4 m");

/// The letter count.
pub(super) const COUNT: Sum = Sum {
    slug: "letters",
    name: "A letter count",
    about: "The count of an even chart from the letters read at 4 m and at 1 m, and its acuity.",
    asks: &[AT_FOUR, AT_ONE],
    answer: count,
};

fn count(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let four = asked.need(&AT_FOUR, whole)?;
    let score = LetterScore::from_chart(four, asked.find(&AT_ONE, whole)?)?;
    let mut lines = vec![Line::new("letters", score.letters())];
    lines.extend(told(score.acuity())?);
    Ok(lines)
}

/// An acuity in the three measures that are looked for most.
fn told(acuity: LogMar) -> Result<Vec<Line>, SumError> {
    Ok(vec![
        Line::new("logMAR", logmar(acuity.value())),
        Line::new("decimal", plain(acuity.decimal(), 3)),
        Line::new("at 6 m", format!("6/{}", plain(acuity.size_at(6.0)?, 1))),
    ])
}

const LINE: Ask = Ask::new("acuity", "acuity of the line", "6/9", Kind::Line);
const AWAY: Ask = Ask::new(
    "distance",
    "distance of the chart",
    "3 m",
    Kind::Number(limits::CHART_M),
);

/// How large a letter must be.
pub(super) const SIZE: Sum = Sum {
    slug: "letter-size",
    name: "How large a letter is",
    about: "The height of a letter of an acuity at a distance, for checking a chart with a rule.",
    asks: &[LINE, AWAY],
    answer: size,
};

fn size(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (acuity, away) = (asked.need(&LINE, line)?, asked.need(&AWAY, number)?);
    let height = letter_height_mm(away, acuity)?;
    let mm = |value: f64| format!("{} mm", plain(value, 2));
    Ok(vec![
        Line::new("height of the letter", mm(height)),
        Line::new(
            "its stroke, and the gap of a ring",
            mm(stroke_mm(away, acuity)?),
        ),
        Line::new("the next size up on an even chart", mm(height * SIZE_STEP)),
    ])
}

const READ_PRINT: Ask = Ask::new("print", "print that was read", "N8", Kind::Print);
const HELD_AT: Ask = Ask::new(
    "distance",
    "distance that it was held at",
    "40 cm",
    Kind::Number(limits::NEAR_CM),
);

/// What print says.
pub(super) const PRINT: Sum = Sum {
    slug: "print",
    name: "Print at a distance",
    about: "The acuity that print at a distance comes to, and its size in points and in M.",
    asks: &[READ_PRINT, HELD_AT],
    answer: print_at,
};

fn print_at(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let print: Print = asked.need(&READ_PRINT, print)?;
    let read = NearAcuity::new(print, asked.need(&HELD_AT, number)?)?;
    let mut lines = vec![
        Line::new("read", read),
        Line::new(
            "that is",
            format!(
                "N{}, {} M",
                plain(print.points(), 1),
                plain(print.m_units(), 2)
            ),
        ),
        Line::new("held at", length(read.distance_cm(), "cm")),
    ];
    lines.extend(told(read.acuity()?)?);
    Ok(lines)
}
