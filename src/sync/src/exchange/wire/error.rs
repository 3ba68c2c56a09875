//! What can be wrong with a message.

use super::{MOST_DEVICES, MOST_STATEMENTS};
use crate::exchange::RunError;
use vault::roll::StatementError;
use vault::{DeviceId, FrameError};

/// Why bytes are no message.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum WireError {
    /// Longer than a message may be.
    #[error("a message has {length} bytes, and the most is {most}")]
    TooLong {
        /// Its length.
        length: usize,
        /// The most.
        most: usize,
    },
    /// Cut short, altered, or something else altogether.
    #[error("a message can't be read: it is cut short or altered")]
    Malformed,
    /// Written by another version.
    #[error("a message is of version {0}, which this version doesn't know: update this one")]
    Version(u8),
    /// Something after its end.
    #[error("a message has {0} bytes too many")]
    Trailing(usize),
    /// More devices than a vault can have.
    #[error("a message names {0} devices, and the most is {MOST_DEVICES}")]
    TooManyDevices(usize),
    /// The same device twice.
    #[error("a message names tablet {0} twice")]
    Twice(DeviceId),
    /// A head with number 0.
    #[error("a message names an entry 0, and the first is 1")]
    Zero,
    /// A key that is none.
    #[error("a message holds a device's key that is none")]
    Key,
    /// Something that is no frame.
    #[error("entry {at} of a message can't be read: {error}")]
    Frame {
        /// Which of its run, from 1.
        at: usize,
        /// What is wrong with it.
        error: FrameError,
    },
    /// Frames that are no run.
    #[error(transparent)]
    Run(#[from] RunError),
    /// Something that is no statement of a roll.
    #[error(transparent)]
    Statement(#[from] StatementError),
    /// A roll that is longer than any.
    #[error("a list of devices has {0} changes, and the most is {MOST_STATEMENTS}")]
    Roll(usize),
    /// An invitation that is none.
    #[error("an invitation has {0} bytes, and should have 15")]
    Code(usize),
    /// More frames than a page may hold.
    #[error("a page has {0} bytes of entries, which is more than any may have")]
    Page(usize),
}
