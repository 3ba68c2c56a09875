//! The sections of an exam, each a typed value in a file of its own.

mod acuity;
mod chart;
mod decision;
mod retinoscopy;
mod started;
mod subjective;
mod swept;

pub use acuity::{Acuity, EyeAcuity};
pub use chart::{Chart, Seen};
pub use decision::{Decision, Glasses, Recall, Referral, Urgency};
pub use retinoscopy::Retinoscopy;
pub use started::Started;
pub(crate) use subjective::FAR_M;
pub use subjective::{NearAdd, Subjective, SubjectiveEye};
pub use swept::{Cycloplegic, MovedIn, Swept};

use serde::{Deserialize, Serialize};

use crate::body::kinds;

/// One section of an exam, whole.
#[allow(
    clippy::large_enum_variant,
    reason = "a few sections are held at a time, and a box would only stand in everybody's way"
)]
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Section {
    /// What each eye reads.
    Acuity(Acuity),
    /// The lenses that neutralise the reflex.
    Retinoscopy(Retinoscopy),
    /// The lenses that the person chose.
    Subjective(Subjective),
    /// What is done about it.
    Decision(Decision),
}

/// Names a section without its contents.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SectionKind {
    /// See [`Acuity`].
    Acuity,
    /// See [`Retinoscopy`].
    Retinoscopy,
    /// See [`Subjective`].
    Subjective,
    /// See [`Decision`].
    Decision,
}

impl SectionKind {
    /// Every section, in the order in which an exam goes.
    pub const ALL: [Self; 4] = [
        Self::Acuity,
        Self::Retinoscopy,
        Self::Subjective,
        Self::Decision,
    ];

    /// The heading.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Acuity => "Acuity",
            Self::Retinoscopy => "Retinoscopy",
            Self::Subjective => "Subjective",
            Self::Decision => "Decision",
        }
    }

    /// The word in an address.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Acuity => "acuity",
            Self::Retinoscopy => "retinoscopy",
            Self::Subjective => "subjective",
            Self::Decision => "decision",
        }
    }

    /// Finds the section that an address names.
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.slug() == slug)
    }

    pub(crate) const fn wire_name(self) -> &'static str {
        match self {
            Self::Acuity => kinds::ACUITY,
            Self::Retinoscopy => kinds::RETINOSCOPY,
            Self::Subjective => kinds::SUBJECTIVE,
            Self::Decision => kinds::DECISION,
        }
    }

    pub(crate) fn from_wire_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.wire_name() == name)
    }
}

/// A section's contents alone, for writing: the kind already stands in the envelope.
#[derive(Serialize)]
#[serde(untagged)]
pub(crate) enum Inner<'a> {
    Acuity(&'a Acuity),
    Retinoscopy(&'a Retinoscopy),
    Subjective(&'a Subjective),
    Decision(&'a Decision),
}

impl Section {
    /// A section of this kind with nothing filled in.
    pub fn empty(kind: SectionKind) -> Self {
        match kind {
            SectionKind::Acuity => Self::Acuity(Acuity::default()),
            SectionKind::Retinoscopy => Self::Retinoscopy(Retinoscopy::default()),
            SectionKind::Subjective => Self::Subjective(Subjective::default()),
            SectionKind::Decision => Self::Decision(Decision::default()),
        }
    }

    /// Which section this is.
    pub const fn kind(&self) -> SectionKind {
        match self {
            Self::Acuity(_) => SectionKind::Acuity,
            Self::Retinoscopy(_) => SectionKind::Retinoscopy,
            Self::Subjective(_) => SectionKind::Subjective,
            Self::Decision(_) => SectionKind::Decision,
        }
    }

    pub(crate) const fn inner(&self) -> Inner<'_> {
        match self {
            Self::Acuity(section) => Inner::Acuity(section),
            Self::Retinoscopy(section) => Inner::Retinoscopy(section),
            Self::Subjective(section) => Inner::Subjective(section),
            Self::Decision(section) => Inner::Decision(section),
        }
    }
}
