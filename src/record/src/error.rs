//! What can go wrong when reading or writing a record.

use thiserror::Error;

use crate::ids::{EntryId, ExamId, PersonId};
use crate::sections::SectionKind;

/// Why bytes could not be read as an entry or a draft. Nothing is changed by a failed reading.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ReadError {
    /// Longer than anything this project writes.
    #[error("{bytes} bytes are more than an entry may have ({limit})")]
    TooLong {
        /// How many there are.
        bytes: usize,
        /// How many there may be.
        limit: usize,
    },
    /// The bytes are not CBOR, or end too early.
    #[error("the bytes stop being readable{}", place(*.at))]
    NotCbor {
        /// The offset at which reading stopped, where it is known.
        at: Option<usize>,
    },
    /// Nested deeper than anything this project writes.
    #[error("the bytes are nested too deeply")]
    TooDeep,
    /// Something follows the entry.
    #[error("{bytes} bytes follow the end of the entry")]
    Trailing {
        /// How many bytes follow.
        bytes: usize,
    },
    /// The part that every entry has is missing something or has the wrong type.
    #[error("the entry's envelope cannot be read: {why}")]
    Envelope {
        /// What the decoder found.
        why: String,
    },
    /// The envelope is good and the kind is known, but the body is not what that kind has.
    #[error("the body of this {kind} entry cannot be read: {why}")]
    Body {
        /// The kind in the envelope.
        kind: String,
        /// What the decoder found.
        why: String,
    },
}

fn place(at: Option<usize>) -> String {
    at.map_or_else(String::new, |at| format!(" at byte {at}"))
}

/// Why a record could not be read or may not be written so.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum RecordError {
    /// The bytes could not be read.
    #[error(transparent)]
    Read(#[from] ReadError),
    /// No such person is on record.
    #[error("there is no person {0} on record")]
    NoSuchPerson(PersonId),
    /// No such exam is on record.
    #[error("there is no exam {0} on record")]
    NoSuchExam(ExamId),
    /// The exam is signed, so a change to it needs a reason.
    #[error("this exam is signed: say why the {} changes", .0.title().to_lowercase())]
    ReasonNeeded(SectionKind),
    /// Two tablets changed the same section and nobody has settled which holds.
    #[error("there are two versions of the {}: settle which one holds", .0.title().to_lowercase())]
    TwoVersions(SectionKind),
    /// Nothing was decided yet.
    #[error("nothing is decided yet: fill in the decision")]
    NoDecision,
    /// Something is missing before the exam can be signed; one sentence each.
    #[error("not ready to sign: {}", .0.join("; "))]
    NotReady(Vec<String>),
    /// Signed already, and nothing changed since.
    #[error("this exam is signed, and nothing has changed since")]
    NothingToSign,
    /// Something that was asked can't be answered with nothing.
    #[error("say why it is right: the question stays until then")]
    NoAnswer,
    /// A newer version of the app wrote part of this and it can't be read here.
    #[error(
        "part of this exam was written by a newer version of this app: update before changing it"
    )]
    WrittenByNewer,
}

/// Why an entry was not taken into the record.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum FoldError {
    /// Another entry with the same id and other content is held already. That one stays.
    #[error("two different entries are both called {0}: the first one is kept")]
    Clash(EntryId),
}
