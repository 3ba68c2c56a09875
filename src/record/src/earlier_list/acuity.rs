//! An acuity as somebody wrote it, as a line of the chart that this record knows.

use ::words::record::lists as say;
use optics::acuity::{self, Category, ChartLine, LETTER, LogMar, Measure, Written};

use super::columns::Bare;
use crate::sections::Seen;

/// Metres for which the chart's labels are written.
pub(super) const MADE_FOR_M: f64 = 6.0;

/// A foot in metres, exactly.
const FOOT_M: f64 = 0.3048;

/// Charts of 20 feet are used as those of 6 m are: the two differ by a tenth of a letter's worth. Common practice, no source.
const CHART_FEET: f64 = 20.0;

/// An acuity as the record keeps it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Read {
    pub seen: Seen,
    /// How far away the chart stood; none for a category.
    pub used_at_m: Option<f64>,
    /// Whether it stands here just as it was written.
    pub as_written: bool,
}

/// Reads an acuity.
///
/// # Errors
/// One plain sentence.
pub(super) fn read(text: &str, bare: Option<Bare>) -> Result<Read, String> {
    let dressed = dressed(text, bare)?;
    let written: Written = dressed
        .parse()
        .map_err(|error: acuity::WrittenError| error.to_string())?;
    match written {
        Written::Category(category) => Ok(Read {
            seen: of_category(category),
            used_at_m: None,
            as_written: true,
        }),
        Written::Line(line) => {
            let as_written = |(seen, distance)| Read {
                seen,
                used_at_m: Some(distance),
                as_written: true,
            };
            let of_chart = match line.measure() {
                Measure::Metres { distance, size } => {
                    let letters = line.partial();
                    same_line(size, letters.missed(), letters.gained())
                        .map(|seen| as_written((seen, distance)))
                }
                _ => None,
            };
            of_chart
                .or_else(|| nearest(line.acuity(), used_at(line.measure())))
                .ok_or_else(|| say::beyond_chart(&text))
        }
    }
}

/// Whether it is a number and nothing else.
pub(super) fn is_bare(text: &str) -> bool {
    let number = text.trim().replace(',', ".").replace('−', "-");
    number.parse::<f64>().is_ok()
}

/// A bare number with what it was said to mean.
fn dressed(text: &str, bare: Option<Bare>) -> Result<String, String> {
    if !is_bare(text) {
        return Ok(text.to_owned());
    }
    match bare {
        Some(Bare::Decimal) => Ok(text.to_owned()),
        Some(Bare::LogMar) => Ok(format!("logMAR {}", text.trim())),
        None => Err(say::decimal_or_logmar(&text)),
    }
}

fn of_category(category: Category) -> Seen {
    match category {
        Category::CountingFingers(at) => Seen::Fingers { at_cm: at.cm() },
        Category::HandMovements => Seen::HandMoves,
        Category::PerceptionOfLight => Seen::Light,
        Category::NoPerception => Seen::NoLight,
    }
}

/// The line with this number under the stroke, where there is one; letters missed or read beyond, but not both.
fn same_line(size: f64, missed: u8, gained: u8) -> Option<Seen> {
    let mut all = ChartLine::ALL.into_iter();
    let line = all.find(|line| (line.denominator() - size).abs() < f64::EPSILON)?;
    let letters = match (missed, gained) {
        (0, gained) => i8::try_from(gained).ok()?,
        (missed, 0) => -i8::try_from(missed).ok()?,
        _ => return None,
    };
    let seen = Seen::Line { line, letters };
    seen.slip().is_none().then_some(seen)
}

/// The distance that an acuity was read at, or the chart's own where it doesn't tell.
fn used_at(measure: Measure) -> f64 {
    match measure {
        Measure::Metres { distance, .. } => distance,
        Measure::Feet { distance, .. } if (distance - CHART_FEET).abs() > f64::EPSILON => {
            distance * FOOT_M
        }
        _ => MADE_FOR_M,
    }
}

/// The line, with letters, that comes nearest: within one letter, with as few letters as can be.
fn nearest(acuity: LogMar, used_at_m: f64) -> Option<Read> {
    let mut best: Option<(f64, Seen)> = None;
    for line in ChartLine::ALL {
        let whole = acuity::logmar(line.denominator(), MADE_FOR_M, used_at_m).ok()?;
        // Fewest letters first, so that of equals the plainest stays.
        for letters in [0, 1, -1, 2, -2, 3, -3, 4, -4] {
            let off = (whole - LETTER * f64::from(letters) - acuity.value()).abs();
            if best.is_none_or(|(least, _)| off < least - LETTER / 4.0) {
                best = Some((off, Seen::Line { line, letters }));
            }
        }
    }
    let (off, seen) = best?;
    (off <= LETTER).then_some(Read {
        seen,
        used_at_m: Some(used_at_m),
        as_written: false,
    })
}
