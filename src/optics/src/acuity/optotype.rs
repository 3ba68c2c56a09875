//! How large a letter is.
//!
//! ```text
//! height = distance × tan 5′ × 10^logMAR        stroke and gap = height / 5
//! ```
//!
//! Metres in, millimetres out: 8.73 mm at 6 m, 5.82 at 4 m, 1.454 at 1 m for 0.0 logMAR. A Landolt ring of acuity 1 has an
//! outer diameter of 5 minutes of arc and a gap and stroke of 1 minute (ISO 8596). Distances are those of
//! [`crate::limits::chart_m`]; ISO 10938:2016 lets a size be 5 % off.

use super::LogMar;
use crate::exact;
use crate::limits;
use crate::limits::OutOfRange;

/// From one size to the next: the tenth root of ten (ISO 8596).
pub const SIZE_STEP: f64 = 1.258_925_411_794_167_2;

/// The height of a letter of this acuity at this distance in metres, in millimetres.
///
/// ```
/// use optics::acuity::{LogMar, letter_height_mm, stroke_mm};
/// let line = LogMar::new(0.0)?;
/// assert!((letter_height_mm(4.0, line)? - 5.82).abs() < 0.005);
/// assert!((stroke_mm(4.0, line)? - 1.16).abs() < 0.005);
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// [`OutOfRange`] for a distance that no chart is used at.
pub fn letter_height_mm(distance_m: f64, acuity: LogMar) -> Result<f64, OutOfRange> {
    let five_minutes = exact::tan((5.0_f64 / 60.0).to_radians());
    Ok(1000.0 * limits::chart_m(distance_m)? * five_minutes * acuity.mar())
}

/// The stroke of the same letter, and the gap of the same ring, in millimetres.
///
/// # Errors
/// As [`letter_height_mm`].
pub fn stroke_mm(distance_m: f64, acuity: LogMar) -> Result<f64, OutOfRange> {
    Ok(letter_height_mm(distance_m, acuity)? / 5.0)
}
