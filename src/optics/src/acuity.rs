//! Letter acuity at whatever distance the room allows.
//!
//! ```text
//! logMAR = log10(label / 6) + log10(made for / used at)
//! ```
//!
//! A chart's label is written for the distance that the chart is made for: the 6/12 line of a 6 m chart and of a 3 m chart
//! look the same size from their own distance. Moved nearer, the same letters look larger and the acuity is worse than
//! the label. `fraction = used at / (distance at which the letter subtends 5 minutes of arc)`. Metres throughout; charts
//! are accepted by [`crate::limits::chart_m`]. Source of the definitions: DICOM PS3.17, annex on visual acuity notation.
//!
//! Each letter beyond the last full line, or missed from it, counts 0.02: five letters to a line and 0.1 logMAR between
//! lines. Traditional lines are not evenly spaced nor five letters long, so there the count is a convention, not a
//! measurement.

use crate::format::plain;
use crate::{OpticsError, limits};
use serde::{Deserialize, Serialize};
use std::fmt;

/// What one letter counts, in logMAR.
pub const LETTER: f64 = 0.02;

/// A line of a traditional chart, by the number under the 6 of its label.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct ChartLine(u8);

impl ChartLine {
    /// Every line, largest letters first.
    pub const ALL: [Self; 9] = [
        Self(60),
        Self(36),
        Self(24),
        Self(18),
        Self(12),
        Self(9),
        Self(6),
        Self(5),
        Self(4),
    ];

    /// The line of this label, one of 60, 36, 24, 18, 12, 9, 6, 5, 4.
    ///
    /// # Errors
    /// [`NoSuchLine`] for any other number.
    pub fn new(denominator: u8) -> Result<Self, NoSuchLine> {
        let line = Self(denominator);
        if Self::ALL.contains(&line) {
            Ok(line)
        } else {
            Err(NoSuchLine(denominator))
        }
    }

    /// The number under the 6.
    pub fn denominator(self) -> f64 {
        f64::from(self.0)
    }
}

impl fmt::Display for ChartLine {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "6/{}", self.0)
    }
}

/// A label that stands on no line of the chart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("the chart has no 6/{0} line: its lines are 6/60, 36, 24, 18, 12, 9, 6, 5 and 4")]
pub struct NoSuchLine(pub u8);

impl TryFrom<u8> for ChartLine {
    type Error = NoSuchLine;
    fn try_from(denominator: u8) -> Result<Self, NoSuchLine> {
        Self::new(denominator)
    }
}

impl From<ChartLine> for u8 {
    fn from(line: ChartLine) -> Self {
        line.0
    }
}

/// The true logMAR of a line labelled 6/`label_denominator`, on a chart made for one distance and used at another.
///
/// # Errors
/// [`OpticsError`] for a distance that no chart is used at, or a label that is not above 0.
pub fn logmar(label_denominator: f64, made_for_m: f64, used_at_m: f64) -> Result<f64, OpticsError> {
    let (size_m, used_at_m) = letter(label_denominator, made_for_m, used_at_m)?;
    Ok((size_m / used_at_m).log10())
}

/// The score with letters counted: `letters` read beyond the line are positive, letters missed from it negative.
pub fn with_letters(logmar: f64, letters: i8) -> f64 {
    logmar - LETTER * f64::from(letters)
}

/// The true fraction as read, `2/36`: the distance used over the distance at which the letter subtends 5 minutes of arc.
///
/// # Errors
/// As [`logmar`].
pub fn as_read(
    label_denominator: f64,
    made_for_m: f64,
    used_at_m: f64,
) -> Result<String, OpticsError> {
    let (size_m, used_at_m) = letter(label_denominator, made_for_m, used_at_m)?;
    Ok(format!("{}/{}", plain(used_at_m, 2), plain(size_m, 1)))
}

/// The same acuity as a fraction of 6, `6/108`.
///
/// # Errors
/// As [`logmar`].
pub fn at_six_metres(
    label_denominator: f64,
    made_for_m: f64,
    used_at_m: f64,
) -> Result<String, OpticsError> {
    let (size_m, used_at_m) = letter(label_denominator, made_for_m, used_at_m)?;
    Ok(format!("6/{}", plain(6.0 * size_m / used_at_m, 1)))
}

/// The distance at which the line's letters subtend 5 minutes of arc, and the distance used, both in metres.
fn letter(label: f64, made_for_m: f64, used_at_m: f64) -> Result<(f64, f64), OpticsError> {
    if !label.is_finite() || label <= 0.0 {
        return Err(OpticsError::NotANumber {
            what: "label of the line",
        });
    }
    let made_for_m = limits::chart_m(made_for_m)?;
    let used_at_m = limits::chart_m(used_at_m)?;
    Ok((label * made_for_m / 6.0, used_at_m))
}
