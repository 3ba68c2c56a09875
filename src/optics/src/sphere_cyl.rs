//! The written form of a lens: sphere, cylinder and axis.
//!
//! ```text
//! transposed:   S' = S + C     C' = −C     A' = A ± 90
//! mean sphere:  S + C/2
//! along t:      F(t) = S + C sin²(t − A)
//! ```
//!
//! Powers in dioptres, angles in degrees; any finite power is valid here, while [`crate::limits`] says what a field
//! accepts. The formulas stand in every optics text. The power along a meridian is the curvature alone: off the principal
//! meridians a ray also bends sideways, so it must not be used for prism ([`crate::PowerMatrix`] is for that).
//!
//! ```
//! use optics::SphereCyl;
//!
//! let lens = SphereCyl::new(4.0, 1.5, 20.0)?;
//! assert_eq!(lens.minus_form(), SphereCyl::new(5.5, -1.5, 110.0)?);
//! assert_eq!(lens.mean_sphere(), 4.75);
//! assert!((lens.power_along(65.0) - 4.75).abs() < 1e-12);
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::exact;
use crate::{Axis, Meridian, OpticsError, PowerVector};
use ::words::optics::limits as say;
use serde::{Deserialize, Serialize};

/// Below this many dioptres a cylinder is the dust of floating arithmetic and its axis means nothing.
const DUST: f64 = 1e-9;

/// A cylinder: a power that is never 0, and the axis that therefore always means something.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "CylinderFields", into = "CylinderFields")]
pub struct Cylinder {
    power: f64,
    axis: Axis,
}

impl Cylinder {
    /// A cylinder of this power in dioptres, or none where the power is 0.
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for an endless power.
    pub fn new(power: f64, axis: Axis) -> Result<Option<Self>, OpticsError> {
        let power = finite(say::cylinder(), power)?;
        Ok((power != 0.0).then_some(Self { power, axis }))
    }

    /// Power in dioptres, never 0.
    pub const fn power(self) -> f64 {
        self.power
    }

    /// The axis.
    pub const fn axis(self) -> Axis {
        self.axis
    }
}

/// A power acting in one meridian.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct MeridianPower {
    /// Where it acts.
    pub meridian: Meridian,
    /// Dioptres.
    pub power: f64,
}

/// A lens or a refraction as it is written down. An axis without a cylinder cannot be expressed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "SphereCylFields")]
pub struct SphereCyl {
    /// Dioptres along the cylinder's axis, or everywhere where there is no cylinder.
    pub sphere: f64,
    /// The cylinder, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cylinder: Option<Cylinder>,
}

impl SphereCyl {
    /// A lens without a cylinder, in dioptres.
    pub const fn sphere(power: f64) -> Self {
        Self {
            sphere: power,
            cylinder: None,
        }
    }

    /// A lens from sphere, cylinder (dioptres) and axis (0 to 180 degrees). A cylinder of 0 is none, and takes no axis.
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for an endless power; [`OpticsError::OutOfRange`] for the axis of a cylinder.
    pub fn new(sphere: f64, cylinder: f64, axis_degrees: f64) -> Result<Self, OpticsError> {
        let sphere = finite(say::sphere(), sphere)?;
        if cylinder == 0.0 {
            return Ok(Self::sphere(sphere));
        }
        let cylinder = Cylinder::new(cylinder, Axis::new(axis_degrees)?)?;
        Ok(Self { sphere, cylinder })
    }

    /// A lens that came out of arithmetic: the angle may be any, and dust is no cylinder.
    pub(crate) fn derived(sphere: f64, cylinder: f64, axis_degrees: f64) -> Self {
        if cylinder.abs() < DUST {
            return Self::sphere(sphere + cylinder / 2.0);
        }
        let cylinder = Some(Cylinder {
            power: cylinder,
            axis: Axis::wrapped(axis_degrees),
        });
        Self { sphere, cylinder }
    }

    /// The lens with this power at one meridian and the other power 90 degrees from it, in minus form.
    pub fn from_meridians(first: MeridianPower, second: f64) -> Self {
        let (most_plus, least, meridian) = if first.power >= second {
            (first.power, second, first.meridian)
        } else {
            (second, first.power, first.meridian.crossed())
        };
        // In minus form the sphere acts alone along the axis, so the axis lies in the most plus meridian.
        Self::derived(most_plus, least - most_plus, meridian.degrees())
    }

