//! The two eyes, and the same kind of thing for each of them.

use ::words::optics::lens as say;
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

    /// `right` or `left`, whatever language is spoken: as it stands in names and files.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Left => "left",
        }
    }

    /// The same as it is said to a reader, in the language spoken.
    pub fn said(self) -> &'static str {
        match self {
            Self::Right => say::right(),
            Self::Left => say::left(),
        }
    }

    /// Which way the nose lies, seen by a person who faces the patient: 1 to their right, −1 to their left.
    pub(crate) const fn noseward(self) -> f64 {
        match self {
            Self::Right => 1.0,
            Self::Left => -1.0,
        }
    }
}

/// The same kind of thing for each of the two eyes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Eyes<T> {
    /// The right eye's.
    pub right: T,
    /// The left eye's.
    pub left: T,
}

impl<T> Eyes<T> {
    /// That of one eye.
    pub const fn of(&self, eye: Eye) -> &T {
        match eye {
            Eye::Right => &self.right,
            Eye::Left => &self.left,
        }
    }

    /// That of one eye, to change it.
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
