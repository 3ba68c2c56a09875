//! One face for whatever keeps frames, and the two kinds of place behind it.

use crate::contract::Breach;
use crate::exchange::{Appended, FrameStore, Run};
use crate::storage::{Append, Storage, StorageError};
use vault::{DeviceId, Frame, Head, VaultId};

/// What keeps the frames of one vault. A failure where nothing may fail is a breach.
///
/// In this the two kinds are the same: whoever comes a second time with the same frames has moved on, is told where the log
/// ends, and finds out alone that it ends with just these. In the following they differ by design, so each is asked about
/// it on its own side:
///
/// | | a tablet's storage | a relay's store |
/// |---|---|---|
/// | a log is continued at | a head that the caller names | the head that the first frame names |
/// | at once come | any number of frames, or none | a run |
/// | drafts go | in the same step | there are none |
/// | a page ends by | a number of frames | that, or by a number of bytes |
/// | a frame comes back | with the number it is kept under | as its bytes |
/// | emptying is of | any logs, and of what is at that number | one log, and of the very frame |
/// | calls come from | one thread | many threads at once |
#[allow(async_fn_in_trait, reason = "a browser's futures are never Send")]
#[allow(
    clippy::missing_errors_doc,
    reason = "every method fails where the place behind it does, and no other way"
)]
pub trait Keeps {
    /// Adds a run to its device's log, if that ends where the run begins.
    async fn append(&self, run: &Run) -> Result<Appended, Breach>;

    /// The newest frame of a log; none where there is no log.
    async fn head(&self, device: DeviceId) -> Result<Option<Head>, Breach>;

    /// All devices with a log, each with its head, in the order of their ids.
    async fn heads(&self) -> Result<Vec<(DeviceId, Head)>, Breach>;

    /// The bytes of at most `limit` frames of a log from number `from` on, in order.
    async fn page(&self, device: DeviceId, from: u64, limit: usize)
    -> Result<Vec<Vec<u8>>, Breach>;

    /// Puts what stays of frames of one log in their places; where none is kept, none is put.
    async fn empty(&self, emptied: &[Frame]) -> Result<(), Breach>;
}

/// A tablet's storage, which keeps one vault.
#[derive(Clone, Debug)]
pub struct OfTablet<S>(pub S);

impl<S: Storage> Keeps for OfTablet<S> {
    async fn append(&self, run: &Run) -> Result<Appended, Breach> {
        let append = Append {
            device: run.device(),
            expected: run.before(),
            frames: run.frames(),
            drop_drafts: &[],
        };
        match self.0.append(append).await {
            Ok(()) => Ok(Appended::Kept),
            Err(StorageError::Moved { head }) => Ok(Appended::Moved { head }),
            Err(error) => Err(error.into()),
        }
    }

    async fn head(&self, device: DeviceId) -> Result<Option<Head>, Breach> {
        Ok(self.0.head(device).await?)
    }

    async fn heads(&self) -> Result<Vec<(DeviceId, Head)>, Breach> {
        Ok(self.0.vector().await?)
    }

    async fn page(
        &self,
        device: DeviceId,
        from: u64,
        limit: usize,
    ) -> Result<Vec<Vec<u8>>, Breach> {
        let page = self.0.page(device, from, limit).await?;
        Ok(page.into_iter().map(|frame| frame.bytes).collect())
    }

    async fn empty(&self, emptied: &[Frame]) -> Result<(), Breach> {
        Ok(self.0.empty(emptied).await?)
    }
}

/// What a relay's store keeps of one vault. Its calls block, so nothing else goes on meanwhile.
#[derive(Clone, Copy, Debug)]
pub struct OfRelay<'a, S> {
    /// The store.
    pub store: &'a S,
    /// The vault.
    pub vault: VaultId,
}

impl<S: FrameStore> Keeps for OfRelay<'_, S> {
    async fn append(&self, run: &Run) -> Result<Appended, Breach> {
        Ok(self.store.append(run)?)
    }

    async fn head(&self, device: DeviceId) -> Result<Option<Head>, Breach> {
        Ok(self.store.head(self.vault, device)?)
    }

    async fn heads(&self) -> Result<Vec<(DeviceId, Head)>, Breach> {
        Ok(self.store.vector(self.vault)?.iter().collect())
    }

    async fn page(
        &self,
        device: DeviceId,
        from: u64,
        limit: usize,
    ) -> Result<Vec<Vec<u8>>, Breach> {
        let all = usize::MAX;
        Ok(self.store.range(self.vault, device, from, limit, all)?)
    }

    async fn empty(&self, emptied: &[Frame]) -> Result<(), Breach> {
        Ok(self.store.empty(emptied)?)
    }
}
