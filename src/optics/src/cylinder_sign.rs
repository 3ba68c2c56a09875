//! Which sign cylinders are written with: a choice of how to show a lens, never of what it does.

use crate::SphereCyl;
use ::words::optics::lens as say;
use serde::{Deserialize, Serialize};

/// The sign of a cylinder as somebody works or writes with it. Many find plus cylinders easier to judge while sweeping and
/// write results in minus (common practice, no source).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CylinderSign {
    /// Minus cylinders.
    #[default]
    Minus,
    /// Plus cylinders.
    Plus,
}

impl CylinderSign {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Minus, Self::Plus];

    /// `minus` or `plus`, whatever language is spoken.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Minus => "minus",
            Self::Plus => "plus",
        }
    }

    /// The same as it is said to a reader, in the language spoken.
    pub fn said(self) -> &'static str {
        match self {
            Self::Minus => say::cylinder_minus(),
            Self::Plus => say::cylinder_plus(),
        }
    }
}

impl SphereCyl {
    /// The same lens written with a cylinder of this sign.
    ///
    /// ```
    /// use optics::{CylinderSign, SphereCyl};
    ///
    /// let lens = SphereCyl::parse("+4.00 / −1.50 × 180")?;
    /// assert_eq!(lens.with_cylinder(CylinderSign::Plus).to_string(), "+2.50 / +1.50 × 90");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn with_cylinder(&self, sign: CylinderSign) -> Self {
        match sign {
            CylinderSign::Minus => self.minus_form(),
            CylinderSign::Plus => self.plus_form(),
        }
    }
}
