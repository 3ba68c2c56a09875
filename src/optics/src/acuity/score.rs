//! How small a letter can be, in the one measure that adds and averages, and its other names.
//!
//! ```text
//! logMAR = log10(MAR)        decimal = 1 / MAR = distance / size        size = distance × MAR
//! ```
//!
//! MAR in minutes of arc; distance and size in one unit, whichever. −1.00 to 3.00 logMAR is accepted, which is wider than
//! any chart (about −0.30 to 1.70). Definitions: DICOM PS3.17, annex on visual acuity notation.

use crate::exact;
use crate::{OpticsError, limits};
use ::words::optics::acuity as say;

/// A measured acuity in logMAR: 0 is 6/6, each line of an even chart is 0.1, and more is worse.
///
/// It has no order of its own, since more is worse: [`Acuity`](super::Acuity) says which of two is better.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LogMar(pub(super) f64);

// Never NaN, and 0 has one sign: `new` sees to it.
impl Eq for LogMar {}

impl LogMar {
    /// An acuity in logMAR, −1.00 to 3.00.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside that, or for what is not a number.
    pub fn new(logmar: f64) -> Result<Self, OpticsError> {
        Ok(Self(limits::logmar(logmar)? + 0.0))
    }

    /// From the least angle resolved, in minutes of arc.
    ///
    /// # Errors
    /// [`OpticsError::NotPositive`] for what is not above 0; otherwise as [`LogMar::new`].
    pub fn from_mar(minutes: f64) -> Result<Self, OpticsError> {
        Self::new(exact::log10(positive(say::angle_resolved(), minutes)?))
    }

    /// From a decimal acuity: 0.5 is 6/12.
    ///
    /// # Errors
    /// As [`LogMar::from_mar`].
    pub fn from_decimal(decimal: f64) -> Result<Self, OpticsError> {
        Self::from_mar(1.0 / positive(say::decimal_acuity(), decimal)?)
    }

    /// From a fraction as read: the distance of the eye over the distance at which the letter subtends 5 minutes of arc,
    /// both in metres or both in feet.
    ///
    /// ```
    /// use optics::acuity::LogMar;
    /// let read = LogMar::from_fraction(3.0, 24.0)?;
    /// assert!((read.value() - 0.903).abs() < 0.001);
    /// assert!((read.size_at(6.0)? - 48.0).abs() < 1e-9);
    /// assert!((read.decimal() - 0.125).abs() < 1e-9);
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// As [`LogMar::from_mar`].
    pub fn from_fraction(distance: f64, size: f64) -> Result<Self, OpticsError> {
        let distance = positive(say::distance(), distance)?;
        let size = positive(say::size_of_letter(), size)?;
        Self::from_mar(size / distance)
    }

    /// In logMAR.
    pub const fn value(self) -> f64 {
        self.0
    }

    /// The least angle resolved, in minutes of arc.
    pub fn mar(self) -> f64 {
        exact::ten_to(self.0)
    }

    /// The decimal acuity.
    pub fn decimal(self) -> f64 {
        exact::ten_to(-self.0)
    }

    /// The exact number under the stroke for this number over it: 6/9.51 and not 6/9.5. For a label see
    /// [`EvenLine`](super::EvenLine).
    ///
    /// # Errors
    /// [`OpticsError::NotPositive`] or [`OpticsError::NotANumber`] for what is no distance.
    pub fn size_at(self, distance: f64) -> Result<f64, OpticsError> {
        Ok(positive(say::distance(), distance)? * self.mar())
    }
}

/// Gives a value back where it is a finite number above 0.
pub(super) fn positive(what: &'static str, value: f64) -> Result<f64, OpticsError> {
    if !value.is_finite() {
        Err(OpticsError::NotANumber { what })
    } else if value > 0.0 {
        Ok(value)
    } else {
        Err(OpticsError::NotPositive { what })
    }
}
