//! How much larger print must be for an eye with low vision, and the lens that makes it so.
//!
//! ```text
//! starting addition (Kestenbaum) = 1 / decimal acuity, in dioptres, for 1 M print
//! magnification = F / 4 (against 25 cm)      or F / 4 + 1 (image at 25 cm)
//! acuity reserve = print size / threshold size
//! magnification needed = threshold × reserve / target print
//! ```
//!
//! Kestenbaum's rule stands in preparation notes for examinations (20/200 gives +10 D; half of it for 2 M); the two
//! magnifications are common practice. A reserve of 2 : 1, that is 0.3 log unit, served as well as one found for each person
//! (Cheong, Lovie-Kitchin and Bowers 2002, Clin Exp Optom 85:229-237) and was enough for most of a hundred people, while a
//! third needed more (Latham and Tabrett 2012, Optom Vis Sci 89). Estimates from distance acuity usually come out too weak;
//! that a third of the distance denominator is the N size at 25 cm is unreliable in macular disease and not offered here.

use crate::acuity::{LogMar, Print};
use crate::{OpticsError, limits};

/// The acuity reserve to begin with: twice the threshold.
pub const FIXED_RESERVE: f64 = 2.0;

/// Kestenbaum's starting addition for 1 M print, in dioptres.
///
/// ```
/// use optics::acuity::LogMar;
/// use optics::near::{kestenbaum, reading_distance_cm};
/// let add = kestenbaum(LogMar::from_fraction(6.0, 60.0)?);
/// assert!((add - 10.0).abs() < 1e-9);
/// assert!((reading_distance_cm(add)? - 10.0).abs() < 1e-9);
/// # Ok::<(), optics::OpticsError>(())
/// ```
pub fn kestenbaum(acuity: LogMar) -> f64 {
    acuity.mar()
}

/// The same for print of another size, in dioptres: larger print needs less.
pub fn kestenbaum_for(acuity: LogMar, target: Print) -> f64 {
    kestenbaum(acuity) / target.m_units()
}

/// Where print must be held for a lens to focus it without accommodation, in centimetres.
///
/// # Errors
/// [`OpticsError::OutOfRange`] for a power outside 0.25 to 80 D.
pub fn reading_distance_cm(power: f64) -> Result<f64, OpticsError> {
    Ok(100.0 / limits::magnifier(power)?)
}

/// What a lens magnifies against print held at 25 cm: a quarter of its power.
///
/// # Errors
/// As [`reading_distance_cm`].
pub fn magnification(power: f64) -> Result<f64, OpticsError> {
    Ok(limits::magnifier(power)? / 4.0)
}

/// What a lens magnifies held so that its image stands at 25 cm: a quarter of its power and one more.
///
/// # Errors
/// As [`reading_distance_cm`].
pub fn magnification_at_near_point(power: f64) -> Result<f64, OpticsError> {
    Ok(magnification(power)? + 1.0)
}

/// How many times larger than the threshold print is; below 1 it is not read.
pub fn acuity_reserve(print: Print, threshold: Print) -> f64 {
    print.m_units() / threshold.m_units()
}

/// How much larger the target print must be made for a reserve above the threshold.
///
/// ```
/// use optics::near::{FIXED_RESERVE, magnification_needed};
/// let needed = magnification_needed("N12".parse()?, "N8".parse()?, FIXED_RESERVE)?;
/// assert!((needed - 3.0).abs() < 1e-9);
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// [`OpticsError::OutOfRange`] for a reserve outside 1 to 10.
pub fn magnification_needed(
    threshold: Print,
    target: Print,
    reserve: f64,
) -> Result<f64, OpticsError> {
    Ok(limits::acuity_reserve(reserve)? / acuity_reserve(target, threshold))
}
