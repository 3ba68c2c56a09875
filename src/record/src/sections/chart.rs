//! A letter chart, what an eye makes out on it, and what that is at the distance used.

use ::words::record::sections as say;
use optics::acuity::{self, Acuity, Category, ChartLine, FingersAt, LogMar};
use optics::limits;
use serde::{Deserialize, Serialize};

use crate::check::Checks;

/// A letter chart and where it stood.
///
/// ```
/// use optics::acuity::ChartLine;
/// use record::{Chart, Seen};
///
/// let chart = Chart { made_for_m: 6.0, used_at_m: 2.0 };
/// let seen = Seen::Line { line: ChartLine::new(36)?, letters: -1 };
///
/// assert_eq!(seen.to_string(), "6/36 −1");
/// assert_eq!(chart.as_it_is(&seen).as_deref(), Some("2/36 −1"));
/// assert_eq!(chart.at_six_metres(&seen).as_deref(), Some("6/108"));
/// # Ok::<(), optics::acuity::NoSuchLine>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Chart {
    /// The distance in metres for which the chart's labels are written.
    pub made_for_m: f64,
    /// The distance in metres at which it was used.
    pub used_at_m: f64,
}

impl Default for Chart {
    /// A 6 m chart at 6 m.
    fn default() -> Self {
        Self {
            made_for_m: 6.0,
            used_at_m: 6.0,
        }
    }
}

/// The least that an eye could make out. The last four are categories, not measurements.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Seen {
    /// A line of the chart.
    Line {
        /// The smallest line read, by its label.
        line: ChartLine,
        /// Letters read beyond it, or missed from it when negative.
        letters: i8,
    },
    /// Counts fingers.
    Fingers {
        /// At this distance in centimetres, without which the category says little.
        at_cm: u16,
    },
    /// Sees a hand move.
    HandMoves,
    /// Sees light.
    Light,
    /// Sees no light.
    NoLight,
}

impl std::fmt::Display for Seen {
    /// As the chart labels it: `6/36 −1`, `6/18`, `counts fingers at 30 cm`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match *self {
            Self::Line { line, letters } => write!(f, "{line}{}", counted(letters)),
            Self::Fingers { at_cm } => f.write_str(&say::counts_fingers(&at_cm)),
            Self::HandMoves => f.write_str(say::hand_movements()),
            Self::Light => f.write_str(say::sees_light()),
            Self::NoLight => f.write_str(say::no_light()),
        }
    }
}

impl Seen {
    /// More letters than stand on a line, or fingers at no distance or too great a one.
    pub(crate) fn slip(self) -> Option<&'static str> {
        match self {
            Self::Line { letters, .. } if letters.unsigned_abs() > MOST_LETTERS => {
                Some(say::five_letters())
            }
            Self::Fingers { at_cm } if at_cm == 0 || at_cm > FARTHEST_FINGERS_CM => {
                Some(say::fingers_range())
            }
            _ => None,
        }
    }
}

/// Letters beyond a line or missed from it: five stand on a line of a logMAR chart, and all five are the next line.
const MOST_LETTERS: u8 = 4;

/// Fingers farther away than a 6 m chart say less than the chart would. Common practice, no source.
const FARTHEST_FINGERS_CM: u16 = 600;

impl Chart {
    /// As it is at the distance used: `2/36 −1`. Nothing for a category, or for a chart out of range.
    pub fn as_it_is(&self, seen: &Seen) -> Option<String> {
        let (line, letters) = line(*seen)?;
        let fraction = acuity::as_read(line.denominator(), self.made_for_m, self.used_at_m).ok()?;
        Some(fraction + &counted(letters))
    }

    /// The same acuity as a fraction of 6: `6/108`. Letters are left out: the lines at 6 m are others.
    pub fn at_six_metres(&self, seen: &Seen) -> Option<String> {
        let (line, _) = line(*seen)?;
        acuity::at_six_metres(line.denominator(), self.made_for_m, self.used_at_m).ok()
    }

    /// The score in logMAR at the distance used, letters counted. Nothing for a category: it was not measured.
    pub fn logmar(&self, seen: &Seen) -> Option<f64> {
        let (line, letters) = line(*seen)?;
        let line = acuity::logmar(line.denominator(), self.made_for_m, self.used_at_m).ok()?;
        acuity::with_letters(line, letters).ok()
    }

    /// As an acuity that can be told better or worse. Nothing for a chart, a line or fingers out of range.
    pub(crate) fn read(&self, seen: Seen) -> Option<Acuity> {
        let category = match seen {
            Seen::Line { .. } => {
                let read = LogMar::new(self.logmar(&seen)?).ok()?;
                return Some(Acuity::Measured(read));
            }
            Seen::Fingers { at_cm } => Category::CountingFingers(FingersAt::from_cm(at_cm).ok()?),
            Seen::HandMoves => Category::HandMovements,
            Seen::Light => Category::PerceptionOfLight,
            Seen::NoLight => Category::NoPerception,
        };
        Some(Acuity::Category(category))
    }

    /// What to print: the true fraction, or the category in words.
    pub fn in_words(&self, seen: &Seen) -> String {
        self.as_it_is(seen).unwrap_or_else(|| seen.to_string())
    }

    pub(crate) fn check(&self, checks: &mut Checks) {
        checks.range("made_for_m", limits::chart_m(self.made_for_m));
        checks.range("used_at_m", limits::chart_m(self.used_at_m));
    }
}

fn line(seen: Seen) -> Option<(ChartLine, i8)> {
    match seen {
        Seen::Line { line, letters } => Some((line, letters)),
        _ => None,
    }
}

/// ` +2`, ` −1` with the true minus sign, or nothing for the whole line.
fn counted(letters: i8) -> String {
    match letters {
        0 => String::new(),
        _ => format!(" {}", optics::format::signed(f64::from(letters), 0)),
    }
}
