//! Prism: how far a lens turns a line of sight aside, and which way.
//!
//! ```text
//! P = 100 tan(deviation)                 1 Δ moves a ray 1 cm aside at 1 m
//! P = √(H² + V²)    base = atan2(V, H)   H = P cos(base)    V = P sin(base)
//! P = F d                                Prentice: d in centimetres, F in dioptres (see [`Decentration`])
//! ```
//!
//! A [`Prism`] is kept as two components in prism dioptres (Δ), base toward the right of a person who faces the patient
//! and base up, for components are what adds. Its base angle runs from 0 to 360 degrees, anticlockwise from that person's
//! right, the same for both eyes (ISO 8429:1986). So 0 is base in before the right eye and base out before the left;
//! names of bases need an [`Eye`](crate::Eye).
//!
//! Any finite components are valid; [`crate::limits::prism`] says what a field accepts. The unit is defined by its
//! tangent in UCUM; adding components is exact where they are displacements on one screen. Prentice's rule is for rays
//! near the axis: high powers looked through far off centre turn more than it says (see [`Decentration`]).
//!
//! ```
//! use optics::prism::{Base, Prism};
//! use optics::Eye;
//!
//! let up = Prism::toward(1.5, Base::Up, Eye::Right)?;
//! let inward = Prism::toward(2.0, Base::In, Eye::Right)?;
//! let both = up + inward;
//! assert_eq!(both.written(Eye::Right), "1.50 up & 2.00 in");
//! assert_eq!(both.to_string(), "2.50 @ 36.9");
//! # Ok::<(), optics::OpticsError>(())
//! ```

mod base;
mod decentration;
mod pair;
mod written;

use ::words::optics::prism as say;
pub use base::{Base, Toward};
pub use decentration::Decentration;
pub use pair::{ASK_FROM, Reading, ReadingPrism, relative, split};
pub use written::ReadError;

use crate::exact;
use crate::sphere_cyl::finite;
use crate::{OpticsError, limits};
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, Mul, Neg, Sub};

/// The step of prism in a trial case, in prism dioptres: common practice, no source.
pub const STEP: f64 = 0.25;

/// A prism as two components in prism dioptres.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(try_from = "PrismFields")]
pub struct Prism {
    h: f64,
    v: f64,
}

impl Prism {
    /// No prism.
    pub const NONE: Self = Self { h: 0.0, v: 0.0 };

    /// Base toward the right of a person who faces the patient, and base up; the other way where negative. In Δ.
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for an endless component.
    pub fn new(h: f64, v: f64) -> Result<Self, OpticsError> {
        Ok(Self {
            h: finite(say::horizontal(), h)?,
            v: finite(say::vertical(), v)?,
        })
    }

    /// So many Δ with the base at an angle of 0 to 360 degrees.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for an angle outside that, or an amount that is negative or no field accepts.
    pub fn at(amount: f64, base_degrees: f64) -> Result<Self, OpticsError> {
        let amount = limits::prism(amount)?;
        let (sine, cosine) = exact::sin_cos(limits::prism_base(base_degrees)?.to_radians());
        Self::new(amount * cosine, amount * sine)
    }

    /// The component with its base toward the right of a person who faces the patient, in Δ; to the left where negative.
    pub const fn h(self) -> f64 {
        self.h
    }

    /// The component with its base up, in Δ; down where negative.
    pub const fn v(self) -> f64 {
        self.v
    }

    /// The whole prism in Δ, never negative.
    pub fn amount(self) -> f64 {
        exact::hypot(self.h, self.v)
    }

    /// Where its base lies, in degrees in [0, 360). No prism has its base at 0.
    pub fn base_degrees(self) -> f64 {
        let degrees = exact::atan2(self.v, self.h).to_degrees().rem_euclid(360.0);
        // A hair below 0 is brought to 360 itself.
        if degrees < 360.0 { degrees } else { 0.0 }
    }

    /// The angle by which it turns a ray, in degrees in [0, 90).
    pub fn deviation_degrees(self) -> f64 {
        exact::atan(self.amount() / 100.0).to_degrees()
    }

    /// Both components on the nearest 0.25 Δ, halves away from zero; less than half a step is none (common practice, no
    /// source).
    #[must_use]
    pub fn rounded(self) -> Self {
        let nearest = |component: f64| (component / STEP).round() * STEP;
        Self {
            h: nearest(self.h),
            v: nearest(self.v),
        }
    }
}

/// The prism in Δ that turns a ray by an angle in degrees: `100 tan(angle)`, the angle from 0 up to 45.
///
/// ```
/// let seven = optics::prism::of_deviation(4.0)?;
/// assert!((seven - 6.993).abs() < 0.0005);
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// [`OpticsError::OutOfRange`] outside that.
pub fn of_deviation(degrees: f64) -> Result<f64, OpticsError> {
    Ok(100.0 * exact::tan(limits::deviation(degrees)?.to_radians()))
}

impl Add for Prism {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            h: self.h + other.h,
            v: self.v + other.v,
        }
    }
}

impl Neg for Prism {
    type Output = Self;
    fn neg(self) -> Self {
        self * -1.0
    }
}

impl Sub for Prism {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Mul<f64> for Prism {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            h: self.h * factor,
            v: self.v * factor,
        }
    }
}

impl Sum for Prism {
    fn sum<I: Iterator<Item = Self>>(prisms: I) -> Self {
        prisms.fold(Self::NONE, Add::add)
    }
}

/// A prism as it is stored, before it is checked.
#[derive(Deserialize)]
struct PrismFields {
    h: f64,
    v: f64,
}

impl TryFrom<PrismFields> for Prism {
    type Error = OpticsError;
    fn try_from(fields: PrismFields) -> Result<Self, OpticsError> {
        Self::new(fields.h, fields.v)
    }
}
