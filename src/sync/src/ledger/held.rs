//! What is held back: read, kept, and not taken for true until a lead has looked at it.

use super::Read;
use std::fmt;
use vault::roll::Verdict;
use vault::{Frame, Roll};

/// An entry that is held back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Held {
    /// What it says, for a lead to look at: it may be a day of real examinations.
    pub read: Read,
    /// What its tablet is called, where its introduction can be read.
    pub device_name: Option<String>,
    /// Why it is held back.
    pub why: HeldFor,
}

/// Why an entry is held back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldFor {
    /// Its device was removed from the vault before it.
    Removed,
    /// Its device is not on the roll, or may not write such a thing.
    NotAllowed,
}

impl HeldFor {
    /// Why a genuine frame is held back, going by a roll; none where it counts.
    pub(super) fn going_by(roll: &Roll, frame: &Frame) -> Option<Self> {
        match roll.judge_genuine(frame) {
            Verdict::Counts => None,
            Verdict::AfterRemoval => Some(Self::Removed),
            Verdict::Refused => Some(Self::NotAllowed),
        }
    }
}

/// The first that is held back of each tablet for each reason, with how many more there are of it.
pub fn held_by(held: &[Held]) -> Vec<(&Held, usize)> {
    let mut told: Vec<(&Held, usize)> = Vec::new();
    for one in held {
        let same = |(first, _): &&mut (&Held, usize)| {
            (first.read.device, first.why) == (one.read.device, one.why)
        };
        match told.iter_mut().find(same) {
            Some((_, more)) => *more += 1,
            None => told.push((one, 0)),
        }
    }
    told
}

/// What is held back, a sentence for each tablet and reason.
pub fn held_back(held: &[Held]) -> Vec<String> {
    let sentence = |(first, more): (&Held, usize)| match more {
        0 => first.to_string(),
        more => format!("{first}; and so are {more} more of it"),
    };
    held_by(held).into_iter().map(sentence).collect()
}

impl fmt::Display for Held {
    /// One plain sentence.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "entry {} from ", self.read.sequence)?;
        match &self.device_name {
            Some(name) => write!(out, "“{name}”")?,
            None => write!(out, "tablet {}", &self.read.device.to_string()[..8])?,
        }
        out.write_str(match self.why {
            HeldFor::Removed => {
                " is held back: the tablet was removed from the vault before it was written"
            }
            HeldFor::NotAllowed => {
                " is held back: the tablet is not one of those that may write in this vault"
            }
        })
    }
}
