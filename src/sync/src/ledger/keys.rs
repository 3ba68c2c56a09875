//! A lead's care for the vault's keys: a new one when a device was removed, and the one that there is for who lacks it.

use super::reading::Reading;
use super::write::Batch;
use super::{LeadError, Ledger};
use crate::storage::Storage;
use std::collections::BTreeSet;
use vault::{Head, Keys};

/// What is to be done about the vault's keys.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum KeysDue {
    /// Nothing.
    Nothing,
    /// A device was removed since the present key was made: it must not read what is written from now on.
    Renew,
    /// So many belong to the vault and lack a key: devices that came while the present one was made, the recovery sheet, or
    /// all, where two leads made one each and the one that is used doesn't carry the other yet.
    HandOn(usize),
}

impl<S: Storage> Ledger<S> {
    /// What is to be done about the vault's keys; any lead may do it, and two that do it at once do no harm.
    pub async fn keys_due(&self) -> KeysDue {
        keys_due(&self.keys, &self.pen.lock().await.reading)
    }

    /// Does what is due: begins a new epoch, or seals the present one to who lacks it. Gives the new head; none where
    /// nothing was due.
    ///
    /// # Errors
    ///
    /// This device is no lead; it was not written.
    pub async fn renew_keys(&self) -> Result<Option<Head>, LeadError> {
        let mut pen = self.pen.lock().await;
        self.settle(&mut pen).await?;
        let reading = &pen.reading;
        let due = keys_due(&self.keys, reading);
        if due == KeysDue::Nothing {
            return Ok(None);
        }
        if !reading.leads(self.device()) {
            return Err(LeadError::NotALead);
        }
        let failed = |error: vault::SealError| LeadError::Write(error.into());
        let (epoch, to) = if due == KeysDue::Renew {
            let (roll, _) = reading.roll_ends();
            let epoch = self.keys.make_epoch(roll);
            let mut to = reading.exchanges();
            to.insert(self.keys.exchange_public());
            (epoch.map_err(|error| failed(error.into()))?, to)
        } else {
            (self.keys.same_epoch(), lacking(&self.keys, reading))
        };
        // The recovery code's box is made beside those of the devices.
        let recovery = self.keys.recovery();
        let to: Vec<_> = to.into_iter().filter(|to| Some(*to) != recovery).collect();
        let place = pen.proven.as_ref().map_err(|refusal| (*refusal).into());
        let place = place.map_err(LeadError::Write)?;
        let (frame, proven) = self.keys.seal_epoch(place, &epoch, &to).map_err(failed)?;
        let (expected, key) = (place.head(), frame.header().key);
        let carried = epoch.carries(&self.keys);
        let batch = Batch {
            frames: vec![frame],
            proven,
            new_people: Vec::new(),
            epoch: Some(epoch),
        };
        let head = self.append(&mut pen, expected, batch, &[]).await?;
        let to = to.into_iter().chain(recovery);
        pen.reading.spread(key, to, carried);
        Ok(Some(head))
    }
}

fn keys_due(keys: &Keys, reading: &Reading) -> KeysDue {
    let (_, removal) = reading.roll_ends();
    if removal > keys.epoch_roll() {
        return KeysDue::Renew;
    }
    let (number, id) = keys.epoch_now();
    let carries = reading.spread_of(id).carries;
    let mut before = keys.epochs_before_now().into_iter();
    let alone = number > 1 && before.any(|key| !carries.contains(&key));
    match lacking(keys, reading).len() {
        0 if alone => KeysDue::HandOn(reading.exchanges().len()),
        0 => KeysDue::Nothing,
        count => KeysDue::HandOn(count),
    }
}

/// Who belongs to the vault and is not known to have the present key. The first one, every device came with.
fn lacking(keys: &Keys, reading: &Reading) -> BTreeSet<[u8; 32]> {
    let (number, id) = keys.epoch_now();
    let mut all = if number > 1 {
        reading.exchanges()
    } else {
        BTreeSet::new()
    };
    all.remove(&keys.exchange_public());
    all.extend(keys.recovery());
    let have = reading.spread_of(id).sealed_to;
    all.retain(|one| !have.contains(one));
    all
}
