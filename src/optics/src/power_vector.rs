//! The form of a lens that adds: three powers that are independent of one another.
//!
//! For a lens of sphere S, cylinder C, axis A (all in dioptres, A in degrees):
//!
//! ```text
//! M = S + C/2        J0 = −(C/2) cos 2A        J45 = −(C/2) sin 2A
//! ```
//!
//! and back, in minus form: `C = −2 √(J0² + J45²)`, `S = M − C/2`, `A = ½ atan2(J45, J0)`.
//! Source: Thibos, Wheeler and Horner 1997, Optom Vis Sci 74:367-375 (components and length seen in its abstract; the
//! signs of J0 and J45 from memory).
//!
//! Any finite powers are valid. Sums hold for thin lenses in contact, or for refractions that refer to the same plane:
//! move them to one plane with [`crate::vertex`] first. Figures at 40 digits are in `tests/published`.
//!
//! ```
//! use optics::SphereCyl;
//!
//! let vector = SphereCyl::parse("+2.00 / −1.00 × 30")?.vector();
//! assert_eq!(vector.m, 1.5);
//! assert!((vector.j0 - 0.25).abs() < 1e-12 && (vector.j45 - 0.4330).abs() < 5e-5);
//! assert!((vector.blur_strength() - 1.5811).abs() < 5e-5);
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::{SphereCyl, exact};
use std::iter::Sum;
use std::ops::{Add, Mul, Neg, Sub};

/// A lens as mean sphere and two crossed cylinders, all in dioptres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PowerVector {
    /// Mean sphere.
    pub m: f64,
    /// Crossed cylinder along 180 and 90.
    pub j0: f64,
    /// Crossed cylinder along 45 and 135.
    pub j45: f64,
}

impl PowerVector {
    /// The blur that the lens makes, `√(M² + J0² + J45²)` in dioptres: the vector's length.
    pub fn blur_strength(self) -> f64 {
        exact::hypot(self.m, self.astigmatism())
    }

    /// The crossed-cylinder part alone, `√(J0² + J45²)` in dioptres: half the size of the cylinder.
    pub fn astigmatism(self) -> f64 {
        exact::hypot(self.j0, self.j45)
    }

    /// How far another lens is from this one: the blur strength of the difference, in dioptres.
    pub fn distance(&self, other: &Self) -> f64 {
        (*self - *other).blur_strength()
    }
}

impl From<SphereCyl> for PowerVector {
    fn from(lens: SphereCyl) -> Self {
        let (half, twice) = lens.cylinder.map_or((0.0, 0.0), |c| {
            (c.power() / 2.0, (2.0 * c.axis().degrees()).to_radians())
        });
        let (sine, cosine) = exact::sin_cos(twice);
        Self {
            m: lens.sphere + half,
            j0: -half * cosine,
            j45: -half * sine,
        }
    }
}

impl From<PowerVector> for SphereCyl {
    /// Minus form; a cylinder too weak to be more than arithmetic dust is none.
    fn from(vector: PowerVector) -> Self {
        let half = vector.astigmatism();
        let axis_degrees = exact::atan2(vector.j45, vector.j0).to_degrees() / 2.0;
        SphereCyl::derived(vector.m + half, -2.0 * half, axis_degrees)
    }
}

impl Add for PowerVector {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            m: self.m + other.m,
            j0: self.j0 + other.j0,
            j45: self.j45 + other.j45,
        }
    }
}

impl Neg for PowerVector {
    type Output = Self;
    fn neg(self) -> Self {
        self * -1.0
    }
}

impl Sub for PowerVector {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Mul<f64> for PowerVector {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            m: self.m * factor,
            j0: self.j0 * factor,
            j45: self.j45 * factor,
        }
    }
}

impl Sum for PowerVector {
    fn sum<I: Iterator<Item = Self>>(vectors: I) -> Self {
        vectors.fold(Self::default(), Add::add)
    }
}
