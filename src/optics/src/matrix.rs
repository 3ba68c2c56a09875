//! The dioptric power matrix: what a lens does to a ray, across both directions at once.
//!
//! ```text
//! F = | S + C sin²A     −C sin A cos A |  =  | M + J0   J45    |
//!     | −C sin A cos A   S + C cos²A   |     | J45      M − J0 |
//! ```
//!
//! x lies horizontal toward the right of who faces the wearer, y upright, so that angles are those of an axis; entries in
//! dioptres, any finite values. Trace = 2 M, determinant = S (S + C), and the eigenvalues are the principal powers, each in
//! its eigenvector's meridian. Times a displacement from the optical centre it gives the change of a ray's direction, with
//! the sideways part that the power along a meridian leaves out. Source: Long 1976, Am J Optom Physiol Opt 53:27-33 (purpose
//! seen in its abstract; entries from memory, and checked against numpy's eigenvalues in `tests/published`).
//!
//! ```
//! use optics::{PowerMatrix, SphereCyl};
//!
//! let matrix = PowerMatrix::from(SphereCyl::parse("+2.00 / −1.00 × 30")?);
//! assert!((matrix.xx - 1.75).abs() < 1e-12 && (matrix.yy - 1.25).abs() < 1e-12);
//! assert!((matrix.xy - 0.4330).abs() < 5e-5);
//! assert!((matrix.trace() - 3.0).abs() < 1e-12 && (matrix.determinant() - 2.0).abs() < 1e-12);
//! assert_eq!(SphereCyl::from(matrix).to_string(), "+2.00 / −1.00 × 30");
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::{MeridianPower, PowerVector, SphereCyl};
use std::ops::{Add, Sub};

/// A symmetric 2 × 2 power matrix, entries in dioptres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PowerMatrix {
    /// Power from a horizontal displacement to a horizontal change.
    pub xx: f64,
    /// Power from one direction to the other.
    pub xy: f64,
    /// Power from an upright displacement to an upright change.
    pub yy: f64,
}

impl PowerMatrix {
    /// Twice the mean sphere, in dioptres.
    pub fn trace(self) -> f64 {
        self.xx + self.yy
    }

    /// The product of the principal powers, in square dioptres.
    pub fn determinant(self) -> f64 {
        self.xx * self.yy - self.xy * self.xy
    }

    /// The principal powers, the most plus first, each with its meridian.
    pub fn principal(self) -> [MeridianPower; 2] {
        SphereCyl::from(self).principal()
    }

    /// The matrix times a displacement `[x, y]`: of metres it gives radians, of centimetres prism dioptres.
    pub fn times(self, [x, y]: [f64; 2]) -> [f64; 2] {
        [self.xx * x + self.xy * y, self.xy * x + self.yy * y]
    }
}

impl From<PowerVector> for PowerMatrix {
    fn from(vector: PowerVector) -> Self {
        Self {
            xx: vector.m + vector.j0,
            xy: vector.j45,
            yy: vector.m - vector.j0,
        }
    }
}

impl From<SphereCyl> for PowerMatrix {
    fn from(lens: SphereCyl) -> Self {
        lens.vector().into()
    }
}

impl From<PowerMatrix> for PowerVector {
    fn from(matrix: PowerMatrix) -> Self {
        Self {
            m: f64::midpoint(matrix.xx, matrix.yy),
            j0: (matrix.xx - matrix.yy) / 2.0,
            j45: matrix.xy,
        }
    }
}

impl From<PowerMatrix> for SphereCyl {
    /// Minus form.
    fn from(matrix: PowerMatrix) -> Self {
        PowerVector::from(matrix).into()
    }
}

impl Add for PowerMatrix {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            xx: self.xx + other.xx,
            xy: self.xy + other.xy,
            yy: self.yy + other.yy,
        }
    }
}

impl Sub for PowerMatrix {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self {
            xx: self.xx - other.xx,
            xy: self.xy - other.xy,
            yy: self.yy - other.yy,
        }
    }
}
