//! A storage that fails one of its effects.

use std::cell::Cell;
use sync::{Append, MemoryStorage, Renewal, Storage, StorageError, StoredDraft, StoredFrame};
use vault::{DeviceId, DraftName, Frame, Head};

/// How an effect fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Failure {
    /// It doesn't happen.
    Before,
    /// It happens, and the answer is lost.
    After,
    /// It doesn't happen for want of room.
    Full,
}

/// Counts effects from 0 and fails one of them, or all from one on.
pub struct Faulty {
    inner: MemoryStorage,
    fails: Option<(usize, Failure)>,
    /// The effect that happens without an answer, and none happens after it.
    stops: Option<usize>,
    count: Cell<usize>,
}

impl Faulty {
    pub fn new(inner: MemoryStorage, fails: Option<(usize, Failure)>) -> Self {
        Self {
            inner,
            fails,
            stops: None,
            count: Cell::new(0),
        }
    }

    /// The effect with this number happens and nobody hears of it; nothing happens after it.
    pub fn stopping(inner: MemoryStorage, stop: usize) -> Self {
        Self {
            stops: Some(stop),
            ..Self::new(inner, Some((stop, Failure::After)))
        }
    }

    /// How many effects there were.
    pub fn count(&self) -> usize {
        self.count.get()
    }

    async fn effect<T>(
        &self,
        effect: impl Future<Output = Result<T, StorageError>>,
    ) -> Result<T, StorageError> {
        let number = self.count.replace(self.count.get() + 1);
        if self.stops.is_some_and(|stop| number > stop) {
            return Err(StorageError::Gone);
        }
        match self.fails.filter(|(fails, _)| *fails == number) {
            None => effect.await,
            Some((_, Failure::Before)) => Err(StorageError::Gone),
            Some((_, Failure::Full)) => Err(StorageError::Full),
            Some((_, Failure::After)) => {
                effect.await?;
                Err(StorageError::Other("the answer was lost".into()))
            }
        }
    }
}

impl Storage for &Faulty {
    async fn head(&self, device: DeviceId) -> Result<Option<Head>, StorageError> {
        self.effect(self.inner.head(device)).await
    }

    async fn append(&self, append: Append<'_>) -> Result<(), StorageError> {
        self.effect(self.inner.append(append)).await
    }

    async fn page(
        &self,
        device: DeviceId,
        from: u64,
        limit: usize,
    ) -> Result<Vec<StoredFrame>, StorageError> {
        self.effect(self.inner.page(device, from, limit)).await
    }

    async fn vector(&self) -> Result<Vec<(DeviceId, Head)>, StorageError> {
        self.effect(self.inner.vector()).await
    }

    async fn key_file(&self) -> Result<Option<Vec<u8>>, StorageError> {
        self.effect(self.inner.key_file()).await
    }

    async fn put_key_file(&self, bytes: &[u8]) -> Result<(), StorageError> {
        self.effect(self.inner.put_key_file(bytes)).await
    }

    async fn found(&self, key_file: &[u8], first: &Frame) -> Result<(), StorageError> {
        self.effect(self.inner.found(key_file, first)).await
    }

    async fn put_draft(&self, name: DraftName, sealed: &[u8]) -> Result<(), StorageError> {
        self.effect(self.inner.put_draft(name, sealed)).await
    }

    async fn draft(&self, name: DraftName) -> Result<Option<Vec<u8>>, StorageError> {
        self.effect(self.inner.draft(name)).await
    }

    async fn drafts(&self) -> Result<Vec<StoredDraft>, StorageError> {
        self.effect(self.inner.drafts()).await
    }

    async fn remove_draft(&self, name: DraftName) -> Result<(), StorageError> {
        self.effect(self.inner.remove_draft(name)).await
    }

    async fn checkpoint(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        self.effect(self.inner.checkpoint()).await
    }

    async fn put_checkpoint(&self, pieces: &[Vec<u8>]) -> Result<(), StorageError> {
        self.effect(self.inner.put_checkpoint(pieces)).await
    }

    async fn roll(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        self.effect(self.inner.roll()).await
    }

    async fn put_roll(&self, statements: &[Vec<u8>]) -> Result<(), StorageError> {
        self.effect(self.inner.put_roll(statements)).await
    }

    async fn empty(&self, frames: &[Frame]) -> Result<(), StorageError> {
        self.effect(self.inner.empty(frames)).await
    }

    async fn is_copy(&self) -> Result<bool, StorageError> {
        self.effect(self.inner.is_copy()).await
    }

    async fn mark_copy(&self) -> Result<(), StorageError> {
        self.effect(self.inner.mark_copy()).await
    }

    async fn renew(&self, renewal: Renewal<'_>) -> Result<(), StorageError> {
        self.effect(self.inner.renew(renewal)).await
    }

    async fn wipe(&self) -> Result<(), StorageError> {
        self.effect(self.inner.wipe()).await
    }
}
