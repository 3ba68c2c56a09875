//! Another identity for a device that is a copy of another, or was put back from one.
//!
//! Its old log went on elsewhere, so what it wrote after that can't go under the old numbers. It is written anew, under
//! the new identity; the old log is cut back to what the relay is known to have held, and the rest of it comes from there.
//! The record knows an entry by its own id, so one that stands in both logs is one entry.

use super::people::People;
use super::reading::Reading;
use super::write::{Batch, seal_all};
use super::{Ledger, Read, RenewError, Writing};
use crate::storage::{Renewal, Storage};
use vault::frame::PublicKey;
use vault::roll::Change;
use vault::{Frame, Head, KeyFile, KeyId, Opener, Purpose, Role, Roll};

impl<S: Storage> Ledger<S> {
    /// Gives this device another identity: keeps a key file that is opened by what opens `key_file`, and writes anew what the
    /// old log has after `seen`. `seen` is how far the relay is known to have held this device's log
    /// ([`Vector::head`](crate::exchange::Vector::head)), `entries` everything that was read. Afterwards open the vault again;
    /// a lead has to admit the new identity, and one that was a lead until now has done so itself.
    ///
    /// # Errors
    ///
    /// The key file doesn't open; no randomness; the storage fails. Nothing was changed then, or the storage's error says that
    /// this is unsure.
    pub async fn renew(
        &self,
        key_file: &KeyFile,
        by: Opener<'_>,
        seen: Option<Head>,
        entries: &[Read],
    ) -> Result<KeyFile, RenewError> {
        let pen = self.pen.lock().await;
        let (old, expected) = (self.device(), self.storage.head(self.device()).await?);
        let keep = match seen {
            Some(seen) if self.holds(seen).await? => Some(seen),
            _ => None,
        };
        let last = keep.map_or(0, |head| head.sequence);
        let (file, keys) = key_file.renew(by, &self.keys, &self.epochs_after(last).await?)?;
        let (first, start) = keys.begin(file.device_name())?;
        let mut people: People = pen.reading.people.clone();
        people.forget(|_, (device, sequence)| device == old && sequence > last);
        let again = entries
            .iter()
            .filter(|read| read.device == old && read.sequence > last)
            .map(|read| Writing {
                payload: &read.payload,
                subject: read.subject,
            });
        let again: Vec<Writing<'_>> = again.collect();
        self.admit_self(&pen.reading, keys.public()).await?;
        let batch = seal_all(&keys, &start, &people, &again)?;
        let mut frames = vec![first];
        frames.extend(batch.into_iter().flat_map(|Batch { frames, .. }| frames));
        self.storage
            .renew(Renewal {
                key_file: &file.to_bytes(),
                frames: &frames,
                old,
                expected,
                keep,
            })
            .await?;
        Ok(file)
    }

    /// A lead's last word in its old name: the new one is a lead as well. Where nothing comes of the new identity, its keys
    /// are gone and nobody can speak in that name.
    async fn admit_self(&self, reading: &Reading, new: PublicKey) -> Result<(), RenewError> {
        if reading.role(self.device()) != Some(Role::Lead) {
            return Ok(());
        }
        let mut statements = self.statements().await?;
        let stated = Roll::read(self.vault(), &statements)
            .and_then(|roll| self.keys.state(&roll, new, Change::Admit(Role::Lead)));
        // A roll that is not sound lets nobody in: another lead has to.
        if let Ok(statement) = stated {
            statements.push(statement);
            let bytes: Vec<Vec<u8>> = statements
                .iter()
                .map(|statement| statement.bytes().to_vec())
                .collect();
            self.storage.put_roll(&bytes).await?;
        }
        Ok(())
    }

    /// Whether this device's log has this frame.
    async fn holds(&self, head: Head) -> Result<bool, RenewError> {
        let page = self.storage.page(self.device(), head.sequence, 1).await?;
        let frame = page
            .into_iter()
            .find_map(|kept| Frame::parse(kept.bytes).ok());
        Ok(frame.is_some_and(|frame| frame.head() == head))
    }

    /// The epochs that begin in this device's log after a number: nobody else knows them.
    async fn epochs_after(&self, last: u64) -> Result<Vec<KeyId>, RenewError> {
        let mut epochs = Vec::new();
        let mut next = last.checked_add(1);
        while let Some(from) = next {
            let page = self.storage.page(self.device(), from, 500).await?;
            next = page.last().and_then(|last| last.sequence.checked_add(1));
            let frames = page
                .into_iter()
                .filter_map(|kept| Frame::parse(kept.bytes).ok());
            let begun = frames.filter(|frame| frame.header().purpose == Purpose::Epoch);
            epochs.extend(begun.map(|frame| frame.header().key));
        }
        Ok(epochs)
    }
}
