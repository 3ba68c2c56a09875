//! Thin lenses in contact: what they do together, and what one leaves of the other.
//!
//! ```text
//! together = the sum of the vectors        left over = the difference of the vectors
//! ```
//!
//! Each lens is turned into its [`PowerVector`], the vectors are added, and the sum is turned back; so
//! cylinders may cross at any angle. Dioptres and degrees, any finite powers. It holds for thin lenses in contact, or for
//! refractions that refer to one plane: move them there with [`crate::vertex`] first. Sphere, cylinder and axis must never
//! be added each for itself. Source: Thibos, Wheeler and Horner 1997, Optom Vis Sci 74:367-375; the same results follow
//! from the older construction in S. P. Thompson, “On obliquely-crossed cylindrical lenses”, Proc Phys Soc Lond 1899;17:81.
//!
//! Two cylinders that cross obliquely make a sphere and a cylinder, here both of −2.00 and 45 degrees apart:
//!
//! ```
//! use optics::{SphereCyl, contact};
//!
//! let one = SphereCyl::parse("pl / −2.00 × 180")?;
//! let other = SphereCyl::parse("pl / −2.00 × 45")?;
//! assert_eq!(contact::together(&[one, other])?.to_string(), "−0.59 / −2.83 × 22.5");
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::sphere_cyl::finite;
use crate::{OpticsError, PowerVector, SphereCyl};
use ::words::optics::limits as say;

/// What lenses in contact do together, in minus form. No lens at all does nothing.
///
/// # Errors
/// [`OpticsError::NotANumber`] for an endless power among them, or where their sum grows beyond all numbers.
pub fn together(lenses: &[SphereCyl]) -> Result<SphereCyl, OpticsError> {
    lens_of(lenses.iter().map(SphereCyl::vector).sum())
}

/// What must be added to `have` so that both do together what `want` does alone, in minus form.
///
/// # Errors
/// As [`together`].
pub fn left_over(want: &SphereCyl, have: &SphereCyl) -> Result<SphereCyl, OpticsError> {
    lens_of(want.vector() - have.vector())
}

/// The lens of a vector whose powers are finite.
pub(crate) fn lens_of(vector: PowerVector) -> Result<SphereCyl, OpticsError> {
    let lens = SphereCyl::from(vector);
    finite(say::sphere(), lens.sphere)?;
    finite(say::cylinder(), lens.cylinder_power())?;
    Ok(lens)
}
