//! Carry files of an open vault: its keys stay with the ledger.

use super::{Found, Ledger};
use crate::carry::{self, CarryError, CarryFile, Exported, Report};
use crate::exchange::Vector;
use crate::storage::{Storage, StorageError};
use vault::{Frame, Roll, Statement};

impl<S: Storage> Ledger<S> {
    /// A carry file of everything, or of what the other side lacks, going by a carry file that came from there.
    ///
    /// # Errors
    ///
    /// Theirs is no carry file, is damaged or another vault's; the other side lacks nothing; the storage fails.
    pub async fn carry_out(&self, theirs: Option<&[u8]>) -> Result<Exported, CarryError> {
        let Some(bytes) = theirs else {
            return carry::export(&self.storage, &self.keys, &Vector::new()).await;
        };
        let theirs = self.carried(bytes)?;
        match carry::export(&self.storage, &self.keys, &theirs.vector()).await {
            Err(CarryError::Nothing) if self.roll_continues(&theirs.roll).await? => {
                // A file holds one log at least: the newest entry here goes with the roll.
                let but_one = self.but_the_newest(theirs.vector()).await?;
                carry::export(&self.storage, &self.keys, &but_one).await
            }
            exported => exported,
        }
    }

    /// Whether the roll that is kept here goes on from another one.
    async fn roll_continues(&self, other: &[Statement]) -> Result<bool, StorageError> {
        let known = self.statements().await?;
        Ok(known.len() > other.len() && known.starts_with(other))
    }

    /// The same without this device's newest entry.
    async fn but_the_newest(&self, mut theirs: Vector) -> Result<Vector, StorageError> {
        let own = self.device();
        if let Some(head) = self.storage.head(own).await? {
            let before = self.storage.page(own, head.sequence - 1, 1).await?.pop();
            // Before the first there is none.
            let before = before.filter(|kept| kept.sequence < head.sequence);
            let before = before.and_then(|kept| Frame::parse(kept.bytes).ok());
            theirs.set(own, before.map(|frame| frame.head()));
        }
        Ok(theirs)
    }

    /// Takes a carry file in. Afterwards [`Ledger::catch_up`] reads what came.
    ///
    /// # Errors
    ///
    /// As [`carry::import`].
    pub async fn carry_in(&self, bytes: &[u8]) -> Result<Report, CarryError> {
        carry::import(&self.storage, &self.keys, bytes).await
    }

    fn carried(&self, bytes: &[u8]) -> Result<CarryFile, CarryError> {
        let file = CarryFile::parse(bytes)?;
        if file.vault == self.keys.vault() {
            Ok(file)
        } else {
            Err(CarryError::OtherVault)
        }
    }
}

/// What came of a roll that was carried in.
#[derive(Debug)]
pub enum CarriedRoll {
    /// There was none, or what it says was known.
    Known,
    /// It says more than was known, and holds now.
    Taken(Found),
    /// It is not a continuation of the one that is known here, so nothing of it was taken.
    Other,
}

impl<S: Storage> Ledger<S> {
    /// Takes the roll that is in a carry file, after its frames were taken and read. A roll only ever grows: one that continues
    /// the one that is known here holds from now on. Where none is known, it has to have this device on it, and to begin with
    /// one that holds a key of the vault. One without this device is remembered: where a new roll is begun, it says who is what.
    ///
    /// # Errors
    ///
    /// It is no carry file; the storage fails.
    pub async fn carry_roll_in(&self, bytes: &[u8]) -> Result<CarriedRoll, CarryError> {
        let carried = carry::carried_roll(bytes)?;
        let known = self.statements().await?;
        if known.starts_with(&carried) {
            return Ok(CarriedRoll::Known);
        }
        if !carried.starts_with(&known) {
            return Ok(CarriedRoll::Other);
        }
        let Some(roll) = self.ours(&carried).await else {
            return Ok(CarriedRoll::Other);
        };
        if roll.standing(self.device()).is_none() {
            self.keep_former(&carried)
                .await
                .map_err(|error| StorageError::Other(error.to_string()))?;
            return Ok(CarriedRoll::Other);
        }
        // It was read already: what can fail is keeping it.
        let taken = self.take_roll(&carried).await;
        let taken = taken.map_err(|error| StorageError::Other(error.to_string()));
        Ok(CarriedRoll::Taken(taken?))
    }

    /// A roll that holds together and was begun by a device of the vault.
    async fn ours(&self, carried: &[Statement]) -> Option<Roll> {
        let roll = Roll::read(self.vault(), carried).ok()?;
        let first = carried.first().map(|first| first.by);
        let reading = &self.pen.lock().await.reading;
        let begun = first.is_some_and(|by| {
            let device = by.device();
            device == self.device() || reading.introduced_as(device) == Some(by)
        });
        begun.then_some(roll)
    }
}
