//! A finding for each eye, and the difference between blank and not done.

use serde::{Deserialize, Serialize};

pub use optics::{Eye, Eyes};

/// Something that was to be found out. Blank means that nobody has answered yet; the other three are answers.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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

    /// `not done: asleep`, `unable: …`, or nothing when it is blank or done.
    pub fn why_not(&self) -> Option<String> {
        match self {
            Self::Blank | Self::Done(_) => None,
            Self::NotDone { reason } => Some(format!("not done: {reason}")),
            Self::Unable { reason } => Some(format!("unable: {reason}")),
        }
    }
}
