//! Carry files: a tablet's disk as the storage that they are written from and taken into.

use super::device::{Device, Disk};
use futures::executor::block_on;
use sync::carry::{CarryError, Report, export, import};
use sync::exchange::Vector;
use sync::{Append, MemoryStorage, Storage};
use vault::Frame;

impl Device {
    /// A file with what the other side lacks; none where that is nothing.
    pub fn carry_out(&self, theirs: &Vector) -> Option<Vec<u8>> {
        let exported = block_on(export(&self.disk.storage(), self.public(), theirs));
        match exported {
            Ok(exported) => Some(exported.bytes),
            Err(CarryError::Nothing) => None,
            Err(error) => panic!("a sound log can't be carried: {error}"),
        }
    }

    /// Takes a file in. The exchange that is going on hears of what has come.
    pub fn carry_in(&mut self, file: &[u8]) -> Result<Report, CarryError> {
        let storage = self.disk.storage();
        let report = block_on(import(&storage, self.public(), file))?;
        self.disk.read_on(&storage);
        if self.is_busy() {
            self.want_meanwhile();
        }
        Ok(report)
    }
}

impl Disk {
    fn storage(&self) -> MemoryStorage {
        let storage = MemoryStorage::new();
        for (device, frames) in &self.logs {
            let append = Append {
                device: *device,
                expected: None,
                frames,
                drop_drafts: &[],
            };
            block_on(storage.append(append)).unwrap();
        }
        let roll: Vec<Vec<u8>> = self
            .roll
            .iter()
            .map(|statement| statement.bytes().to_vec())
            .collect();
        block_on(storage.put_roll(&roll)).unwrap();
        storage
    }

    /// Keeps what a storage has beyond it.
    fn read_on(&mut self, storage: &MemoryStorage) {
        for (device, _) in block_on(storage.vector()).unwrap() {
            let log = self.logs.entry(device).or_default();
            let page = block_on(storage.page(device, log.len() as u64 + 1, usize::MAX)).unwrap();
            log.extend(
                page.into_iter()
                    .map(|kept| Frame::parse(kept.bytes).unwrap()),
            );
        }
    }
}
