//! A finding for each eye, and the difference between blank and not done.

use ::words::record::reading as say;
use serde::{Deserialize, Serialize};

pub use optics::{Eye, Eyes};

/// Something that was to be found out. Blank means that nobody has answered yet; the other three are answers.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", from = "Read<T>")]
#[serde(bound(deserialize = "T: Deserialize<'de>"))]
pub enum Finding<T> {
    /// Not answered yet.
    #[default]
    Blank,
    /// Found.
    Done(T),
    /// The examiner left it out.
    NotDone {
        /// Why, in the examiner's words.
        reason: String,
    },
    /// The examiner tried, or would have, and the person could not.
    Unable {
        /// Why, in the examiner's words.
        reason: String,
    },
}

/// The same on its way in. The reason is read by one type whatever was to be found, and not by two more for each.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum Read<T> {
    Blank,
    Done(T),
    NotDone(Why),
    Unable(Why),
}

#[derive(Deserialize)]
struct Why {
    reason: String,
}

impl<T> From<Read<T>> for Finding<T> {
    fn from(read: Read<T>) -> Self {
        match read {
            Read::Blank => Self::Blank,
            Read::Done(found) => Self::Done(found),
            Read::NotDone(Why { reason }) => Self::NotDone { reason },
            Read::Unable(Why { reason }) => Self::Unable { reason },
        }
    }
}

impl<T> Finding<T> {
    /// Whether nobody has answered yet.
    pub const fn is_blank(&self) -> bool {
        matches!(self, Self::Blank)
    }

    /// What was found, if it was done.
    pub const fn done(&self) -> Option<&T> {
        match self {
            Self::Done(found) => Some(found),
            _ => None,
        }
    }

    /// The same, to change it.
    pub const fn done_mut(&mut self) -> Option<&mut T> {
        match self {
            Self::Done(found) => Some(found),
            _ => None,
        }
    }

    /// Answers it, where nobody has yet.
    pub fn fill(&mut self, found: T) {
        if self.is_blank() {
            *self = Self::Done(found);
        }
    }

    /// What was found, in these words, else why it was not; nothing where it is blank.
    pub fn in_words(&self, say: impl FnOnce(&T) -> String) -> Option<String> {
        self.done().map(say).or_else(|| self.why_not())
    }

    /// `not done: asleep`, `unable: …`, or nothing when it is blank or done.
    pub fn why_not(&self) -> Option<String> {
        match self {
            Self::Blank | Self::Done(_) => None,
            Self::NotDone { reason } => Some(say::not_done(&reason)),
            Self::Unable { reason } => Some(say::unable(&reason)),
        }
    }
}

/// Why a finding was left out, as it is often said; common practice, no source.
pub const NOT_DONE_BECAUSE: &[fn() -> &'static str] = &[
    say::not_called_for,
    say::did_not_want,
    say::no_time,
    say::too_little_light,
    say::instrument_not_there,
    say::safer_not_to,
];

/// Why a finding could not be had, as it is often said; common practice, no source.
pub const UNABLE_BECAUSE: &[fn() -> &'static str] = &[
    say::asleep,
    say::too_tired,
    say::did_not_follow,
    say::could_not_hold_still,
    say::not_reached_in_bed,
    say::no_view,
];
