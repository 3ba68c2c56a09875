//! Where frames, drafts and the key file are kept.
//!
//! A storage keeps bytes and knows nothing of what is in them. What every one of them promises is written as tests in
//! [`contract`](crate::contract); [`MemoryStorage`] is the simplest that keeps the promises.

mod error;
mod memory;

pub use error::StorageError;
pub use memory::MemoryStorage;

use vault::{DeviceId, DraftName, Frame, Head};

/// A frame as it is kept. Its bytes may have been damaged since; only reading tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoredFrame {
    /// The number that it is kept under.
    pub sequence: u64,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// A draft as it is kept: its keyed name and its sealed bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoredDraft {
    /// What it is kept under.
    pub name: DraftName,
    /// What [`vault::Keys::seal_draft`] gave.
    pub sealed: Vec<u8>,
}

/// Frames to add to one device's log, and the drafts that they make needless.
#[derive(Clone, Copy, Debug)]
pub struct Append<'a> {
    /// Whose log.
    pub device: DeviceId,
    /// The head that the frames continue; none for a log that is empty.
    pub expected: Option<Head>,
    /// The frames, in order, each following the one before.
    pub frames: &'a [Frame],
    /// Drafts to remove in the same step; those that aren't there are no error.
    pub drop_drafts: &'a [DraftName],
}

/// Another identity for this device.
#[derive(Clone, Copy, Debug)]
pub struct Renewal<'a> {
    /// Its key file.
    pub key_file: &'a [u8],
    /// The first frames of its log, in order; at least one.
    pub frames: &'a [Frame],
    /// The device that this was until now.
    pub old: DeviceId,
    /// The head of the old log.
    pub expected: Option<Head>,
    /// The head to which the old log is cut back; none for dropping all of it.
    pub keep: Option<Head>,
}

/// A place that keeps a vault on this device. It is used from one thread; its futures need not be `Send`.
///
/// Every write is all or nothing and durable before it returns `Ok`. After an error other than
/// [`StorageError::Moved`], [`StorageError::Full`] or [`StorageError::NotEmpty`] a write may or may not have happened, and
/// the caller finds out by reading.
#[allow(async_fn_in_trait, reason = "a browser's futures are never Send")]
pub trait Storage {
    /// The head of a device's log; none where there is no log.
    async fn head(&self, device: DeviceId) -> Result<Option<Head>, StorageError>;

    /// Adds frames to a log and drops drafts, in one step, if the log's head is `expected`.
    ///
    /// # Errors
    ///
    /// [`StorageError::Moved`] with the head as it is, where that is not `expected`; nothing was changed then.
    async fn append(&self, append: Append<'_>) -> Result<(), StorageError>;

    /// At most `limit` frames of a log from number `from` on, in order; empty where there are no more.
    async fn page(
        &self,
        device: DeviceId,
        from: u64,
        limit: usize,
    ) -> Result<Vec<StoredFrame>, StorageError>;

    /// All devices with a log, each with its head, in the order of their ids.
    async fn vector(&self) -> Result<Vec<(DeviceId, Head)>, StorageError>;

    /// The key file; none before a vault is founded.
    async fn key_file(&self) -> Result<Option<Vec<u8>>, StorageError>;

    /// Keeps a changed key file in place of the one that is there.
    async fn put_key_file(&self, bytes: &[u8]) -> Result<(), StorageError>;

    /// Keeps a new vault's key file and first frame, in one step.
    ///
    /// # Errors
    ///
    /// [`StorageError::NotEmpty`] where there is a key file or any frame already; nothing was changed then.
    async fn found(&self, key_file: &[u8], first: &Frame) -> Result<(), StorageError>;

    /// Keeps a draft in place of the one under the same name.
    async fn put_draft(&self, name: DraftName, sealed: &[u8]) -> Result<(), StorageError>;

    /// A draft; none where none is kept under this name.
    async fn draft(&self, name: DraftName) -> Result<Option<Vec<u8>>, StorageError>;

    /// All drafts, in the order of their names.
    async fn drafts(&self) -> Result<Vec<StoredDraft>, StorageError>;

    /// Removes a draft; one that isn't there is no error.
    async fn remove_draft(&self, name: DraftName) -> Result<(), StorageError>;

    /// The checkpoint's sealed pieces, in order; empty where none is kept.
    async fn checkpoint(&self) -> Result<Vec<Vec<u8>>, StorageError>;

    /// Keeps a checkpoint in place of the one before, in one step; no pieces for none.
    async fn put_checkpoint(&self, pieces: &[Vec<u8>]) -> Result<(), StorageError>;

    /// The roll's statements, in order; empty where none are kept.
    async fn roll(&self) -> Result<Vec<Vec<u8>>, StorageError>;

    /// Keeps a roll in place of the one before, in one step.
    async fn put_roll(&self, statements: &[Vec<u8>]) -> Result<(), StorageError>;

    /// Puts what stays of erased frames in their places, and drops the checkpoint, which may hold what was in them; in one
    /// step. Heads stay as they are: an emptied frame has the hash that it had. A place where nothing is kept stays empty.
    async fn empty(&self, frames: &[Frame]) -> Result<(), StorageError>;

    /// Whether this device was found to be a copy of another, so that it must not go on with its log.
    async fn is_copy(&self) -> Result<bool, StorageError>;

    /// Keeps that this device is a copy; [`Storage::renew`] takes it back.
    async fn mark_copy(&self) -> Result<(), StorageError>;

    /// Gives this device another identity, in one step: another key file and the first frames of another log. What the
    /// old log has after `keep` is dropped, and so is the checkpoint.
    ///
    /// # Errors
    ///
    /// [`StorageError::Moved`] with the old log's head, where that is not `expected`; nothing was changed then.
    async fn renew(&self, renewal: Renewal<'_>) -> Result<(), StorageError>;

    /// Removes everything: frames, drafts, the checkpoint, the roll and the key file.
    async fn wipe(&self) -> Result<(), StorageError>;
}