    /// The cylinder's power in dioptres, 0 where there is none.
    pub fn cylinder_power(&self) -> f64 {
        self.cylinder.map_or(0.0, Cylinder::power)
    }

    /// The same lens with the other sign of cylinder.
    #[must_use]
    pub fn transposed(&self) -> Self {
        let Some(Cylinder { power, axis }) = self.cylinder else {
            return *self;
        };
        Self {
            sphere: self.sphere + power,
            cylinder: Some(Cylinder {
                power: -power,
                axis: axis.crossed(),
            }),
        }
    }

    /// The same lens written with a minus cylinder.
    #[must_use]
    pub fn minus_form(&self) -> Self {
        if self.cylinder_power() > 0.0 {
            self.transposed()
        } else {
            *self
        }
    }

    /// The same lens written with a plus cylinder.
    #[must_use]
    pub fn plus_form(&self) -> Self {
        if self.cylinder_power() < 0.0 {
            self.transposed()
        } else {
            *self
        }
    }

    /// The same lens with its sphere changed by so many dioptres; cylinder and axis stay.
    #[must_use]
    pub fn with_sphere_changed(&self, by: f64) -> Self {
        Self {
            sphere: self.sphere + by,
            ..*self
        }
    }

    /// Mean sphere (spherical equivalent) in dioptres.
    pub fn mean_sphere(&self) -> f64 {
        self.sphere + self.cylinder_power() / 2.0
    }

    /// Power in dioptres along a meridian at any angle in degrees.
    pub fn power_along(&self, degrees: f64) -> f64 {
        self.sphere
            + self.cylinder.map_or(0.0, |c| {
                let sine = exact::sin((degrees - c.axis.degrees()).to_radians());
                c.power * sine * sine
            })
    }

    /// The two principal powers: first along the axis (the sphere), then 90 degrees from it (sphere and cylinder).
    ///
    /// A lens without a cylinder has the same power everywhere; it is given at 180 and 90.
    pub fn principal(&self) -> [MeridianPower; 2] {
        let along = self
            .cylinder
            .map_or(Axis::wrapped(180.0), |c| c.axis)
            .power_meridian()
            .crossed();
        [
            MeridianPower {
                meridian: along,
                power: self.sphere,
            },
            MeridianPower {
                meridian: along.crossed(),
                power: self.sphere + self.cylinder_power(),
            },
        ]
    }

    /// The stronger principal power's size in dioptres, without sign.
    pub fn strongest(&self) -> f64 {
        let [first, second] = self.principal();
        first.power.abs().max(second.power.abs())
    }

    /// The form that adds.
    pub fn vector(&self) -> PowerVector {
        PowerVector::from(*self)
    }
}

/// Gives a value back where it is a finite number.
pub(crate) fn finite(what: &'static str, value: f64) -> Result<f64, OpticsError> {
    if value.is_finite() {
        Ok(value)
    } else {
        Err(OpticsError::NotANumber { what })
    }
}

/// A cylinder as it is stored, before it is checked.
#[derive(Serialize, Deserialize)]
struct CylinderFields {
    power: f64,
    axis: Axis,
}

impl TryFrom<CylinderFields> for Cylinder {
    type Error = OpticsError;
    fn try_from(fields: CylinderFields) -> Result<Self, OpticsError> {
        Self::new(fields.power, fields.axis)?.ok_or(OpticsError::EmptyCylinder)
    }
}

impl From<Cylinder> for CylinderFields {
    fn from(cylinder: Cylinder) -> Self {
        Self {
            power: cylinder.power,
            axis: cylinder.axis,
        }
    }
}

/// A lens as it is stored, before it is checked.
#[derive(Deserialize)]
struct SphereCylFields {
    sphere: f64,
    #[serde(default)]
    cylinder: Option<Cylinder>,
}

impl TryFrom<SphereCylFields> for SphereCyl {
    type Error = OpticsError;
    fn try_from(fields: SphereCylFields) -> Result<Self, OpticsError> {
        Ok(Self {
            sphere: finite(say::sphere(), fields.sphere)?,
            cylinder: fields.cylinder,
        })
    }
}
