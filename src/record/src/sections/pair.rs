//! What a pair of glasses is for, and how its lenses are made.

use ::words::record::sections as say;
use serde::{Deserialize, Serialize};

/// What a pair of glasses is used for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum UsedFor {
    /// Far.
    #[default]
    Far,
    /// Near.
    Near,
    /// In between: the table, a screen.
    Between,
    /// Far and near.
    FarAndNear,
}

impl UsedFor {
    /// Every use.
    pub const ALL: [Self; 4] = [Self::Far, Self::Near, Self::Between, Self::FarAndNear];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Far => say::far(),
            Self::Near => say::near(),
            Self::Between => say::in_between(),
            Self::FarAndNear => say::far_and_near(),
        }
    }

    /// Whether its lenses are those for far.
    pub const fn is_for_far(self) -> bool {
        matches!(self, Self::Far | Self::FarAndNear)
    }
}

/// How lenses are made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LensForm {
    /// One power.
    #[default]
    SingleVision,
    /// A segment for near.
    Bifocal,
    /// Segments for near and in between.
    Trifocal,
    /// A power that grows downward without a line.
    Progressive,
}

impl LensForm {
    /// Every form.
    pub const ALL: [Self; 4] = [
        Self::SingleVision,
        Self::Bifocal,
        Self::Trifocal,
        Self::Progressive,
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::SingleVision => say::single_vision(),
            Self::Bifocal => say::bifocal(),
            Self::Trifocal => say::trifocal(),
            Self::Progressive => say::progressive(),
        }
    }

    /// Whether it has more than one power.
    pub const fn is_multifocal(self) -> bool {
        !matches!(self, Self::SingleVision)
    }
}
