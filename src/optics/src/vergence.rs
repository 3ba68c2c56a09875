//! Light's vergence and the distance that goes with it.
//!
//! ```text
//! L = 1 / l        after a lens: L' = L + F
//! ```
//!
//! L in dioptres, l in metres, in air: negative for light that comes from a point so far in front, positive for light that
//! goes to a point so far behind, 0 for parallel light. How vergence changes as light runs on is [`crate::vertex`]'s formula.
//! A working distance and its lens come from one another by the same reciprocal. The formula stands in every optics text.
//!
//! ```
//! use optics::vergence;
//!
//! assert_eq!(vergence::working_distance(2.0)?.cm(), 50.0);
//! assert_eq!(vergence::of_distance(-0.40)?, -2.5);
//! assert_eq!(vergence::after(-2.5, 4.5)?, 2.0);
//! assert_eq!(vergence::distance(2.0)?, Some(0.5));
//! assert_eq!(vergence::distance(0.0)?, None);
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::OpticsError;
use crate::retinoscopy::WorkingDistance;
use crate::sphere_cyl::finite;
use ::words::optics::limits as say;

/// The one reciprocal: dioptres from metres, and metres from dioptres.
pub(crate) const fn reciprocal(of: f64) -> f64 {
    1.0 / of
}

/// The vergence in dioptres at a distance in metres from the point.
///
/// # Errors
/// [`OpticsError::NotANumber`] for an endless distance, and at the point itself, where the vergence is endless.
pub fn of_distance(metres: f64) -> Result<f64, OpticsError> {
    finite(
        say::vergence(),
        reciprocal(finite(say::distance(), metres)?),
    )
}

/// How far away in metres the point is that light of this vergence in dioptres comes from or goes to; none for parallel
/// light.
///
/// # Errors
/// [`OpticsError::NotANumber`] for an endless vergence, or one so weak that its distance is endless.
pub fn distance(vergence: f64) -> Result<Option<f64>, OpticsError> {
    if finite(say::vergence(), vergence)? == 0.0 {
        return Ok(None);
    }
    finite(say::distance(), reciprocal(vergence)).map(Some)
}

/// The vergence in dioptres that light has after a lens of this power.
///
/// # Errors
/// [`OpticsError::NotANumber`] for endless values.
pub fn after(vergence: f64, power: f64) -> Result<f64, OpticsError> {
    finite(
        say::vergence(),
        finite(say::vergence(), vergence)? + finite(say::power(), power)?,
    )
}

/// The working distance that a working lens in dioptres belongs to; [`WorkingDistance::dioptres`] is the way back.
///
/// # Errors
/// [`OpticsError::OutOfRange`] where nobody works at that distance.
pub fn working_distance(lens: f64) -> Result<WorkingDistance, OpticsError> {
    WorkingDistance::from_cm(100.0 * reciprocal(lens))
}
