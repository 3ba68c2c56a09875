//! The one door to what is kept: opens it, reads everything, writes durably.

mod asking;
mod carrying;
mod drafts;
mod erased;
mod error;
mod former;
mod held;
mod keys;
mod people;
mod reader;
mod reading;
mod recovery;
mod renew;
mod replay;
mod resume;
mod tablets;
mod write;

pub use carrying::CarriedRoll;
pub use drafts::Drafts;
pub use erased::Erased;
pub use error::{
    CheckpointFailed, DraftsError, LeadError, LedgerError, Refusal, RenewError, WriteError,
};
pub use held::{Held, HeldFor, held_back, held_by};
pub use keys::KeysDue;
pub use reader::Found;
pub(crate) use reader::Reader;
pub(crate) use reading::Reading;
pub use recovery::{RewrapError, kept_key_file};
pub use tablets::{Place, Tablet};
pub use write::Writing;

use crate::checkpoint::{Due, Resumed, is_due};
use crate::damage::Damage;
use crate::storage::Storage;
use futures::lock::Mutex;
use vault::{DeviceId, Frame, KeyFile, Keys, Roll, Subject};
use write::Pen;

/// An open vault on this device. Share it behind an `Rc`: all its methods take `&self`, and writes wait for one another.
#[derive(Debug)]
pub struct Ledger<S> {
    storage: S,
    keys: Keys,
    pen: Mutex<Pen>,
}

/// A vault as it was found on opening.
#[derive(Debug)]
pub struct Opened<S> {
    /// The door.
    pub ledger: Ledger<S>,
    /// Everything that can be read and counts, by device and number.
    pub entries: Vec<Read>,
    /// Everything that can be read and is held back, by device and number; empty where no roll is known.
    pub held: Vec<Held>,
    /// Everything that can't, by device and number; empty in a sound vault.
    pub damage: Vec<Damage>,
    /// How many frames are of kinds that only a later version reads; they are kept as they are.
    pub unread: usize,
    /// Who was erased, by device and number of the erasure.
    pub erased: Vec<Erased>,
    /// Why nothing can be written, if so. The reading goes on.
    pub refusal: Option<Refusal>,
    /// Where reading began.
    pub resumed: Resumed,
    /// A checkpoint, if one is worth writing.
    pub due: Option<Due>,
}

/// An entry that was read.
#[derive(Clone, PartialEq, Eq)]
pub struct Read {
    /// The device that wrote it.
    pub device: DeviceId,
    /// Its number in that device's log.
    pub sequence: u64,
    /// Whom it is about, if anybody.
    pub subject: Option<Subject>,
    /// What was written.
    pub payload: Vec<u8>,
}

impl std::fmt::Debug for Read {
    /// Says where it stands and nothing of what it says.
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.debug_struct("Read")
            .field("device", &self.device)
            .field("sequence", &self.sequence)
            .finish_non_exhaustive()
    }
}

impl<S: Storage> Ledger<S> {
    /// Keeps a new vault: its key file and its first frame, in one step.
    ///
    /// # Errors
    ///
    /// There is a vault already; the storage fails; no randomness.
    pub async fn found(storage: S, key_file: &KeyFile, keys: Keys) -> Result<Self, LedgerError> {
        if key_file.device() != keys.device() || key_file.vault() != keys.vault() {
            return Err(LedgerError::OtherVault);
        }
        let (first, proven) = keys.begin(key_file.device_name())?;
        storage.found(&key_file.to_bytes(), &first).await?;
        let mut reading = Reading::default();
        reading.meet(&keys, &first);
        Ok(Self {
            storage,
            keys,
            pen: Mutex::new(Pen::new(Ok(proven), reading)),
        })
    }

    /// Opens a vault that is kept here and reads everything in it.
    ///
    /// Damage is reported and costs nothing but itself. Where the end of this device's own log is not sound, or the keys
    /// are not proven against it, everything is still read and writing is refused.
    ///
    /// # Errors
    ///
    /// The storage fails; what is kept belongs to another vault.
    pub async fn open(storage: S, keys: Keys) -> Result<Opened<S>, LedgerError> {
        Self::open_by(storage, keys, None).await
    }

    /// The same for a vault with a roll: what a device wrote that is not on it, or was removed before, is held back.
    ///
    /// # Errors
    ///
    /// As [`Ledger::open`].
    pub async fn open_by(
        storage: S,
        keys: Keys,
        roll: Option<Roll>,
    ) -> Result<Opened<S>, LedgerError> {
        Self::open_from(storage, keys, roll, false).await
    }

    /// The same, without going by a checkpoint: every frame is looked at.
    ///
    /// # Errors
    ///
    /// As [`Ledger::open`].
    pub async fn open_afresh(
        storage: S,
        keys: Keys,
        roll: Option<Roll>,
    ) -> Result<Opened<S>, LedgerError> {
        Self::open_from(storage, keys, roll, true).await
    }

