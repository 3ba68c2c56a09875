//! Where a relay keeps what it carries.

mod memory;

pub use memory::{Copy, MemoryStore};

use super::{Run, Vector};
use vault::{DeviceId, ErasedKey, Frame, FrameHash, Head, Statement, VaultId};

/// Why a store did not do what it was asked. What is in it is for the relay's own log and never for a client.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StoreError {
    /// Others were at it all the time; nothing was written, and trying again may help.
    #[error("the store is busy: {0}")]
    Busy(String),
    /// What is kept can't be made sense of.
    #[error("what is kept is damaged: {0}")]
    Damaged(String),
    /// Anything else. A write may or may not have happened.
    #[error("the store failed: {0}")]
    Failed(String),
}

/// What became of an append.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Appended {
    /// It is kept.
    Kept,
    /// The log doesn't end where the run begins; nothing was kept.
    Moved {
        /// Where it ends.
        head: Option<Head>,
    },
}

/// Why a frame was set aside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Why {
    /// Another frame has its number.
    Fork,
    /// Its device was removed before it.
    AfterRemoval,
}

/// A store of signed frames by vault and device, with each vault's roll. It checks nothing but heads and numbers: what may
/// be kept, [`answer`](super::answer) decides. Of a frame that a key covers which is remembered as erased it keeps only what
/// stays ([`Frame::emptied`]), in logs and aside, from the moment on at which that is remembered; so whatever came before can
/// be emptied one frame after the other, and nothing slips through meanwhile.
///
/// Every write is all or nothing and durable before it returns. Calls come from many threads at once.
#[allow(
    clippy::missing_errors_doc,
    reason = "every method fails as StoreError says, and no other way"
)]
pub trait FrameStore: Send + Sync {
    /// A vault's roll, in order; empty where the vault isn't here.
    fn roll(&self, vault: VaultId) -> Result<Vec<Statement>, StoreError>;

    /// Adds a statement to a roll if its number is the next one and the vault is here. Tells whether it was added.
    fn extend_roll(&self, statement: &Statement) -> Result<bool, StoreError>;

    /// The newest frame of a log; none where there is no log.
    fn head(&self, vault: VaultId, device: DeviceId) -> Result<Option<Head>, StoreError>;

    /// How far every log of a vault goes.
    fn vector(&self, vault: VaultId) -> Result<Vector, StoreError>;

    /// Adds a run to its device's log, if that ends where the run begins.
    fn append(&self, run: &Run) -> Result<Appended, StoreError>;

    /// At most `most` hashes of a log from number `from` on.
    fn hashes(
        &self,
        vault: VaultId,
        device: DeviceId,
        from: u64,
        most: usize,
    ) -> Result<Vec<FrameHash>, StoreError>;

    /// Frames of a log from number `from` on: at most `frames` of them, and no more than fit into `bytes`.
    fn range(
        &self,
        vault: VaultId,
        device: DeviceId,
        from: u64,
        frames: usize,
        bytes: usize,
    ) -> Result<Vec<Vec<u8>>, StoreError>;

    /// Bytes of all frames of a vault, in its logs and set aside.
    fn size(&self, vault: VaultId) -> Result<u64, StoreError>;

    /// Keeps a frame out of its log, as evidence or for a lead. The same frame twice is kept once.
    fn set_aside(&self, frame: &Frame, why: Why) -> Result<(), StoreError>;

    /// Remembers that keys were erased. The same again changes nothing.
    fn remember_erased(&self, vault: VaultId, keys: &[ErasedKey]) -> Result<(), StoreError>;

    /// Puts what stays of frames in their places, in the log and aside; frames of one log. A place where another frame is
    /// kept, or none, stays as it is.
    fn empty(&self, frames: &[Frame]) -> Result<(), StoreError>;

    /// At most `most` frames that were set aside, by device, number and hash, from the first one after `after` on.
    fn aside(
        &self,
        vault: VaultId,
        after: Option<(DeviceId, Head)>,
        most: usize,
    ) -> Result<Vec<(Why, Vec<u8>)>, StoreError>;
}
