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

const READ: Ask = Ask::new("acuity", "acuity", "6/12 −1", Kind::Acuity);
const AT: Ask = Ask::new(
    "distance",
    "distance to write it for",
    "3 m",
    Kind::Number(limits::CHART_M),
)
.or("6 m is taken");

/// An acuity in every notation.
pub(super) const NOTATIONS: Sum = Sum {
    slug: "acuity",
    name: "An acuity in every notation",
    about: "Metres, feet, decimal, logMAR, letters, and the band of impairment, from any one of them.",
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
    lines.push(Line::new(
        "impairment, both eyes together with their glasses",
        band_words(band),
    ));
    lines.push(Line::new(
        "its number in ICD-10, in ICD-11",
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
        Line::new(format!("at {} m", plain(at_m, 2)), fraction(at_m)?),
        Line::new("in feet", fraction(Over::TwentyFeet.number())?),
        Line::new("decimal", plain(read.decimal(), 3)),
        Line::new("logMAR", shared::logmar(read.value())),
        Line::new("angle resolved, minutes of arc", plain(read.mar(), 2)),
    ];
    // Beyond an even chart there is no line, and beyond its count no letters.
    if let Ok(line) = EvenLine::nearest(read) {
        let labels = Over::ALL.map(|over| line.label(over)).join(", ");
        lines.push(Line::new("nearest line of an even chart", labels));
        lines.push(Line::new("that line, decimal", plain(line.decimal(), 3)));
    }
    if let Ok(score) = LetterScore::nearest(read) {
        lines.push(Line::new("letters of an even chart", score.letters()));
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
    let mut lines = vec![Line::new("that is", category)];
    for (source, name) in sources {
        if let Some(number) = category.stand_in(source) {
            lines.push(Line::new(
                format!("for statistics alone, as {name} has it"),
                format!("logMAR {}", shared::logmar(number.for_statistics())),
            ));
        }
    }
    lines
}

const fn band_words(band: Band) -> &'static str {
    match band {
        Band::None => "none: 6/12 or better",
        Band::Mild => "mild: worse than 6/12",
        Band::Moderate => "moderate: worse than 6/18",
        Band::Severe => "severe: worse than 6/60",
        Band::BelowThreeSixtieths => "blindness: worse than 3/60",
        Band::BelowOneSixtieth => "blindness: worse than 1/60",
        Band::NoLight => "blindness: no light",
    }
}

const LABEL: Ask = Ask::new(
    "label",
    "number under the 6 of the line",
    "36",
    Kind::Number(limits::CHART_LABEL),
);
const MADE_FOR: Ask = Ask::new(
    "made-for",
    "distance that the chart is made for",
    "6 m",
    Kind::Number(limits::CHART_M),
);
const USED_AT: Ask = Ask::new(
    "used-at",
    "distance that it was read at",
    "2 m",
    Kind::Number(limits::CHART_M),
);

/// A chart read at another distance.
pub(super) const ELSEWHERE: Sum = Sum {
    slug: "chart",
    name: "A chart read at another distance",
    about: "What a line is worth where the chart stood elsewhere than it was made for.",
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
        Line::new("as it was read", acuity::as_read(label, made_for, used_at)?),
        Line::new("at 6 m", acuity::at_six_metres(label, made_for, used_at)?),
        Line::new("logMAR", shared::logmar(logmar)),
        Line::new(
            "with one letter missed",
            format!("logMAR {}", shared::logmar(one_less)),
        ),
    ])
}
