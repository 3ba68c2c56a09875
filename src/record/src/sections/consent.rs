//! Capacity and consent: whether the person can decide about this examination, and who agreed to what.
//!
//! Capacity is presumed, and is about one decision at one time. Whoever doubts it asks whether the person can understand,
//! retain and weigh what they are told, and say what they decide (Mental Capacity Act 2005, England and Wales, from
//! memory). A relative can't consent for an adult without legal power. Local law governs; the record says what was done.

use ::words::record::sections as say;
use serde::{Deserialize, Serialize};

use super::Filled;
use crate::check::{Checks, FieldError};
use crate::finding::Finding;

/// Whether the person can decide, and who agreed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Consent {
    /// Who asked for the visit.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub asked_for_by: String,
    /// How it was made sure who the person is.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub identified_by: String,
    /// Who was in the room.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub present: String,
    /// What helps the person to follow: hearing aid, language, time of day.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub communication: String,
    /// Whether the person can decide about this examination.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub capacity: Finding<Capacity>,
    /// Who agreed.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub agreed: Finding<Agreed>,
    /// What the person did not want, or withdrew from.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub declined: String,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// Whether a person can decide about this examination.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Capacity {
    /// Presumed: there was no reason to doubt it.
    Presumed,
    /// Doubted, and assessed.
    Assessed(Assessed),
}

impl Capacity {
    /// Whether the person can decide.
    pub const fn can_decide(&self) -> bool {
        match self {
            Self::Presumed => true,
            Self::Assessed(assessed) => {
                assessed.understands && assessed.retains && assessed.weighs && assessed.communicates
            }
        }
    }
}

/// The four questions, and how they were put.
#[allow(
    clippy::struct_excessive_bools,
    reason = "four questions, each answered yes or no on its own"
)]
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Assessed {
    /// Understands what is to be done.
    pub understands: bool,
    /// Keeps it in mind long enough to decide.
    pub retains: bool,
    /// Weighs it.
    pub weighs: bool,
    /// Says or shows what they decide.
    pub communicates: bool,
    /// How that was found out.
    pub how: String,
}

/// Who agreed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Agreed {
    /// The person, in words.
    Spoken,
    /// The person, by going along.
    Shown,
    /// The person, in writing.
    Written,
    /// Somebody with legal power.
    ByAttorney {
        /// Who, and what the power is.
        who: String,
    },
    /// Nobody could: it was done in the person's best interests.
    BestInterests {
        /// Why, and who was asked.
        why: String,
    },
    /// The person did not agree.
    Refused {
        /// In what words or how.
        how: String,
    },
}

impl Agreed {
    /// Whether it rests on the person's own decision.
    pub const fn is_own(&self) -> bool {
        matches!(self, Self::Spoken | Self::Shown | Self::Written)
    }
}

impl Filled for Consent {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.reason_of("capacity", &self.capacity);
        checks.reason_of("agreed", &self.agreed);
        if let Some(Capacity::Assessed(assessed)) = self.capacity.done() {
            checks.text("capacity.how", &assessed.how, say::ask_how_assessed());
        }
        match self.agreed.done() {
            Some(Agreed::ByAttorney { who }) => {
                checks.text("agreed.who", who, say::ask_who_agreed());
            }
            Some(Agreed::BestInterests { why }) => {
                checks.text("agreed.why", why, say::ask_best_interests())
            }
            Some(Agreed::Refused { how }) => {
                checks.text("agreed.how", how, say::ask_how_refused());
            }
            Some(Agreed::Spoken | Agreed::Shown | Agreed::Written) | None => {}
        }
        checks.done()
    }
}
