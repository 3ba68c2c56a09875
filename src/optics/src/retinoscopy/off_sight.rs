//! An eye looked at from beside its line of sight.
//!
//! Eight adults with drops, the right eye turned in by so many degrees (Jackson and others 2004, Am J Ophthalmol
//! 137:1101-1104, abstract seen):
//!
//! ```text
//! degrees                 0      5      10     15     20
//! mean sphere, D        −0.02  −0.59  −0.45  −0.64  −0.98
//! sphere, D             −0.40  −0.90  −1.00  −1.38  −1.80
//! ```
//!
//! and the cylinder rose by about 3 % a degree with an axis that nobody could foretell. Here the shift is each figure
//! less the one at 0, read between the columns on straight lines, and refused beyond 20 degrees. The abstract gives no
//! spread, so the uncertainty is how far the paper's own figures lie off a straight line through 0: 0.20 D of mean
//! sphere, 0.11 D of sphere (root mean square over 3 degrees of freedom, computed). It is a mean of eight eyes turned
//! in: a reason to move the head, never a correction. An older study with a machine found little within 4 degrees (US
//! college thesis, 1985); aiming within about 5 is common practice, no source.
//!
//! ```
//! use optics::retinoscopy::{WorkingDistance, off_sight};
//!
//! // Six centimetres beside the line of sight at 67 cm are 5.1 degrees.
//! let degrees = off_sight::degrees(6.0, WorkingDistance::from_cm(67.0)?)?;
//! assert!((degrees - 5.12).abs() < 0.01);
//! let shift = off_sight::shift(5.0)?;
//! assert!((shift.mean_sphere - -0.57).abs() < 1e-9);
//! assert!(!off_sight::is_close_enough(degrees));
//! # Ok::<(), optics::OpticsError>(())
//! ```

use super::WorkingDistance;
use crate::exact;
use crate::limits::{self, OutOfRange};

/// Within so many degrees of the line of sight one should be (common practice, no source).
pub const AIM_WITHIN: f64 = 5.0;

/// How much the cylinder rises for each degree, as a share of itself (Jackson and others 2004).
pub const CYLINDER_PER_DEGREE: f64 = 0.03;

/// Between the columns of the table, in degrees.
const COLUMN: f64 = 5.0;

const MEAN_SPHERE: [f64; 5] = [-0.02, -0.59, -0.45, -0.64, -0.98];
const SPHERE: [f64; 5] = [-0.40, -0.90, -1.00, -1.38, -1.80];

/// How far the figures lie off a straight line, in dioptres.
const MEAN_SPHERE_OFF: f64 = 0.20;
const SPHERE_OFF: f64 = 0.11;

/// By how much retinoscopy beside the line of sight reads otherwise than on it, in dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shift {
    /// Of the mean sphere.
    pub mean_sphere: f64,
    /// How sure that is, one standard deviation.
    pub mean_sphere_within: f64,
    /// Of the sphere.
    pub sphere: f64,
    /// How sure that is, one standard deviation.
    pub sphere_within: f64,
    /// How many times as large the cylinder is.
    pub cylinder_times: f64,
}

/// The shift at so many degrees off the line of sight, 0 to 20.
///
/// # Errors
/// [`OutOfRange`] beyond the table.
pub fn shift(degrees: f64) -> Result<Shift, OutOfRange> {
    let degrees = limits::off_sight(degrees)?;
    Ok(Shift {
        mean_sphere: read(&MEAN_SPHERE, degrees),
        mean_sphere_within: MEAN_SPHERE_OFF,
        sphere: read(&SPHERE, degrees),
        sphere_within: SPHERE_OFF,
        cylinder_times: 1.0 + CYLINDER_PER_DEGREE * degrees,
    })
}

/// How many degrees off one is, from how many centimetres the retinoscope stands beside the line of sight.
///
/// # Errors
/// [`OutOfRange`] beyond 50 cm.
pub fn degrees(beside_cm: f64, distance: WorkingDistance) -> Result<f64, OutOfRange> {
    let beside = limits::beside_cm(beside_cm)?;
    Ok(exact::atan(beside / distance.cm()).to_degrees())
}

/// Whether one is as close to the line of sight as one should be.
pub fn is_close_enough(degrees: f64) -> bool {
    degrees.abs() <= AIM_WITHIN
}

/// What a line of the table has above its first figure.
fn read(line: &[f64; 5], degrees: f64) -> f64 {
    let column = ((degrees / COLUMN) as usize).min(line.len() - 2);
    let [before, after] = [line[column], line[column + 1]];
    let along = degrees / COLUMN - column as f64;
    before + (after - before) * along - line[0]
}
