//! The lens of the eye: its own, more or less clouded, an implant, or none.
//!
//! How much is said in plain words, or on the Lens Opacities Classification System III (Chylack et al. 1993, Arch
//! Ophthalmol 111:831-836): decimals against its standard photographs, nuclear opalescence from 0.1 to 6.9, cortical and
//! posterior subcapsular from 0.1 to 5.9 (the ends as widely cited, from memory). Without a slit lamp, a wide pupil and
//! the photographs beside it a figure says nothing: then words are the honest answer.

use ::words::record::sections as say;
use optics::limits::{self, OutOfRange};
use serde::{Deserialize, Serialize};

use crate::check::Checks;
use crate::finding::Eye;

/// The lens of an eye.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LensState {
    /// Its own.
    Own(Opacity),
    /// An implant.
    Implant {
        /// How much the capsule behind it is clouded, where anybody could tell.
        capsule: Option<Amount>,
    },
    /// None.
    None,
}

/// How much each part is clouded, where anybody could tell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Opacity {
    /// The nucleus.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nuclear: Option<Grade>,
    /// The cortex.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cortical: Option<Grade>,
    /// Under the capsule at the back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub posterior: Option<Grade>,
}

/// How much, in words or on the published scale.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grade {
    /// In words.
    Plain(Amount),
    /// On the Lens Opacities Classification System III, against its photographs.
    LocsIii(f64),
}

/// How much, in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Amount {
    /// None.
    Clear,
    /// A little.
    Mild,
    /// Clearly.
    Moderate,
    /// Densely.
    Dense,
}

impl Amount {
    /// Every amount, the clearest first.
    pub const ALL: [Self; 4] = [Self::Clear, Self::Mild, Self::Moderate, Self::Dense];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Clear => say::amount_clear(),
            Self::Mild => say::amount_mild(),
            Self::Moderate => say::amount_moderate(),
            Self::Dense => say::amount_dense(),
        }
    }
}

/// From this figure on the published scale a part of the lens is clouded to speak of. Own choice.
const CLOUDED_FROM: f64 = 2.0;

impl Grade {
    /// More than clear in words, 2.0 or more on the scale.
    fn is_clouded(self) -> bool {
        match self {
            Self::Plain(amount) => amount > Amount::Clear,
            Self::LocsIii(figure) => figure >= CLOUDED_FROM,
        }
    }
}

impl LensState {
    /// Whether the nucleus is clouded: more than clear in words, 2.0 or more on the scale.
    pub fn is_nuclear(&self) -> bool {
        match self {
            Self::Own(opacity) => opacity.nuclear.is_some_and(Grade::is_clouded),
            Self::Implant { .. } | Self::None => false,
        }
    }

    /// Whether any part of the eye's own lens is clouded, by the same figures.
    pub fn is_clouded(&self) -> bool {
        let Self::Own(opacity) = self else {
            return false;
        };
        let parts = [opacity.nuclear, opacity.cortical, opacity.posterior];
        parts.into_iter().flatten().any(Grade::is_clouded)
    }

    /// Whether the eye's own lens is gone: an implant, or none.
    pub const fn is_replaced(&self) -> bool {
        !matches!(self, Self::Own(_))
    }

    pub(super) fn check(&self, eye: Eye, checks: &mut Checks) {
        let Self::Own(opacity) = self else {
            return;
        };
        let parts = [
            ("nuclear", opacity.nuclear, limits::locs_nuclear as Limit),
            ("cortical", opacity.cortical, limits::locs_other),
            ("posterior", opacity.posterior, limits::locs_other),
        ];
        for (part, grade, limit) in parts {
            if let Some(Grade::LocsIii(figure)) = grade {
                checks.range(Checks::name(eye, part), limit(figure));
            }
        }
    }
}

type Limit = fn(f64) -> Result<f64, OutOfRange>;
