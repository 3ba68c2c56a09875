//! A refraction found with a chart that is nearer than far away.
//!
//! At d metres the eye was focused at d, so the lens for far is `found sphere − 1/d`. Dioptres and metres; any chart
//! distance that [`crate::limits::chart_m`] accepts. At 6 m the allowance is 0.17 D and is usually left out, at 3 m it is
//! 0.33 D. For someone who never looks farther than their room, leaving it out can be a deliberate choice. The reciprocal
//! stands in every optics text ([`crate::vergence`]).
//!
//! ```
//! use optics::{SphereCyl, far};
//!
//! let found = SphereCyl::parse("−1.00 / −0.50 × 90")?;
//! assert_eq!(far::for_far(&found, 3.0)?.to_string(), "−1.33 / −0.50 × 90");
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::limits::OutOfRange;
use crate::{SphereCyl, limits, vergence};

/// Metres in a foot, exactly: the international yard and pound agreement of 1959.
pub const FOOT_M: f64 = 0.3048;

/// What a chart at this distance in metres adds to the sphere, in dioptres.
///
/// # Errors
/// [`OutOfRange`] for a distance that no chart is used at.
pub fn allowance(chart_m: f64) -> Result<f64, OutOfRange> {
    Ok(vergence::reciprocal(limits::chart_m(chart_m)?))
}

/// The lens for far, from the one found with a chart at this distance in metres.
///
/// # Errors
/// [`OutOfRange`] for a distance that no chart is used at.
pub fn for_far(found: &SphereCyl, chart_m: f64) -> Result<SphereCyl, OutOfRange> {
    Ok(found.with_sphere_changed(-allowance(chart_m)?))
}