    async fn open_from(
        storage: S,
        keys: Keys,
        roll: Option<Roll>,
        afresh: bool,
    ) -> Result<Opened<S>, LedgerError> {
        let mut replayed = replay::replay(&storage, &keys, roll.clone(), afresh).await?;
        if replayed.to_empty {
            erased::carry_out(&storage, &replayed.reading.erasures).await?;
            replayed = replay::replay(&storage, &keys, roll, true).await?;
        }
        if storage.is_copy().await? {
            replayed.proven = Err(Refusal::Copy);
        }
        let refusal = replayed.proven.as_ref().err().copied();
        let mut pen = Pen::new(replayed.proven, replayed.reading);
        pen.covered = replayed.resumed.frames();
        let pen = Mutex::new(pen);
        let Found {
            entries,
            held,
            damage,
            unread,
            erased,
        } = replayed.found;
        Ok(Opened {
            ledger: Self { storage, keys, pen },
            entries,
            held,
            damage,
            unread,
            erased,
            refusal,
            resumed: replayed.resumed,
            due: replayed.due,
        })
    }

    /// Keeps a checkpoint of what was found when the vault was opened: `entries` are those of [`Opened`], all of them.
    /// What was written since is not in it and is read as usual next time. Nothing is kept where somebody was erased since.
    ///
    /// # Errors
    ///
    /// No randomness; the storage fails. The vault opens as before then, only slower.
    pub async fn keep_checkpoint(
        &self,
        due: Due,
        entries: &[Read],
    ) -> Result<(), CheckpointFailed> {
        let mut pen = self.pen.lock().await;
        // Somebody was erased since: it would bring back what is gone. Another one is made in time.
        if pen.reading.erasures.len() == due.erasures {
            self.put_checkpoint(&mut pen, due, entries).await?;
        }
        Ok(())
    }

    /// Keeps a checkpoint of what is here by now, if one is worth writing: call it at a quiet moment, such as when the vault
    /// is locked. Says how many frames it covers; none where none was worth it. Writes wait meanwhile.
    ///
    /// # Errors
    ///
    /// As [`Ledger::keep_checkpoint`]; what is here can't be read.
    pub async fn checkpoint_if_due(&self) -> Result<Option<u64>, CheckpointFailed> {
        let mut pen = self.pen.lock().await;
        let vector = self.storage.vector().await?;
        let here = vector.iter().map(|(_, head)| head.sequence).sum();
        if !is_due(Resumed::After(pen.covered), here) {
            return Ok(None);
        }
        let roll = pen.reading.roll.clone();
        let replayed = replay::replay(&self.storage, &self.keys, roll, false).await?;
        let Some(due) = replayed.due else {
            return Ok(None);
        };
        let entries = &replayed.found.entries;
        let frames = self.put_checkpoint(&mut pen, due, entries).await?;
        Ok(Some(frames))
    }

    async fn put_checkpoint(
        &self,
        pen: &mut Pen,
        due: Due,
        entries: &[Read],
    ) -> Result<u64, CheckpointFailed> {
        let frames = due.frames();
        let pieces = self.keys.seal_checkpoint(&due.bytes(entries))?;
        self.storage.put_checkpoint(&pieces).await?;
        pen.covered = frames;
        Ok(frames)
    }

    /// Reads what has come to the other devices' logs since: call it after a round of the exchange, or an import. What it
    /// gives is new, each thing once; an entry that was reported as damage for want of its key may be among it.
    ///
    /// # Errors
    ///
    /// The storage fails; nothing counts as read then.
    pub async fn catch_up(&self) -> Result<Found, LedgerError> {
        let mut pen = self.pen.lock().await;
        let rest = replay::rest(&self.storage, &self.keys, &pen.reading).await?;
        if self.storage.is_copy().await? {
            pen.proven = Err(Refusal::Copy);
        }
        let (found, to_empty) = replay::read_on(&self.keys, &mut pen.reading, rest);
        if to_empty {
            // Where this fails, it is taken up when the vault is opened next; what was read is told all the same.
            let _ = erased::carry_out(&self.storage, &pen.reading.erasures).await;
        }
        Ok(found)
    }

    /// Reads everything anew, as when the vault is opened: after somebody was erased, or another roll says of what counted
    /// before that it doesn't.
    ///
    /// # Errors
    ///
    /// The storage fails; everything is as it was then.
    pub async fn read_again(&self) -> Result<Found, LedgerError> {
        let mut pen = self.pen.lock().await;
        let roll = pen.reading.roll.clone();
        let replayed = replay::replay(&self.storage, &self.keys, roll, true).await?;
        let proven = if self.storage.is_copy().await? {
            Err(Refusal::Copy)
        } else {
            replayed.proven
        };
        let covered = pen.covered;
        *pen = Pen::new(proven, replayed.reading);
        pen.covered = covered;
        Ok(replayed.found)
    }

    /// Goes by another roll from now on and judges anew what is held back: what counts now is among the entries, what
    /// doesn't is held still. What counted before is judged anew when the vault is opened next.
    pub async fn go_by(&self, roll: Roll) -> Found {
        let mut pen = self.pen.lock().await;
        pen.reading.judge_anew(&self.keys, roll)
    }

    /// Reads frames that are not in any log here, such as a relay has set aside, and keeps nothing of them. Give a person's
    /// key with the entries under it; what doesn't open is damage.
    pub async fn look_at(&self, frames: &[Frame]) -> Found {
        let pen = self.pen.lock().await;
        pen.reading.look_at(&self.keys, frames)
    }

    /// The storage underneath.
    pub fn storage(&self) -> &S {
        &self.storage
    }

    /// This device.
    pub fn device(&self) -> DeviceId {
        self.keys.device()
    }
}
