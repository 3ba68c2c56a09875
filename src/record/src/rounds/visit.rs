//! What became of the visit to a person on a round.

use ::words::record::rounds as say;
use chrono::NaiveDateTime;
use serde::{Deserialize, Serialize};

use crate::exam::Exam;
use crate::sections::OneOf;

/// What somebody wrote down at the door. That a person was seen is not written here: the exam tells it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Visit {
    /// How it was.
    pub state: VisitState,
    /// A word on it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub word: String,
    /// When, as the clock on the wall showed it.
    pub at: NaiveDateTime,
}

/// How a person was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum VisitState {
    /// Still to be seen: what was marked before is taken back.
    ToSee,
    /// Asleep.
    Asleep,
    /// Not in.
    Out,
    /// Did not want to be examined.
    Declined,
    /// To be seen on another day.
    PutOff,
}

impl VisitState {
    /// What can be marked in one tap.
    pub const MARKS: [Self; 4] = [Self::Asleep, Self::Out, Self::Declined, Self::PutOff];

    /// Whether it is worth knocking again on the same day.
    pub const fn knock_again(self) -> bool {
        matches!(self, Self::ToSee | Self::Asleep | Self::Out)
    }
}

impl OneOf for VisitState {
    fn all() -> Vec<Self> {
        let marks = Self::MARKS.into_iter();
        std::iter::once(Self::ToSee).chain(marks).collect()
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::ToSee => say::to_see(),
            Self::Asleep => say::asleep(),
            Self::Out => say::out(),
            Self::Declined => say::declined(),
            Self::PutOff => say::put_off(),
        }
    }
}

/// How things stand with a person on a round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Standing<'a> {
    /// Nothing was done yet.
    ToSee,
    /// An exam is open.
    UnderWay(&'a Exam),
    /// An exam is signed.
    Seen(&'a Exam),
    /// The person was not examined, and why.
    Marked(&'a Visit),
}
