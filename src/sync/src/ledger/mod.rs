//! The one door to what is kept: opens it, reads everything, writes durably.

mod drafts;
mod error;
mod held;
mod people;
mod reader;
mod replay;
mod write;

pub use drafts::Drafts;
pub use error::{DraftsError, LedgerError, Refusal, WriteError};
pub use held::{Held, HeldFor};
pub use reader::Found;
pub use write::Writing;

use crate::damage::Damage;
use crate::storage::Storage;
use futures::lock::Mutex;
use reader::Reading;
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
    /// Why nothing can be written, if so. The reading goes on.
    pub refusal: Option<Refusal>,
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
        Ok(Self {
            storage,
            keys,
            pen: Mutex::new(Pen::new(Ok(proven), Reading::default())),
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
        let replayed = replay::replay(&storage, &keys, roll).await?;
        let refusal = replayed.proven.as_ref().err().copied();
        let pen = Mutex::new(Pen::new(replayed.proven, replayed.reading));
        let Found {
            entries,
            held,
            damage,
            unread,
        } = replayed.found;
        Ok(Opened {
            ledger: Self { storage, keys, pen },
            entries,
            held,
            damage,
            unread,
            refusal,
        })
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
        Ok(replay::read_on(&self.keys, &mut pen.reading, rest))
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
