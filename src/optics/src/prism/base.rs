//! Bases by name: in, out, up, down.
//!
//! In is toward the nose. Seen by a person who faces the patient the nose lies to the right of the right eye and to the
//! left of the left eye, so `in` is 0 degrees before the right eye and 180 before the left (compass of ISO 8429:1986).

use super::Prism;
use crate::{Eye, OpticsError, limits};
use ::words::optics::prism as say;

/// Where the base of a prism lies, by name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Base {
    /// Toward the nose.
    In,
    /// Toward the temple.
    Out,
    /// Toward the brow.
    Up,
    /// Toward the cheek.
    Down,
}

impl Base {
    /// All four.
    pub const ALL: [Self; 4] = [Self::In, Self::Out, Self::Up, Self::Down];

    /// `in`, `out`, `up` or `down`, whatever language is spoken: as it stands in ids.
    pub const fn word(self) -> &'static str {
        match self {
            Self::In => "in",
            Self::Out => "out",
            Self::Up => "up",
            Self::Down => "down",
        }
    }

    /// The same as it is said to a reader, in the language spoken.
    pub fn said(self) -> &'static str {
        match self {
            Self::In => say::base_in(),
            Self::Out => say::base_out(),
            Self::Up => say::base_up(),
            Self::Down => say::base_down(),
        }
    }

    /// Its angle before this eye: 0, 90, 180 or 270 degrees.
    ///
    /// ```
    /// use optics::{Eye, prism::Base};
    /// assert_eq!(Base::In.degrees(Eye::Right), 0.0);
    /// assert_eq!(Base::In.degrees(Eye::Left), 180.0);
    /// ```
    pub const fn degrees(self, eye: Eye) -> f64 {
        match (self, eye) {
            (Self::In, Eye::Right) | (Self::Out, Eye::Left) => 0.0,
            (Self::Up, _) => 90.0,
            (Self::In, Eye::Left) | (Self::Out, Eye::Right) => 180.0,
            (Self::Down, _) => 270.0,
        }
    }

    /// Whether it lies along the horizontal.
    pub const fn is_horizontal(self) -> bool {
        matches!(self, Self::In | Self::Out)
    }
}

/// An amount of prism toward a named base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Toward {
    /// In prism dioptres, never negative.
    pub amount: f64,
    /// Where the base lies.
    pub base: Base,
}

impl Prism {
    /// So many Δ with the base toward a name, before this eye.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for an amount that is negative or that no field accepts.
    pub fn toward(amount: f64, base: Base, eye: Eye) -> Result<Self, OpticsError> {
        let amount = limits::prism(amount)?;
        match base {
            Base::In => Self::new(eye.noseward() * amount, 0.0),
            Base::Out => Self::new(-eye.noseward() * amount, 0.0),
            Base::Up => Self::new(0.0, amount),
            Base::Down => Self::new(0.0, -amount),
        }
    }

    /// Its horizontal part by name before this eye; 0 counts as in.
    pub fn horizontal(self, eye: Eye) -> Toward {
        named(self.h() * eye.noseward(), Base::In, Base::Out)
    }

    /// Its vertical part by name; 0 counts as up.
    pub fn vertical(self) -> Toward {
        named(self.v(), Base::Up, Base::Down)
    }
}

fn named(component: f64, positive: Base, negative: Base) -> Toward {
    let base = if component < 0.0 { negative } else { positive };
    Toward {
        amount: component.abs(),
        base,
    }
}
