//! A finding for each eye, and the difference between blank and not done.

use serde::{Deserialize, Serialize};

/// One of the two eyes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Eye {
    /// The person's right eye.
    Right,
    /// The person's left eye.
    Left,
}

impl Eye {
    /// Right, then left: the order in which eyes are written down.
    pub const BOTH: [Self; 2] = [Self::Right, Self::Left];

    /// `right` or `left`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Left => "left",
        }
    }
}

/// The same kind of finding for each of the two eyes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Eyes<T> {
    /// The right eye's.
    pub right: T,
    /// The left eye's.
    pub left: T,
}

impl<T> Eyes<T> {
    /// The finding of one eye.
    pub const fn of(&self, eye: Eye) -> &T {
        match eye {
            Eye::Right => &self.right,
            Eye::Left => &self.left,
        }
    }

    /// The finding of one eye, to change it.
    pub const fn of_mut(&mut self, eye: Eye) -> &mut T {
        match eye {
            Eye::Right => &mut self.right,
            Eye::Left => &mut self.left,
        }
    }

    /// Both, right first.
    pub fn each(&self) -> [(Eye, &T); 2] {
        [(Eye::Right, &self.right), (Eye::Left, &self.left)]
    }

    /// The same thing done to each.
    pub fn map<U>(&self, mut change: impl FnMut(&T) -> U) -> Eyes<U> {
        Eyes {
            right: change(&self.right),
            left: change(&self.left),
        }
    }
}

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
