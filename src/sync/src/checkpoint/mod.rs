//! Checkpoints: what was read of a vault, kept so that the next opening need not read it all again.
//!
//! A checkpoint is made from what [`Ledger::open`](crate::Ledger::open) found ([`Due`]) and can always be made anew, so a
//! damaged or outdated one is passed over ([`Ignored`]) and nothing is lost with it. It holds, for the first part of each
//! log, the payloads that count, and every other frame that matters as it is. A log's part ends before the first frame
//! that is damaged, so damage is found anew each time.
//!
//! What stands under a checkpoint is not looked at again: a frame there that rots on the disk later shows only when it is
//! to be sent, or when the vault is opened with [`Ledger::open_afresh`](crate::Ledger::open_afresh).

mod bytes;
mod content;

pub(crate) use bytes::read;
pub(crate) use content::{Content, Covered, mark};

use crate::ledger::Read;
use std::collections::BTreeMap;
use std::fmt;
use vault::{CheckpointError, DeviceId};

/// Frames that are read again before another checkpoint is worth writing.
pub const WORTH: u64 = 500;

/// Where an opening began.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Resumed {
    /// At the first frame of each log: no checkpoint is kept.
    Nowhere,
    /// After so many frames, which a checkpoint covers.
    After(u64),
    /// At the first frame of each log: a checkpoint is kept, and not one to go by.
    Ignored(Ignored),
}

impl Resumed {
    /// How many frames were not looked at again.
    pub const fn frames(self) -> u64 {
        match self {
            Self::After(frames) => frames,
            Self::Nowhere | Self::Ignored(_) => 0,
        }
    }
}

/// Why a checkpoint was passed over. It does no harm: everything is read anew and another one is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Ignored {
    /// Altered or cut short, or what is inside makes no sense.
    #[error("the snapshot that speeds up opening was damaged: everything was read anew")]
    Damaged,
    /// Of another format.
    #[error(
        "the snapshot that speeds up opening was made by another version: everything was read anew"
    )]
    OtherFormat,
    /// Under keys that are not here.
    #[error(
        "the snapshot that speeds up opening was made with other keys: everything was read anew"
    )]
    OtherKeys,
    /// What is kept is not what it was made from, and more.
    #[error(
        "the snapshot that speeds up opening doesn\u{2019}t fit what is kept: everything was read anew"
    )]
    NotAPrefix,
    /// The roll has changed since, so other entries may count.
    #[error("the list of tablets has changed: everything was read anew")]
    OtherRoll,
}

impl From<CheckpointError> for Ignored {
    fn from(error: CheckpointError) -> Self {
        match error {
            CheckpointError::Format => Self::OtherFormat,
            CheckpointError::UnknownKey => Self::OtherKeys,
            CheckpointError::Opaque => Self::Damaged,
        }
    }
}

/// A checkpoint that is worth writing: give it to [`Ledger::keep_checkpoint`](crate::Ledger::keep_checkpoint) with the
/// entries that were found, once the person at the screen waits for nothing.
pub struct Due {
    pub(crate) content: Content,
    /// How many were erased when it was made: once somebody else is, it would keep what has to go.
    pub(crate) erasures: usize,
}

impl Due {
    /// How many frames it covers.
    pub fn frames(&self) -> u64 {
        self.content.frames()
    }

    /// Its plain bytes.
    pub(crate) fn bytes(self, entries: &[Read]) -> vault::Zeroizing<Vec<u8>> {
        let last: BTreeMap<DeviceId, u64> = self
            .content
            .logs
            .iter()
            .map(|log| (log.device(), log.head.sequence))
            .collect();
        let covered = entries.iter().filter(|read| {
            last.get(&read.device)
                .is_some_and(|last| read.sequence <= *last)
        });
        bytes::write(&self.content, covered)
    }
}

impl fmt::Debug for Due {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("Due")
            .field("frames", &self.frames())
            .finish_non_exhaustive()
    }
}

/// Whether another checkpoint, which covers so many frames, is worth writing after an opening that began there.
pub fn is_due(resumed: Resumed, covers: u64) -> bool {
    match resumed {
        Resumed::Nowhere => covers > WORTH,
        Resumed::After(frames) => covers.saturating_sub(frames) > WORTH,
        Resumed::Ignored(_) => covers > 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_written_after_more_than_five_hundred_frames_or_in_place_of_a_bad_one() {
        assert!(!is_due(Resumed::Nowhere, 500));
        assert!(is_due(Resumed::Nowhere, 501));
        assert!(!is_due(Resumed::After(1_000), 1_500));
        assert!(is_due(Resumed::After(1_000), 1_501));
        // A log that was cut back covers less than before.
        assert!(!is_due(Resumed::After(1_000), 900));
        assert!(is_due(Resumed::Ignored(Ignored::Damaged), 1));
        assert!(!is_due(Resumed::Ignored(Ignored::Damaged), 0));
    }
}
