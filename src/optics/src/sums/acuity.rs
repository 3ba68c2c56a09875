//! Sums of acuity: the same in every notation, and a chart read elsewhere than it was made for.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{self, number};
use super::shared;
use crate::acuity::{
    self, Acuity, Band, Category, EvenLine, LetterScore, LogMar, Over, StandInSource,
};
use crate::format::plain;
use crate::{Line, limits};
use ::words::optics::sums_acuity as say;

const READ: Ask = Ask::new("acuity", say::ask_acuity, "6/12 −1", Kind::Acuity);
const AT: Ask = Ask::new(
    "distance",
    say::ask_distance_to_write_it_for,
    "3 m",
    Kind::Number(limits::CHART_M),
)
.or(say::or_six_metres);

/// An acuity in every notation.
pub(super) const NOTATIONS: Sum = Sum {
    slug: "acuity",
    name: say::title_acuity,
    about: say::about_acuity,
    asks: &[READ, AT],
    answer: notations,
};

fn notations(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let acuity = asked.need(&READ, read::acuity)?;
    let at = asked.find(&AT, number)?.unwrap_or(6.0);
    let mut lines = match acuity {
        Acuity::Measured(read) => measured(read, at)?,
        Acuity::Category(category) => stand_ins(category),
    };
    let band = Band::of(&acuity);
    lines.push(Line::new(say::impairment(), band_words(band)));
    lines.push(Line::new(
        say::icd(),
        format!("{}, {}", band.icd_10(), band.icd_11()),
    ));
    Ok(lines)
}

fn measured(read: LogMar, at_m: f64) -> Result<Vec<Line>, SumError> {
    let fraction = |over: f64| -> Result<String, SumError> {
        Ok(format!(
            "{}/{}",
            plain(over, 2),
            plain(read.size_at(over)?, 2)
        ))
    };
    let mut lines = vec![
        Line::new(say::at_metres(&plain(at_m, 2)), fraction(at_m)?),
        Line::new(say::in_feet(), fraction(Over::TwentyFeet.number())?),
        Line::new(say::decimal(), plain(read.decimal(), 3)),
        Line::new(say::logmar(), shared::logmar(read.value())),
        Line::new(say::angle_resolved(), plain(read.mar(), 2)),
    ];
    // Beyond an even chart there is no line, and beyond its count no letters.
    if let Ok(line) = EvenLine::nearest(read) {
        let labels = Over::ALL.map(|over| line.label(over)).join(", ");
        lines.push(Line::new(say::nearest_line(), labels));
        lines.push(Line::new(say::line_decimal(), plain(line.decimal(), 3)));
    }
    if let Ok(score) = LetterScore::nearest(read) {
        lines.push(Line::new(say::letters_even(), score.letters()));
    }
    Ok(lines)
}

/// What papers put in place of a category.
fn stand_ins(category: Category) -> Vec<Line> {
    let sources = [
        (
            StandInSource::SchulzeBonsel2006,
            "Schulze-Bonsel et al. 2006",
        ),
        (StandInSource::Lange2009, "Lange et al. 2009"),
    ];
    let mut lines = vec![Line::new(say::that_is(), category)];
    for (source, name) in sources {
        if let Some(number) = category.stand_in(source) {
            lines.push(Line::new(
                say::for_statistics(&name),
                say::in_logmar(&shared::logmar(number.for_statistics())),
            ));
        }
    }
    lines
}

fn band_words(band: Band) -> &'static str {
    match band {
        Band::None => say::band_none(),
        Band::Mild => say::band_mild(),
        Band::Moderate => say::band_moderate(),
        Band::Severe => say::band_severe(),
        Band::BelowThreeSixtieths => say::band_three_sixtieths(),
        Band::BelowOneSixtieth => say::band_one_sixtieth(),
        Band::NoLight => say::band_no_light(),
    }
}

const LABEL: Ask = Ask::new(
    "label",
    say::ask_number_under_the_6_of_the_line,
    "36",
    Kind::Number(limits::CHART_LABEL),
);
const MADE_FOR: Ask = Ask::new(
    "made-for",
    say::ask_distance_that_the_chart_is_made_for,
    "6 m",
    Kind::Number(limits::CHART_M),
);
const USED_AT: Ask = Ask::new(
    "used-at",
    say::ask_distance_that_it_was_read_at,
    "2 m",
    Kind::Number(limits::CHART_M),
);

/// A chart read at another distance.
pub(super) const ELSEWHERE: Sum = Sum {
    slug: "chart",
    name: say::title_chart,
    about: say::about_chart,
    asks: &[LABEL, MADE_FOR, USED_AT],
    answer: elsewhere,
};

fn elsewhere(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let label = asked.need(&LABEL, number)?;
    let (made_for, used_at) = (
        asked.need(&MADE_FOR, number)?,
        asked.need(&USED_AT, number)?,
    );
    let logmar = acuity::logmar(label, made_for, used_at)?;
    let one_less = acuity::with_letters(logmar, -1)?;
    Ok(vec![
        Line::new(say::as_read(), acuity::as_read(label, made_for, used_at)?),
        Line::new(
            say::at_six_metres(),
            acuity::at_six_metres(label, made_for, used_at)?,
        ),
        Line::new(say::logmar(), shared::logmar(logmar)),
        Line::new(say::one_missed(), say::in_logmar(&shared::logmar(one_less))),
    ])
}
