//! What is in a checkpoint beside the entries.

use vault::frame::PublicKey;
use vault::{DeviceId, Frame, FrameHash, Head, Roll};

/// The first part of a device's log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Covered {
    /// Its public key.
    pub key: PublicKey,
    /// The last frame of the part.
    pub head: Head,
    /// What it is called and its public X25519 key, if its introduction was read.
    pub introduced: Option<(String, [u8; 32])>,
}

impl Covered {
    pub fn device(&self) -> DeviceId {
        self.key.device()
    }
}

/// What a checkpoint says of a vault, without its entries.
#[derive(Debug, PartialEq, Eq)]
pub struct Content {
    /// The roll that it goes by: how many statements, and the last one's hash.
    pub roll: Option<(u64, FrameHash)>,
    /// The parts of the logs, in the order of their devices.
    pub logs: Vec<Covered>,
    /// The number of an own frame that opened under an epoch's key; 0 for none.
    pub witness: u64,
    /// Frames that are to be taken anew each time: keys, what is held back, what a later version wrote.
    pub anew: Vec<Frame>,
}

impl Content {
    pub fn frames(&self) -> u64 {
        self.logs.iter().map(|log| log.head.sequence).sum()
    }
}

/// What a checkpoint remembers of a roll.
pub fn mark(roll: &Roll) -> (u64, FrameHash) {
    (roll.length(), roll.last())
}
