//! Between what distances an eye sees clearly through an addition.
//!
//! ```text
//! farthest = 1 / addition        nearest = 1 / (addition + amplitude)
//! ```
//!
//! Dioptres in, centimetres out, measured from the lens; the distance correction is full and stays on. Computed from the
//! definitions. The depth of focus adds to both ends and is left out.

use crate::{OpticsError, limits};

/// The stretch that is clear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClearRange {
    add: f64,
    amplitude: f64,
}

/// The stretch that is clear with an addition and an amplitude in dioptres, either of which may be 0.
///
/// ```
/// let clear = optics::near::clear_range(2.50, 0.50)?;
/// assert_eq!(clear.farthest_cm(), Some(40.0));
/// assert!((clear.nearest_cm().unwrap() - 33.3).abs() < 0.05);
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// [`OpticsError::OutOfRange`] for either.
pub fn clear_range(add: f64, amplitude: f64) -> Result<ClearRange, OpticsError> {
    Ok(ClearRange {
        add: limits::add_or_none(add)?,
        amplitude: limits::amplitude(amplitude)?,
    })
}

impl ClearRange {
    /// The farthest clear distance in centimetres, or nothing where it has no end.
    pub fn farthest_cm(self) -> Option<f64> {
        distance_cm(self.add)
    }

    /// The nearest clear distance in centimetres, or nothing where only far away is clear.
    pub fn nearest_cm(self) -> Option<f64> {
        distance_cm(self.add + self.amplitude)
    }

    /// Whether a distance in centimetres is clear, to a ten-thousandth of a dioptre.
    pub fn contains(self, cm: f64) -> bool {
        const CLOSE: f64 = 1e-4;
        let demand = 100.0 / cm;
        cm > 0.0 && demand >= self.add - CLOSE && demand <= self.add + self.amplitude + CLOSE
    }
}

/// Where a power has its focus.
fn distance_cm(power: f64) -> Option<f64> {
    let cm = 100.0 / power;
    cm.is_finite().then_some(cm)
}
