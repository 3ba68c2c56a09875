//! What is wrong with what is kept, said so that a person can act on it.

use std::fmt;
use vault::{DeviceId, FrameError};

/// What is wrong with one entry of a log.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Nothing is kept under its number, nor under those after it up to this one.
    Missing {
        /// The last number that is missing.
        through: u64,
    },
    /// What is kept is no frame.
    Malformed(FrameError),
    /// What is kept belongs elsewhere.
    Misplaced,
    /// It is not signed by its device: altered since.
    Unsigned,
    /// Its device's introduction is damaged or missing, so nobody can tell who wrote it.
    UnknownWriter,
    /// It doesn't follow the one before it: the log was continued from a copy. It is read all the same.
    Unlinked,
    /// It is under a key that is not here.
    NoKey,
    /// It doesn't open.
    Unopened,
    /// Its content was dropped, and no lead's erasure says why.
    Emptied,
}

/// A damaged entry: reported, and nothing else is lost with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damage {
    /// In whose log.
    pub device: DeviceId,
    /// What that device is called, where its introduction can be read.
    pub device_name: Option<String>,
    /// Its number in that log.
    pub sequence: u64,
    /// What is wrong with it.
    pub fault: Fault,
}

impl Damage {
    pub(crate) fn of(device: DeviceId, sequence: u64, fault: Fault) -> Self {
        Self {
            device,
            device_name: None,
            sequence,
            fault,
        }
    }
}

impl fmt::Display for Damage {
    /// One plain sentence.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whose = match &self.device_name {
            Some(name) => format!("from “{name}”"),
            None => format!("from tablet {}", &self.device.to_string()[..8]),
        };
        match self.fault {
            Fault::Missing { through } if through > self.sequence => {
                write!(
                    out,
                    "entries {} to {through} {whose} are missing",
                    self.sequence
                )
            }
            fault => write!(out, "entry {} {whose} {}", self.sequence, fault.says()),
        }
    }
}

impl Fault {
    fn says(self) -> &'static str {
        match self {
            Self::Missing { .. } => "is missing",
            Self::Malformed(_) => "can't be read: it is cut short or altered",
            Self::Misplaced => "can't be read: something else is in its place",
            Self::Unsigned => "can't be read: it was altered after it was written",
            Self::UnknownWriter => "can't be read: nothing here shows who wrote it",
            Self::Unlinked => {
                "was read, but doesn't follow the one before it: the tablet may have been copied"
            }
            Self::NoKey => "can't be read: the key that it was written under is not here",
            Self::Unopened => "can't be read: its key doesn't fit",
            Self::Emptied => "can't be read: its content was dropped, and no lead has erased it",
        }
    }
}
