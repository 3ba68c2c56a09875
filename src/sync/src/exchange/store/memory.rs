//! A store in memory, for tests and as the plainest statement of what a store does.

use super::{Appended, FrameStore, StoreError, Why};
use crate::exchange::{Run, Vector};
use std::collections::BTreeMap;
use std::ops::Bound;
use std::sync::{Mutex, MutexGuard, PoisonError};
use vault::{DeviceId, ErasedKey, Frame, FrameHash, Head, Statement, VaultId};

/// Keeps everything in memory, and loses it when dropped.
#[derive(Debug, Default)]
pub struct MemoryStore {
    kept: Mutex<Kept>,
}

/// One vault's share.
#[derive(Clone, Debug, Default)]
struct Shelf {
    roll: Vec<Statement>,
    logs: BTreeMap<DeviceId, Vec<Frame>>,
    aside: BTreeMap<(DeviceId, u64, FrameHash), (Why, Vec<u8>)>,
    erased: Vec<ErasedKey>,
}

type Kept = BTreeMap<VaultId, Shelf>;

/// What a store held at some moment.
#[derive(Clone, Debug, Default)]
pub struct Copy(Kept);

impl MemoryStore {
    /// An empty store.
    pub fn new() -> Self {
        Self::default()
    }

    /// Makes room for a vault, with the first statement of its roll. Tells whether it was not here yet.
    pub fn open_vault(&self, first: &Statement) -> bool {
        let mut kept = self.kept();
        let part = kept.entry(first.vault).or_default();
        let new = part.roll.is_empty();
        if new {
            part.roll.push(*first);
        }
        new
    }

    /// A copy of everything, to be put back later.
    pub fn copy(&self) -> Copy {
        Copy(self.kept().clone())
    }

    /// Puts everything back as it was: a store that is restored from an old copy.
    pub fn restore(&self, copy: &Copy) {
        *self.kept() = copy.0.clone();
    }

    /// Nothing that is done under the lock can panic half done.
    fn kept(&self) -> MutexGuard<'_, Kept> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn read<T: Default>(&self, vault: VaultId, read: impl FnOnce(&Shelf) -> T) -> T {
        self.kept().get(&vault).map(read).unwrap_or_default()
    }
}

impl Shelf {
    fn log(&self, device: DeviceId, from: u64) -> &[Frame] {
        let skipped = usize::try_from(from.saturating_sub(1)).unwrap_or(usize::MAX);
        self.logs
            .get(&device)
            .and_then(|log| log.get(skipped..))
            .unwrap_or_default()
    }

    fn is_erased(&self, frame: &Frame) -> bool {
        self.erased.iter().any(|key| key.covers(frame))
    }

    fn head(&self, device: DeviceId) -> Option<Head> {
        self.logs.get(&device)?.last().map(Frame::head)
    }
}

fn place_of(frame: &Frame) -> (DeviceId, u64, FrameHash) {
    (frame.device(), frame.sequence(), frame.hash())
}

impl FrameStore for MemoryStore {
    fn roll(&self, vault: VaultId) -> Result<Vec<Statement>, StoreError> {
        Ok(self.read(vault, |part| part.roll.clone()))
    }

    fn extend_roll(&self, statement: &Statement) -> Result<bool, StoreError> {
        let mut kept = self.kept();
        let Some(part) = kept.get_mut(&statement.vault) else {
            return Ok(false);
        };
        let next = statement.number == part.roll.len() as u64 + 1;
        if next {
            part.roll.push(*statement);
        }
        Ok(next)
    }

    fn head(&self, vault: VaultId, device: DeviceId) -> Result<Option<Head>, StoreError> {
        Ok(self.read(vault, |part| part.head(device)))
    }

    fn vector(&self, vault: VaultId) -> Result<Vector, StoreError> {
        Ok(self.read(vault, |part| {
            let devices = part.logs.keys();
            devices
                .filter_map(|device| Some((*device, part.head(*device)?)))
                .collect()
        }))
    }

    fn append(&self, run: &Run) -> Result<Appended, StoreError> {
        let mut kept = self.kept();
        let part = kept.entry(run.vault()).or_default();
        let head = part.head(run.device());
        if head != run.before() {
            return Ok(Appended::Moved { head });
        }
        let run = run.emptied(|frame| part.is_erased(frame));
        let log = part.logs.entry(run.device()).or_default();
        log.extend_from_slice(run.frames());
        Ok(Appended::Kept)
    }

    fn hashes(
        &self,
        vault: VaultId,
        device: DeviceId,
        from: u64,
        most: usize,
    ) -> Result<Vec<FrameHash>, StoreError> {
        Ok(self.read(vault, |part| {
            let log = part.log(device, from).iter();
            log.take(most).map(Frame::hash).collect()
        }))
    }

    fn range(
        &self,
        vault: VaultId,
        device: DeviceId,
        from: u64,
        frames: usize,
        bytes: usize,
    ) -> Result<Vec<Vec<u8>>, StoreError> {
        let mut room = bytes;
        Ok(self.read(vault, |part| {
            let log = part.log(device, from).iter().take(frames);
            log.map_while(|frame| {
                room = room.checked_sub(frame.bytes().len())?;
                Some(frame.bytes().to_vec())
            })
            .collect()
        }))
    }

    fn size(&self, vault: VaultId) -> Result<u64, StoreError> {
        Ok(self.read(vault, |part| {
            let logs = part.logs.values().flatten();
            let kept: usize = logs.map(|frame| frame.bytes().len()).sum();
            let aside: usize = part.aside.values().map(|(_, bytes)| bytes.len()).sum();
            (kept + aside) as u64
        }))
    }

    fn set_aside(&self, frame: &Frame, why: Why) -> Result<(), StoreError> {
        let mut kept = self.kept();
        let part = kept.entry(frame.header().vault).or_default();
        let kept = if part.is_erased(frame) {
            frame.emptied()
        } else {
            frame.clone()
        };
        part.aside
            .entry(place_of(frame))
            .or_insert_with(|| (why, kept.bytes().to_vec()));
        Ok(())
    }

    fn remember_erased(&self, vault: VaultId, keys: &[ErasedKey]) -> Result<(), StoreError> {
        let mut kept = self.kept();
        let part = kept.entry(vault).or_default();
        for key in keys {
            if !part.erased.contains(key) {
                part.erased.push(*key);
            }
        }
        Ok(())
    }

    fn empty(&self, frames: &[Frame]) -> Result<(), StoreError> {
        let mut kept = self.kept();
        for frame in frames {
            let part = kept.entry(frame.header().vault).or_default();
            let log = part.logs.entry(frame.device()).or_default();
            let mut there = log.iter_mut().filter(|there| there.head() == frame.head());
            if let Some(there) = there.next() {
                *there = frame.emptied();
            }
            if let Some((_, aside)) = part.aside.get_mut(&place_of(frame)) {
                *aside = frame.emptied().bytes().to_vec();
            }
        }
        Ok(())
    }

    fn aside(
        &self,
        vault: VaultId,
        after: Option<(DeviceId, Head)>,
        most: usize,
    ) -> Result<Vec<(Why, Vec<u8>)>, StoreError> {
        let after = after.map(|(device, head)| (device, head.sequence, head.hash));
        let from = after.map_or(Bound::Unbounded, Bound::Excluded);
        Ok(self.read(vault, |part| {
            let rest = part.aside.range((from, Bound::Unbounded));
            rest.take(most).map(|(_, kept)| kept.clone()).collect()
        }))
    }
}
