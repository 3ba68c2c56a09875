//! What an entry says: its body, and the kind by which it is known on the wire.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::finding::Eye;
use crate::ids::{EntryId, ExamId, PersonId};
use crate::person::{Apart, PersonDetails, Same};
use crate::rounds::{Kit, PackedEntry, PlaceEntry, RoundEntry, VisitEntry};
use crate::sections::Section;
use crate::sent::Sent;
use crate::settings::Settings;

/// What an entry says.
#[allow(
    clippy::large_enum_variant,
    reason = "nearly every entry is a section, so a box would save nothing"
)]
#[derive(Clone, Debug, PartialEq)]
pub enum Body {
    /// A person's details, whole.
    Person {
        /// Who.
        person: PersonId,
        /// Everything known of who that is.
        details: PersonDetails,
    },
    /// An exam was begun.
    ExamOpened {
        /// The exam.
        exam: ExamId,
        /// Who is examined.
        person: PersonId,
        /// Where.
        place: String,
        /// On which day, where the tablet was.
        opened_on: NaiveDate,
    },
    /// One section of an exam, whole.
    Section {
        /// The exam.
        exam: ExamId,
        /// The section.
        section: Section,
        /// Why it changed, needed once the exam is signed.
        reason: Option<String>,
    },
    /// An exam was signed.
    Signed {
        /// The exam.
        exam: ExamId,
        /// The section versions that were signed.
        heads: Vec<EntryId>,
        /// Who signed, as it is printed.
        signer: String,
    },
    /// Something that the second look asked was answered.
    Answered(Answered),
    /// A paper left.
    Sent(Sent),
    /// A place's details, whole.
    Place(PlaceEntry),
    /// A round, whole.
    Round(RoundEntry),
    /// What became of a visit on a round.
    Visit(VisitEntry),
    /// What of the kit is in the bag for a round.
    Packed(PackedEntry),
    /// The kit list, whole.
    Kit(Kit),
    /// Two on record are one person.
    Same(Same),
    /// They are two after all.
    Apart(Apart),
    /// What a clinic sets for all its tablets, whole.
    Settings(Settings),
    /// An entry of a kind, or of a newer layout, that this version can't read. It is carried unharmed.
    Unread(Unread),
}

/// An answer to something that the second look asked, as it is kept and as it stands on the wire.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Answered {
    /// The exam.
    pub exam: ExamId,
    /// What was asked: [`crate::Rule::slug`]. A word, so that a rule that this version does not know stays readable.
    pub rule: String,
    /// Of which eye it was asked; none where it was of both or neither.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub eye: Option<Eye>,
    /// The answer, in the examiner's words.
    pub reason: String,
    /// The section versions that it speaks of. It says nothing of a later one.
    pub heads: Vec<EntryId>,
}

/// An entry that is carried without being understood: the bytes it came in, all of them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    kind: String,
    bytes: Vec<u8>,
}

impl Unread {
    pub(crate) const fn new(kind: String, bytes: Vec<u8>) -> Self {
        Self { kind, bytes }
    }

    /// The kind that the writer gave it.
    pub fn kind(&self) -> &str {
        &self.kind
    }

    /// The whole entry as it came.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }
}

impl Body {
    /// The kind by which this body is known on the wire.
    pub fn kind(&self) -> &str {
        match self {
            Self::Person { .. } => kinds::PERSON,
            Self::ExamOpened { .. } => kinds::EXAM_OPENED,
            Self::Section { section, .. } => section.kind().wire_name(),
            Self::Signed { .. } => kinds::SIGNED,
            Self::Answered(_) => kinds::ANSWERED,
            Self::Sent(_) => kinds::SENT,
            Self::Place(_) => kinds::PLACE,
            Self::Round(_) => kinds::ROUND,
            Self::Visit(_) => kinds::VISIT,
            Self::Packed(_) => kinds::PACKED,
            Self::Kit(_) => kinds::KIT,
            Self::Same(_) => kinds::SAME,
            Self::Apart(_) => kinds::APART,
            Self::Settings(_) => kinds::SETTINGS,
            Self::Unread(unread) => unread.kind(),
        }
    }
}

/// The registry of kinds on the wire. A name is never used again for something else.
pub(crate) mod kinds {
    pub const PERSON: &str = "person";
    pub const EXAM_OPENED: &str = "exam-opened";
    pub const ACUITY: &str = "section-acuity";
    pub const RETINOSCOPY: &str = "section-retinoscopy";
    pub const SUBJECTIVE: &str = "section-subjective";
    pub const DECISION: &str = "section-decision";
    pub const HISTORY: &str = "section-history";
    pub const CONSENT: &str = "section-consent";
    pub const WORN_GLASSES: &str = "section-worn-glasses";
    pub const PUPILS: &str = "section-pupils";
    pub const NEAR: &str = "section-near";
    pub const BINOCULAR: &str = "section-binocular";
    // A frozen sample of a kind that nobody knows is called section-pressure.
    pub const PRESSURE: &str = "section-eye-pressure";
    pub const DROPS: &str = "section-drops";
    pub const ANTERIOR: &str = "section-anterior";
    pub const POSTERIOR: &str = "section-posterior";
    pub const FIELDS: &str = "section-fields";
    pub const SKETCHES: &str = "section-sketches";
    pub const ORDER: &str = "section-order";
    pub const FITTING: &str = "section-fitting";
    pub const SIGNED: &str = "signed";
    pub const ANSWERED: &str = "answered";
    pub const SENT: &str = "paper-sent";
    pub const PLACE: &str = "place";
    pub const ROUND: &str = "round";
    pub const VISIT: &str = "round-visit";
    pub const PACKED: &str = "round-packed";
    pub const KIT: &str = "kit";
    pub const SAME: &str = "same-person";
    pub const APART: &str = "two-persons";
    pub const SETTINGS: &str = "settings";
}

#[derive(Serialize, Deserialize)]
pub(crate) struct PersonBody<D> {
    pub person: PersonId,
    pub details: D,
}

#[derive(Serialize, Deserialize)]
pub(crate) struct OpenedBody<S> {
    pub exam: ExamId,
    pub person: PersonId,
    pub place: S,
    pub opened_on: NaiveDate,
}

#[derive(Serialize, Deserialize)]
pub(crate) struct SectionBody<T, S> {
    pub exam: ExamId,
    pub section: T,
    #[serde(default = "none", skip_serializing_if = "Option::is_none")]
    pub reason: Option<S>,
}

fn none<S>() -> Option<S> {
    None
}

#[derive(Serialize, Deserialize)]
pub(crate) struct SignedBody<H, S> {
    pub exam: ExamId,
    pub heads: H,
    pub signer: S,
}
