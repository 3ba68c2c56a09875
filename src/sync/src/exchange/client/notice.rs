//! What a person is told of an exchange.

use super::event::Failure;
use std::fmt;
use vault::{DeviceId, Head};

/// How things stand with the relay. What the browser thinks of the network counts for nothing: only an answer does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Status {
    /// Nothing was tried yet, or the last try failed for this reason.
    Offline(Option<Failure>),
    /// A first try, or one after a failure.
    Trying,
    /// The relay answers.
    Online,
}

/// How far an exchange has got.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Entries that were carried.
    pub done: u64,
    /// Entries that there are to carry, both ways.
    pub total: u64,
}

/// Something to show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Notice {
    /// How things stand has changed.
    Status(Status),
    /// Some more was carried.
    Progress(Progress),
    /// Everything was exchanged.
    Finished,
    /// A log was continued twice: here and elsewhere the same number stands for different entries.
    Fork {
        /// Whose log.
        device: DeviceId,
        /// The number, or the last one before it.
        sequence: u64,
    },
    /// The relay has this device's own entries that are not here: this is a copy of it, or what is kept here was put back
    /// from one.
    Copied {
        /// How far the own log goes there.
        sequence: u64,
    },
    /// The relay no longer has what it had.
    RolledBack {
        /// Whose log.
        device: DeviceId,
        /// How far it went.
        seen: Head,
        /// How far it goes.
        shown: Option<Head>,
    },
    /// The relay set a removed device's entries aside for a lead to look at.
    Aside {
        /// Whose.
        device: DeviceId,
    },
    /// An entry here can't be read, so it and those after it can't be sent.
    Unsent {
        /// Whose log.
        device: DeviceId,
        /// The number.
        sequence: u64,
    },
    /// The relay takes nothing of a log from an entry on: something there is not its device's to write.
    NotTaken {
        /// Whose log.
        device: DeviceId,
        /// The first number that was sent.
        sequence: u64,
    },
}

impl fmt::Display for Progress {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} of {}", self.done, self.total)
    }
}

impl fmt::Display for Notice {
    /// One plain sentence.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let short = |device: &DeviceId| device.to_string()[..8].to_owned();
        match self {
            Self::Status(Status::Offline(None)) => write!(out, "not exchanged yet"),
            Self::Status(Status::Offline(Some(why))) => write!(out, "{why}"),
            Self::Status(Status::Trying) => write!(out, "asking the relay"),
            Self::Status(Status::Online) => write!(out, "the relay answers"),
            Self::Progress(progress) => write!(out, "{progress} entries exchanged"),
            Self::Finished => write!(out, "everything is exchanged"),
            Self::Fork { device, sequence } => write!(
                out,
                "tablet {} has written two different entries numbered about {sequence}: it may have been copied",
                short(device)
            ),
            Self::Copied { sequence } => write!(
                out,
                "this tablet's own entries up to {sequence} are on the relay and were not here: set it up anew before writing on it"
            ),
            Self::RolledBack {
                device,
                seen,
                shown,
            } => write!(
                out,
                "the relay had {} entries of tablet {} and now has {}: what is here is sent again",
                seen.sequence,
                short(device),
                shown.map_or(0, |head| head.sequence)
            ),
            Self::Aside { device } => write!(
                out,
                "entries that tablet {} wrote after it was removed wait for a lead to look at them",
                short(device)
            ),
            Self::Unsent { device, sequence } => write!(
                out,
                "entry {sequence} of tablet {} can't be read here, so it can't be sent",
                short(device)
            ),
            Self::NotTaken { device, sequence } => write!(
                out,
                "the relay doesn't take what tablet {} wrote from entry {sequence} on: it may not write that",
                short(device)
            ),
        }
    }
}
