//! A lens whose cylinder does not stand where it was meant to, and what is found through it.
//!
//! ```text
//! as it stands = the lens with its axis turned by r
//! residual     = as intended − as it stands           its cylinder is 2 C sin r
//! refraction   = as it stands + what is found over it
//! to order     = refraction with its axis turned by −r
//! ```
//!
//! Dioptres and degrees; r is anticlockwise as seen by who faces the wearer, like every axis, and may be any finite angle.
//! Sums are those of [`crate::contact`], so everything must refer to one plane. The residual is what must be added to mend
//! the error; its cylinder as `2 C sin r` stands in a trade white paper on the axis limits of ANSI Z80.1-2005 (D Torgersen,
//! 2006), and tables of it in the IACLE Contact Lens Course, module 3 (1993 and later). A lens to order stands right only if
//! it turns as the one before did.
//!
//! ```
//! use optics::{SphereCyl, off_axis};
//!
//! let lens = SphereCyl::parse("−2.00 / −3.00 × 180")?;
//! let residual = off_axis::residual(&lens, 10.0)?;
//! assert_eq!(residual.to_string(), "+0.52 / −1.04 × 140");
//!
//! let refraction = off_axis::refraction(&lens, 10.0, &residual)?;
//! assert_eq!(refraction.to_string(), lens.to_string());
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::sphere_cyl::finite;
use crate::{Cylinder, OpticsError, SphereCyl, contact};
use ::words::optics::limits as say;

/// The lens with its axis turned by so many degrees, anticlockwise positive; a sphere stays as it is.
///
/// # Errors
/// [`OpticsError::NotANumber`] for an endless angle or power.
pub fn turned(lens: &SphereCyl, by_degrees: f64) -> Result<SphereCyl, OpticsError> {
    let by_degrees = finite(say::turn(), by_degrees)?;
    let sphere = finite(say::sphere(), lens.sphere)?;
    let degrees = |c: Cylinder| c.axis().turned(by_degrees).degrees();
    SphereCyl::new(
        sphere,
        lens.cylinder_power(),
        lens.cylinder.map_or(180.0, degrees),
    )
}

/// What must be added to a lens that stands turned by so many degrees so that it does what was intended, in minus form.
///
/// # Errors
/// As [`turned`].
pub fn residual(intended: &SphereCyl, by_degrees: f64) -> Result<SphereCyl, OpticsError> {
    contact::left_over(intended, &turned(intended, by_degrees)?)
}

/// The refraction, from what is found over a lens that stands turned by so many degrees, in minus form.
///
/// # Errors
/// As [`turned`].
pub fn refraction(
    worn: &SphereCyl,
    by_degrees: f64,
    found_over: &SphereCyl,
) -> Result<SphereCyl, OpticsError> {
    contact::together(&[turned(worn, by_degrees)?, *found_over])
}

/// The lens to order, which does what the [`refraction`] asks once it has turned as the worn one has.
///
/// # Errors
/// As [`turned`].
pub fn to_order(
    worn: &SphereCyl,
    by_degrees: f64,
    found_over: &SphereCyl,
) -> Result<SphereCyl, OpticsError> {
    turned(&refraction(worn, by_degrees, found_over)?, -by_degrees)
}
