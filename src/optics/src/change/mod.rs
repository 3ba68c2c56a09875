//! How different a new prescription is from an old one, in the words of the trade.
//!
//! ```text
//! whole² = ΔM² + (ΔC / 2)² + C₁ C₂ sin² e
//! ```
//!
//! The whole difference is the blur strength of the lens between the two (Thibos, Wheeler and Horner 1997, Optom Vis Sci
//! 74:367-375). It falls into three parts exactly: the mean sphere M, the strength of the cylinder C, and its axis turned by
//! e degrees. So an axis weighs by the cylinder that it belongs to: `√(C₁ C₂) sin e` dioptres of blur, which is half of the
//! residual cylinder `2 C sin e` where the cylinder stays. Dioptres and degrees; any finite powers. The split follows from
//! the components by the rule of cosines; the residual cylinder stands in texts and in the tables of toric contact lenses.
//!
//! Sphere and cylinder are compared in the form (minus or plus cylinder) of the new lens.
//!
//! ```
//! use optics::SphereCyl;
//! use optics::change::Change;
//!
//! let old = SphereCyl::parse("+1.00 / −1.50 × 80")?;
//! let new = SphereCyl::parse("+1.75 / −1.50 × 90")?;
//! assert_eq!(
//!     Change::between(&old, &new)?.sentence(),
//!     "0.75 D more plus; axis 10 degrees round, which is 0.26 D at this cylinder"
//! );
//! # Ok::<(), optics::OpticsError>(())
//! ```

mod caution;
mod eyes;
mod thresholds;
mod words;

pub use caution::Caution;
pub use thresholds::{Threshold, ThresholdError, Thresholds};

use crate::exact;
use crate::{Cylinder, OpticsError, SphereCyl};
use ::words::optics::change as say;

/// What became of the cylinder.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CylinderChange {
    /// There was none and there is none.
    None,
    /// There was none.
    New(Cylinder),
    /// There is none now.
    Removed(Cylinder),
    /// There was one and there is one, in the same form.
    Both {
        /// The old one.
        from: Cylinder,
        /// The new one.
        to: Cylinder,
    },
}

/// One eye's change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Change {
    from: SphereCyl,
    to: SphereCyl,
}

impl Change {
    /// From an old lens to a new one.
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for a power that is none, or one so far from the other that the difference is none.
    pub fn between(old: &SphereCyl, new: &SphereCyl) -> Result<Self, OpticsError> {
        let from = match new.cylinder.map_or(old.cylinder_power(), Cylinder::power) {
            power if power > 0.0 => old.plus_form(),
            _ => old.minus_form(),
        };
        let change = Self { from, to: *new };
        // The stronger meridian of each, the sphere and the whole cover every figure that is made from them.
        let figures = [
            old.strongest(),
            new.strongest(),
            change.sphere(),
            change.blur(),
        ];
        if figures.iter().all(|figure| figure.is_finite()) {
            Ok(change)
        } else {
            Err(OpticsError::NotANumber { what: say::lens() })
        }
    }

    /// The old lens, in the form of the new one.
    pub const fn from(&self) -> &SphereCyl {
        &self.from
    }

    /// The new lens.
    pub const fn to(&self) -> &SphereCyl {
        &self.to
    }

    /// How much more plus the sphere is, in dioptres; more minus where negative.
    pub fn sphere(&self) -> f64 {
        self.to.sphere - self.from.sphere
    }

    /// How much more plus the mean sphere is, in dioptres; the same in either form of cylinder.
    pub fn mean_sphere(&self) -> f64 {
        self.to.mean_sphere() - self.from.mean_sphere()
    }

    /// What became of the cylinder.
    pub const fn cylinder(&self) -> CylinderChange {
        match (self.from.cylinder, self.to.cylinder) {
            (None, None) => CylinderChange::None,
            (None, Some(to)) => CylinderChange::New(to),
            (Some(from), None) => CylinderChange::Removed(from),
            (Some(from), Some(to)) => CylinderChange::Both { from, to },
        }
    }

    /// How much stronger the cylinder is, in dioptres; weaker where negative.
    pub fn cylinder_stronger(&self) -> f64 {
        self.to.cylinder_power().abs() - self.from.cylinder_power().abs()
    }

    /// How far the axis went round the shorter way, in degrees from −90 to 90, anticlockwise positive; 0 without an old and
    /// a new cylinder.
    pub fn axis_turned(&self) -> f64 {
        let CylinderChange::Both { from, to } = self.cylinder() else {
            return 0.0;
        };
        let round = (to.axis().degrees() - from.axis().degrees()).rem_euclid(180.0);
        if round > 90.0 { round - 180.0 } else { round }
    }

    /// What the turned axis amounts to by itself, in dioptres of blur strength.
    pub fn axis_blur(&self) -> f64 {
        let CylinderChange::Both { from, to } = self.cylinder() else {
            return 0.0;
        };
        // Root by root, for the product of very large powers has no number.
        let cylinder = from.power().abs().sqrt() * to.power().abs().sqrt();
        cylinder * exact::sin(self.axis_turned().to_radians()).abs()
    }

    /// The whole difference, in dioptres of blur strength.
    pub fn blur(&self) -> f64 {
        self.to.vector().distance(&self.from.vector())
    }
}
