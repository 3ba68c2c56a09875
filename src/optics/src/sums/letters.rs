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
use ::words::optics::sums_acuity as say;

const AT_FOUR: Ask = Ask::new(
    "at-4-m",
    say::ask_letters_read_at_4_m,
    "42",
    Kind::Whole(limits::LETTERS_AT_4_M),
);
const AT_ONE: Ask = Ask::new(
    "at-1-m",
    say::ask_letters_read_at_1_m,
    "27",
    Kind::Whole(limits::LETTERS_AT_1_M),
)
.or(say::or_not_asked);

/// The letter count.
pub(super) const COUNT: Sum = Sum {
    slug: "letters",
    name: say::title_letters,
    about: say::about_letters,
    asks: &[AT_FOUR, AT_ONE],
    answer: count,
};

fn count(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let four = asked.need(&AT_FOUR, whole)?;
    let score = LetterScore::from_chart(four, asked.find(&AT_ONE, whole)?)?;
    let mut lines = vec![Line::new(say::letters(), score.letters())];
    lines.extend(told(score.acuity())?);
    Ok(lines)
}

/// An acuity in the three measures that are looked for most.
fn told(acuity: LogMar) -> Result<Vec<Line>, SumError> {
    Ok(vec![
        Line::new(say::logmar(), logmar(acuity.value())),
        Line::new(say::decimal(), plain(acuity.decimal(), 3)),
        Line::new(
            say::at_six_metres(),
            format!("6/{}", plain(acuity.size_at(6.0)?, 1)),
        ),
    ])
}

const LINE: Ask = Ask::new("acuity", say::ask_acuity_of_the_line, "6/9", Kind::Line);
const AWAY: Ask = Ask::new(
    "distance",
    say::ask_distance_of_the_chart,
    "3 m",
    Kind::Number(limits::CHART_M),
);

/// How large a letter must be.
pub(super) const SIZE: Sum = Sum {
    slug: "letter-size",
    name: say::title_letter_size,
    about: say::about_letter_size,
    asks: &[LINE, AWAY],
    answer: size,
};

fn size(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (acuity, away) = (asked.need(&LINE, line)?, asked.need(&AWAY, number)?);
    let height = letter_height_mm(away, acuity)?;
    let mm = |value: f64| format!("{} mm", plain(value, 2));
    Ok(vec![
        Line::new(say::letter_height(), mm(height)),
        Line::new(say::stroke(), mm(stroke_mm(away, acuity)?)),
        Line::new(say::next_size(), mm(height * SIZE_STEP)),
    ])
}

const READ_PRINT: Ask = Ask::new("print", say::ask_print_that_was_read, "N8", Kind::Print);
const HELD_AT: Ask = Ask::new(
    "distance",
    say::ask_held_at,
    "40 cm",
    Kind::Number(limits::NEAR_CM),
);

/// What print says.
pub(super) const PRINT: Sum = Sum {
    slug: "print",
    name: say::title_print,
    about: say::about_print,
    asks: &[READ_PRINT, HELD_AT],
    answer: print_at,
};

fn print_at(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let print: Print = asked.need(&READ_PRINT, print)?;
    let read = NearAcuity::new(print, asked.need(&HELD_AT, number)?)?;
    let mut lines = vec![
        Line::new(say::was_read(), read),
        Line::new(
            say::that_is(),
            format!(
                "N{}, {} M",
                plain(print.points(), 1),
                plain(print.m_units(), 2)
            ),
        ),
        Line::new(say::held_at(), length(read.distance_cm(), "cm")),
    ];
    lines.extend(told(read.acuity()?)?);
    Ok(lines)
}
