//! What can go wrong when reading or writing a record.

use ::words::record::{exam as say, unread};
use thiserror::Error;

use crate::ids::{EntryId, ExamId, PersonId, RoundId};
use crate::sections::SectionKind;

/// Why bytes could not be read as an entry or a draft. Nothing is changed by a failed reading.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ReadError {
    /// Longer than anything this project writes.
    #[error("{}", unread::too_long(.bytes, .limit))]
    TooLong {
        /// How many there are.
        bytes: usize,
        /// How many there may be.
        limit: usize,
    },
    /// The bytes are not CBOR, or end too early.
    #[error("{}", not_readable(*.at))]
    NotCbor {
        /// The offset at which reading stopped, where it is known.
        at: Option<usize>,
    },
    /// Nested deeper than anything this project writes.
    #[error("{}", unread::too_deep())]
    TooDeep,
    /// Something follows the entry.
    #[error("{}", unread::trailing(.bytes))]
    Trailing {
        /// How many bytes follow.
        bytes: usize,
    },
    /// The part that every entry has is missing something or has the wrong type.
    #[error("{}", unread::envelope(.why))]
    Envelope {
        /// What the decoder found.
        why: String,
    },
    /// The envelope is good and the kind is known, but the body is not what that kind has.
    #[error("{}", unread::body(.kind, .why))]
    Body {
        /// The kind in the envelope.
        kind: String,
        /// What the decoder found.
        why: String,
    },
}

fn not_readable(at: Option<usize>) -> String {
    at.map_or_else(
        || unread::not_readable().to_owned(),
        |at| unread::not_readable_at(&at),
    )
}

/// Why a record could not be read or may not be written so.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum RecordError {
    /// The bytes could not be read.
    #[error(transparent)]
    Read(#[from] ReadError),
    /// No such person is on record.
    #[error("{}", say::no_such_person(.0))]
    NoSuchPerson(PersonId),
    /// No such exam is on record.
    #[error("{}", say::no_such_exam(.0))]
    NoSuchExam(ExamId),
    /// No such round is on record.
    #[error("{}", say::no_such_round(.0))]
    NoSuchRound(RoundId),
    /// The person is not on the round of which something was said.
    #[error("{}", say::not_on_round())]
    NotOnRound,
    /// The exam is signed, so a change to it needs a reason.
    #[error("{}", say::signed_say_why(&.0.within()))]
    ReasonNeeded(SectionKind),
    /// Two tablets changed the same section and nobody has settled which holds.
    #[error("{}", say::two_versions_of(&.0.within()))]
    TwoVersions(SectionKind),
    /// A section was to be settled of which one version stands, or another than the chosen.
    #[error("{}", say::settled_already(&.0.within()))]
    NothingToSettle(SectionKind),
    /// Nothing was decided yet.
    #[error("{}", say::nothing_decided())]
    NoDecision,
    /// Something is missing before the exam can be signed; one sentence each.
    #[error("{}", say::not_ready(&.0.join("; ")))]
    NotReady(Vec<String>),
    /// Signed already, and nothing changed since.
    #[error("{}", say::nothing_changed())]
    NothingToSign,
    /// Something that was asked can't be answered with nothing.
    #[error("{}", say::say_why_right())]
    NoAnswer,
    /// Two on record are one person already.
    #[error("{}", say::one_person_already())]
    SameAlready,
    /// No statement that two are one person stands under this name.
    #[error("{}", say::not_one_person(.0))]
    NotSame(EntryId),
    /// A newer version of the app wrote part of this and it can't be read here.
    #[error("{}", say::newer_before_changing())]
    WrittenByNewer,
}

/// Why an entry was not taken into the record.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum FoldError {
    /// Another entry with the same id and other content is held already. That one stays.
    #[error("{}", unread::clash(.0))]
    Clash(EntryId),
}
