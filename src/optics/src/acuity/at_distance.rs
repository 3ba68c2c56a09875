//! A chart made for one distance and read at another.
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

use super::Measure;
use super::score::positive;
use crate::exact;
use crate::format::plain;
use crate::sphere_cyl::finite;
use crate::{OpticsError, limits};
use ::words::optics::acuity as say;

/// What one letter counts, in logMAR.
pub const LETTER: f64 = 0.02;

/// The true logMAR of a line labelled 6/`label_denominator`, on a chart made for one distance and used at another.
///
/// ```
/// // The 6/12 line of a 6 m chart, read at 3 m, is 3/12: as good as 6/24.
/// let found = optics::acuity::logmar(12.0, 6.0, 3.0)?;
/// assert!((found - 0.602).abs() < 0.001);
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// [`OpticsError`] for a distance that no chart is used at, or a label that is not above 0.
pub fn logmar(label_denominator: f64, made_for_m: f64, used_at_m: f64) -> Result<f64, OpticsError> {
    let (size_m, used_at_m) = letter(label_denominator, made_for_m, used_at_m)?;
    Ok(exact::log10(size_m / used_at_m))
}

/// The line as it is written at the distance used, in metres over metres.
///
/// ```
/// use optics::acuity::{PartialLine, WrittenLine, on_chart};
/// let read = WrittenLine::new(on_chart(36.0, 6.0, 2.0)?, PartialLine::new(1, 0)?)?;
/// assert_eq!(read.to_string(), "2/36 −1");
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// As [`logmar`].
pub fn on_chart(
    label_denominator: f64,
    made_for_m: f64,
    used_at_m: f64,
) -> Result<Measure, OpticsError> {
    let (size, distance) = letter(label_denominator, made_for_m, used_at_m)?;
    Ok(Measure::Metres { distance, size })
}

/// The score with letters counted: `letters` read beyond the line are positive, letters missed from it negative.
///
/// # Errors
/// [`OpticsError::NotANumber`] for an endless score.
pub fn with_letters(logmar: f64, letters: i8) -> Result<f64, OpticsError> {
    let logmar = finite("logMAR", logmar)?;
    Ok(logmar - LETTER * f64::from(letters))
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
    let label = positive(say::label_of_line(), label)?;
    let made_for_m = limits::chart_m(made_for_m)?;
    let used_at_m = limits::chart_m(used_at_m)?;
    Ok((label * made_for_m / 6.0, used_at_m))
}
