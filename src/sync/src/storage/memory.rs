//! A storage in memory, for tests and as the plainest statement of what a storage does.

use super::{Append, Renewal, Storage, StorageError, StoredDraft, StoredFrame};
use std::cell::RefCell;
use std::collections::BTreeMap;
use vault::{DeviceId, DraftName, Frame, Head};

/// Keeps everything in memory, and loses it when dropped. Clone it and both are the same storage.
#[derive(Clone, Debug, Default)]
pub struct MemoryStorage {
    kept: std::rc::Rc<RefCell<Kept>>,
}

#[derive(Debug, Default)]
struct Kept {
    heads: BTreeMap<DeviceId, Head>,
    frames: BTreeMap<(DeviceId, u64), Vec<u8>>,
    drafts: BTreeMap<DraftName, Vec<u8>>,
    key_file: Option<Vec<u8>>,
    checkpoint: Vec<Vec<u8>>,
    roll: Vec<Vec<u8>>,
    copy: bool,
}

impl MemoryStorage {
    /// An empty storage.
    pub fn new() -> Self {
        Self::default()
    }

    /// Puts bytes in the place of a frame, or nothing: how tests damage what is kept.
    pub fn damage(&self, device: DeviceId, sequence: u64, bytes: Option<Vec<u8>>) {
        let mut kept = self.kept.borrow_mut();
        match bytes {
            Some(bytes) => kept.frames.insert((device, sequence), bytes),
            None => kept.frames.remove(&(device, sequence)),
        };
    }
}

impl Kept {
    fn add(&mut self, frame: &Frame) {
        self.frames
            .insert((frame.device(), frame.sequence()), frame.bytes().to_vec());
        self.heads.insert(frame.device(), frame.head());
    }
}

impl Storage for MemoryStorage {
    async fn head(&self, device: DeviceId) -> Result<Option<Head>, StorageError> {
        Ok(self.kept.borrow().heads.get(&device).copied())
    }

    async fn append(&self, append: Append<'_>) -> Result<(), StorageError> {
        let mut kept = self.kept.borrow_mut();
        let head = kept.heads.get(&append.device).copied();
        if head != append.expected {
            return Err(StorageError::Moved { head });
        }
        append.frames.iter().for_each(|frame| kept.add(frame));
        for name in append.drop_drafts {
            kept.drafts.remove(name);
        }
        Ok(())
    }

    async fn page(
        &self,
        device: DeviceId,
        from: u64,
        limit: usize,
    ) -> Result<Vec<StoredFrame>, StorageError> {
        let kept = self.kept.borrow();
        let range = kept
            .frames
            .range((device, from)..=(device, u64::MAX))
            .take(limit);
        Ok(range
            .map(|((_, sequence), bytes)| StoredFrame {
                sequence: *sequence,
                bytes: bytes.clone(),
            })
            .collect())
    }

    async fn vector(&self) -> Result<Vec<(DeviceId, Head)>, StorageError> {
        Ok(self
            .kept
            .borrow()
            .heads
            .iter()
            .map(|(device, head)| (*device, *head))
            .collect())
    }

    async fn key_file(&self) -> Result<Option<Vec<u8>>, StorageError> {
        Ok(self.kept.borrow().key_file.clone())
    }

    async fn put_key_file(&self, bytes: &[u8]) -> Result<(), StorageError> {
        self.kept.borrow_mut().key_file = Some(bytes.to_vec());
        Ok(())
    }

    async fn found(&self, key_file: &[u8], first: &Frame) -> Result<(), StorageError> {
        let mut kept = self.kept.borrow_mut();
        if kept.key_file.is_some() || !kept.frames.is_empty() {
            return Err(StorageError::NotEmpty);
        }
        kept.key_file = Some(key_file.to_vec());
        kept.add(first);
        Ok(())
    }

    async fn put_draft(&self, name: DraftName, sealed: &[u8]) -> Result<(), StorageError> {
        self.kept.borrow_mut().drafts.insert(name, sealed.to_vec());
        Ok(())
    }

    async fn draft(&self, name: DraftName) -> Result<Option<Vec<u8>>, StorageError> {
        Ok(self.kept.borrow().drafts.get(&name).cloned())
    }

    async fn drafts(&self) -> Result<Vec<StoredDraft>, StorageError> {
        let kept = self.kept.borrow();
        Ok(kept
            .drafts
            .iter()
            .map(|(name, sealed)| StoredDraft {
                name: *name,
                sealed: sealed.clone(),
            })
            .collect())
    }

    async fn remove_draft(&self, name: DraftName) -> Result<(), StorageError> {
        self.kept.borrow_mut().drafts.remove(&name);
        Ok(())
    }

    async fn checkpoint(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        Ok(self.kept.borrow().checkpoint.clone())
    }

    async fn put_checkpoint(&self, pieces: &[Vec<u8>]) -> Result<(), StorageError> {
        self.kept.borrow_mut().checkpoint = pieces.to_vec();
        Ok(())
    }

    async fn roll(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        Ok(self.kept.borrow().roll.clone())
    }

    async fn put_roll(&self, statements: &[Vec<u8>]) -> Result<(), StorageError> {
        self.kept.borrow_mut().roll = statements.to_vec();
        Ok(())
    }

    async fn empty(&self, frames: &[Frame]) -> Result<(), StorageError> {
        let mut kept = self.kept.borrow_mut();
        for frame in frames {
            let place = (frame.device(), frame.sequence());
            if let Some(bytes) = kept.frames.get_mut(&place) {
                *bytes = frame.bytes().to_vec();
            }
        }
        kept.checkpoint.clear();
        Ok(())
    }

    async fn is_copy(&self) -> Result<bool, StorageError> {
        Ok(self.kept.borrow().copy)
    }

    async fn mark_copy(&self) -> Result<(), StorageError> {
        self.kept.borrow_mut().copy = true;
        Ok(())
    }

    async fn renew(&self, renewal: Renewal<'_>) -> Result<(), StorageError> {
        let mut kept = self.kept.borrow_mut();
        let head = kept.heads.get(&renewal.old).copied();
        if head != renewal.expected {
            return Err(StorageError::Moved { head });
        }
        let last = renewal.keep.map_or(0, |head| head.sequence);
        kept.frames
            .retain(|(device, sequence), _| *device != renewal.old || *sequence <= last);
        match renewal.keep {
            Some(head) => kept.heads.insert(renewal.old, head),
            None => kept.heads.remove(&renewal.old),
        };
        renewal.frames.iter().for_each(|frame| kept.add(frame));
        kept.key_file = Some(renewal.key_file.to_vec());
        kept.checkpoint.clear();
        kept.copy = false;
        Ok(())
    }

    async fn wipe(&self) -> Result<(), StorageError> {
        *self.kept.borrow_mut() = Kept::default();
        Ok(())
    }
}
