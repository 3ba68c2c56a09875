//! A lens as two plano cylinders at right angles.
//!
//! ```text
//! S / C × A   is   (S + C) × A   and   S × (A ± 90)
//! ```
//!
//! Dioptres and degrees, any finite powers: a cylinder has its power 90 degrees from its axis, so the one with the axis A
//! carries the power that the lens has across A. A sphere is two equal cylinders, given with axes 180 and 90. The form
//! stands in every optics text; how it is printed is common practice, no source.
//!
//! ```
//! use optics::{CrossedCylinders, SphereCyl};
//!
//! let lens = SphereCyl::parse("+1.00 / +1.00 × 30")?;
//! let crossed = CrossedCylinders::from(lens);
//! assert_eq!(crossed.to_string(), "+2.00 DC × 30 / +1.00 DC × 120");
//! assert_eq!(SphereCyl::parse(&crossed.to_string())?, lens);
//! assert_eq!(SphereCyl::from(crossed), lens);
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::format::{plain, power};
use crate::sphere_cyl::finite;
use crate::{Axis, Cylinder, OpticsError, SphereCyl};
use ::words::optics::limits as say;
use std::fmt;

/// Two plano cylinders at right angles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrossedCylinders {
    powers: [f64; 2],
    axis: Axis,
}

impl CrossedCylinders {
    /// Two cylinders in dioptres: the first with this axis, the second with its axis 90 degrees from it.
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for an endless power.
    pub fn new(first: f64, axis: Axis, second: f64) -> Result<Self, OpticsError> {
        let powers = [
            finite(say::cylinder(), first)?,
            finite(say::cylinder(), second)?,
        ];
        Ok(Self { powers, axis })
    }

    /// Each cylinder's power in dioptres and its axis.
    pub fn cylinders(self) -> [(f64, Axis); 2] {
        let [first, second] = self.powers;
        [(first, self.axis), (second, self.axis.crossed())]
    }
}

impl From<SphereCyl> for CrossedCylinders {
    fn from(lens: SphereCyl) -> Self {
        let axis = lens.cylinder.map_or(Axis::wrapped(180.0), Cylinder::axis);
        Self {
            powers: [lens.sphere + lens.cylinder_power(), lens.sphere],
            axis,
        }
    }
}

impl From<CrossedCylinders> for SphereCyl {
    /// The cylinder keeps the first axis.
    fn from(crossed: CrossedCylinders) -> Self {
        let [across, along] = crossed.powers;
        Self::derived(along, across - along, crossed.axis.degrees())
    }
}

/// "+2.00 DC × 30 / +1.00 DC × 120"; a cylinder of 0 is shown, so that both stand there.
impl fmt::Display for CrossedCylinders {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [first, second] = self.cylinders().map(|(strength, axis)| {
            let degrees = match plain(axis.degrees(), 1) {
                zero if zero == "0" => "180".to_owned(),
                text => text,
            };
            format!("{} DC × {degrees}", power(strength))
        });
        write!(f, "{first} / {second}")
    }
}
