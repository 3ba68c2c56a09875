//! What a lens becomes when it is worn nearer to the eye or farther from it.
//!
//! ```text
//! F' = F / (1 − d F)        d = (from − to) in metres, toward the eye positive
//! ```
//!
//! Dioptres and millimetres; distances are from the cornea to the back of the lens, 0 for a lens on the cornea. A
//! sphero-cylinder moves by its two principal powers, each for itself, and keeps its axis. The formula stands in every
//! optics text; it is for a thin lens in parallel light and needs d F < 1. Tables of it are in `tests/published`.
//!
//! ```
//! use optics::{SphereCyl, vertex};
//!
//! let spectacles = SphereCyl::parse("−8.00 / −3.00 × 20")?;
//! let on_the_cornea = vertex::effective_sphero_cyl(&spectacles, 14.0, 0.0)?;
//! assert_eq!(on_the_cornea.to_string(), "−7.19 / −2.34 × 20");
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::sphere_cyl::finite;
use crate::{OpticsError, SphereCyl};
use ::words::optics::limits as say;

/// From this power in dioptres in any meridian the vertex distance is worth writing down.
///
/// About 4 D is the figure in textbook chapters on refraction; some guidance says 5 D (from memory).
pub const MATTERS_FROM: f64 = 4.0;

/// Whether a lens is strong enough for its vertex distance to matter.
pub fn matters(lens: &SphereCyl) -> bool {
    lens.strongest() >= MATTERS_FROM
}

/// The power at `to_mm` that does what `power` does at `from_mm`, in dioptres.
///
/// # Errors
/// [`OpticsError::PastItsFocus`] where the lens comes to a focus before its new place; [`OpticsError::NotANumber`] for
/// endless values.
pub fn effective(power: f64, from_mm: f64, to_mm: f64) -> Result<f64, OpticsError> {
    let power = finite(say::power(), power)?;
    let by_mm = finite(say::vertex_distance(), from_mm - to_mm)?;
    if power * by_mm / 1000.0 >= 1.0 {
        return Err(OpticsError::PastItsFocus { power, by_mm });
    }
    finite(say::power(), moved(power, by_mm))
}

/// The lens at `to_mm` that does what `lens` does at `from_mm`; form and axis stay.
///
/// # Errors
/// As [`effective`], for either principal power.
pub fn effective_sphero_cyl(
    lens: &SphereCyl,
    from_mm: f64,
    to_mm: f64,
) -> Result<SphereCyl, OpticsError> {
    let [along, across] = lens.principal();
    let sphere = effective(along.power, from_mm, to_mm)?;
    let other = effective(across.power, from_mm, to_mm)?;
    let cylinder = finite(say::cylinder(), other - sphere)?;
    Ok(SphereCyl::derived(
        sphere,
        cylinder,
        along.meridian.degrees(),
    ))
}

/// The formula alone, for callers whose ranges keep d F below 1.
pub(crate) fn moved(power: f64, toward_eye_mm: f64) -> f64 {
    power / (1.0 - power * toward_eye_mm / 1000.0)
}
