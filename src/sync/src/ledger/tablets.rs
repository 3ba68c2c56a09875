//! Which devices there are, and a lead's changes to that.

use super::former::said_again;
use super::reading::Reading;
use super::write::{Batch, Pen};
use super::{Found, LeadError, Ledger, LedgerError, Opened, WriteError};
use crate::exchange::restated;
use crate::storage::{Storage, StorageError};
use vault::enrolment::{Checked, Host, Packet, Request, Terms};
use vault::frame::PublicKey;
use vault::roll::Change;
use vault::{DeviceId, KeyFile, Keys, Role, Roll, Statement};

/// A device, as this one knows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tablet {
    /// Which.
    pub device: DeviceId,
    /// What it calls itself, where its introduction is here.
    pub name: Option<String>,
    /// Where it stands.
    pub place: Place,
    /// How many entries of it are here.
    pub entries: u64,
    /// Whether it is this one.
    pub own: bool,
}

/// Where a device stands in the vault.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// It belongs here. Where there is no roll yet, every device is a lead.
    Here(Role),
    /// It did, and was removed.
    Removed,
    /// It holds the vault's key, and no lead has admitted it.
    NotAdmitted,
}

impl<S: Storage> Ledger<S> {
    /// Opens a vault by the roll that is kept beside it; one that can't be read is as none.
    ///
    /// # Errors
    ///
    /// As [`Ledger::open`].
    pub async fn open_kept(storage: S, keys: Keys) -> Result<Opened<S>, LedgerError> {
        let statements = kept(&storage).await?;
        let roll = Roll::read(keys.vault(), &statements).ok();
        let roll = roll.filter(|roll| roll.length() > 0);
        Self::open_by(storage, keys, roll).await
    }

    /// The roll's statements as they are kept; empty where there are none.
    ///
    /// # Errors
    ///
    /// The storage fails.
    pub async fn statements(&self) -> Result<Vec<Statement>, StorageError> {
        kept(&self.storage).await
    }

    /// Keeps another roll and goes by it, as [`Ledger::go_by`]. Where it parts from the one that was known, a lead says again
    /// what is lacking ([`restated`]); the relay is told of that by the next [`settle_roll`](crate::exchange::settle_roll).
    ///
    /// # Errors
    ///
    /// It is not one; the storage fails.
    pub async fn take_roll(&self, statements: &[Statement]) -> Result<Found, LeadError> {
        let mut pen = self.pen.lock().await;
        let known = kept(&self.storage).await.map_err(unkept)?;
        let statements = restated(&self.keys, &known, statements);
        self.keep_roll(&mut pen, &statements).await
    }

    /// The statements with which a vault that has none is opened on a relay: this device is its lead, and the others that
    /// are known here stay what they were. Of a vault that was brought back, that is what its former roll says.
    ///
    /// # Errors
    ///
    /// The storage fails; the roll that is kept doesn't have this device as a lead.
    pub async fn begin_roll(&self) -> Result<Vec<Statement>, LeadError> {
        let mut pen = self.pen.lock().await;
        let statements = self.begun(&pen.reading).await?;
        self.keep_roll(&mut pen, &statements).await?;
        Ok(statements)
    }

    /// What this device may do; none where it was removed or not admitted. Without a roll it is a lead.
    pub async fn role(&self) -> Option<Role> {
        let pen = self.pen.lock().await;
        match pen.reading.place(self.device()) {
            Place::Here(role) => Some(role),
            _ => None,
        }
    }

    /// All devices that are known here, this one first, then by what they are called.
    ///
    /// # Errors
    ///
    /// The storage fails.
    pub async fn tablets(&self) -> Result<Vec<Tablet>, StorageError> {
        let heads = self.storage.vector().await?;
        let pen = self.pen.lock().await;
        let sequence = |device| {
            let mut of = heads.iter().filter(|(of, _)| *of == device);
            of.next().map_or(0, |(_, head)| head.sequence)
        };
        let devices = pen
            .reading
            .known_devices(heads.iter().map(|(device, _)| *device));
        let mut tablets: Vec<Tablet> = devices
            .into_iter()
            .map(|device| Tablet {
                device,
                name: pen.reading.name_of(device),
                place: pen.reading.place(device),
                entries: sequence(device),
                own: device == self.device(),
            })
            .collect();
        tablets.sort_by_key(|tablet| (!tablet.own, tablet.name.clone(), tablet.device));
        Ok(tablets)
    }

    /// Takes the request of a device that wants to come in.
    ///
    /// # Errors
    ///
    /// This device is no lead; no randomness.
    pub async fn receive(&self, request: Request) -> Result<Host, LeadError> {
        if !self.pen.lock().await.reading.leads(self.device()) {
            return Err(LeadError::NotALead);
        }
        Ok(Host::receive(&self.keys, request)?)
    }

    /// Admits a device once somebody has seen the same phrase on both, keeps the roll, and gives the packet to show.
    ///
    /// # Errors
    ///
    /// This device is no lead; the storage fails; no randomness. Nothing was kept then.
    pub async fn admit(
        &self,
        checked: Checked,
        role: Role,
        relay: Option<&str>,
    ) -> Result<Packet, LeadError> {
        let mut pen = self.pen.lock().await;
        let mut statements = self.begun(&pen.reading).await?;
        let terms = Terms {
            role,
            roll: &statements,
            relay,
        };
        let (packet, added) = checked.admit(&self.keys, terms)?;
        statements.extend(added);
        self.keep_roll(&mut pen, &statements).await?;
        Ok(packet)
    }

    /// Gives a device another role, or one to a device that was not admitted yet.
    ///
    /// # Errors
    ///
    /// This device is no lead; the roll's rules; nobody knows the device's key; the storage fails.
    pub async fn set_role(&self, device: DeviceId, role: Role) -> Result<Found, LeadError> {
        self.change(device, Change::Admit(role)).await
    }

    /// Removes a device: what it has written until now, as far as it is here, counts; what it writes from now on is set
    /// aside. Call [`Ledger::renew_keys`] then, so that it can't read what comes.
    ///
    /// # Errors
    ///
    /// As [`Ledger::set_role`].
    pub async fn remove(&self, device: DeviceId) -> Result<Found, LeadError> {
        let head = self.storage.head(device).await.map_err(unkept)?;
        let last = head.map_or(0, |head| head.sequence);
        self.change(device, Change::Remove { last }).await
    }

    async fn change(&self, device: DeviceId, change: Change) -> Result<Found, LeadError> {
        let mut pen = self.pen.lock().await;
        let mut statements = self.begun(&pen.reading).await?;
        let roll = Roll::read(self.vault(), &statements)?;
        let key = pen.reading.public(&roll, device).ok_or(LeadError::Nobody)?;
        statements.push(self.keys.state(&roll, key, change)?);
        self.keep_roll(&mut pen, &statements).await
    }

    /// Calls this device something else, here and for all who read its log.
    ///
    /// # Errors
    ///
    /// As [`Ledger::write`].
    pub async fn rename(&self, name: &str) -> Result<(), WriteError> {
        let mut pen = self.pen.lock().await;
        self.settle(&mut pen).await?;
        let place = pen.proven.as_ref().map_err(|refusal| *refusal)?;
        let (frame, proven) = self.keys.introduce_again(place, name)?;
        let expected = place.head();
        let batch = Batch {
            frames: vec![frame.clone()],
            proven,
            new_people: Vec::new(),
            epoch: None,
        };
        self.append(&mut pen, expected, batch, &[]).await?;
        pen.reading.meet(&self.keys, &frame);
        // The key file's own label is for the page that asks for the passphrase.
        let kept = self.storage.key_file().await?;
        let file = kept.and_then(|bytes| KeyFile::from_bytes(&bytes).ok());
        if let Some(file) = file {
            let renamed = file.renamed(name).to_bytes();
            self.storage.put_key_file(&renamed).await?;
        }
        Ok(())
    }

    /// The roll to go on from: the one that is kept, or a new one that takes everybody along who is known here, as what the
    /// former roll said of them where there was one.
    async fn begun(&self, reading: &Reading) -> Result<Vec<Statement>, LeadError> {
        let kept = kept(&self.storage).await.map_err(unkept)?;
        if !reading.leads(self.device()) {
            return Err(LeadError::NotALead);
        }
        if !kept.is_empty() {
            return Ok(kept);
        }
        let lead = Change::Admit(Role::Lead);
        let mut roll = Roll::new(self.vault());
        let mut statements = vec![self.keys.state(&roll, self.keys.public(), lead)?];
        roll.add(&statements[0])?;
        let others = match self.former().await {
            Some(former) => said_again(&former),
            None => reading
                .others(self.device())
                .into_iter()
                .map(|key| (key, lead))
                .collect(),
        };
        for (key, change) in others {
            let statement = self.keys.state(&roll, key, change)?;
            roll.add(&statement)?;
            statements.push(statement);
        }
        Ok(statements)
    }

    async fn keep_roll(&self, pen: &mut Pen, statements: &[Statement]) -> Result<Found, LeadError> {
        let roll = Roll::read(self.vault(), statements)?;
        let bytes: Vec<Vec<u8>> = statements
            .iter()
            .map(|statement| statement.bytes().to_vec())
            .collect();
        self.storage.put_roll(&bytes).await.map_err(unkept)?;
        Ok(pen.reading.judge_anew(&self.keys, roll))
    }
}

fn unkept(error: StorageError) -> LeadError {
    LeadError::Write(error.into())
}

/// The statements that are kept, as far as they can be read.
async fn kept<S: Storage>(storage: &S) -> Result<Vec<Statement>, StorageError> {
    let bytes = storage.roll().await?;
    let read = bytes.iter().map_while(|bytes| Statement::parse(bytes).ok());
    Ok(read.collect())
}

impl Reading {
    /// Where a device stands.
    fn place(&self, device: DeviceId) -> Place {
        let Some(roll) = &self.roll else {
            return Place::Here(Role::Lead);
        };
        match roll.standing(device) {
            Some(standing) if standing.removed_after.is_none() => Place::Here(standing.role),
            Some(_) => Place::Removed,
            None => Place::NotAdmitted,
        }
    }

    fn name_of(&self, device: DeviceId) -> Option<String> {
        let introduced = self.introduced.get(&device);
        introduced.map(|introduction| introduction.name.clone())
    }

    /// Everybody on the roll, who has introduced themselves, or has a log.
    fn known_devices(&self, logged: impl Iterator<Item = DeviceId>) -> Vec<DeviceId> {
        let rolled = self.roll.iter().flat_map(Roll::devices);
        let introduced = self.introduced.keys().copied();
        let all = rolled.map(|(device, _)| device).chain(introduced);
        let mut all: Vec<DeviceId> = all.chain(logged).collect();
        all.sort();
        all.dedup();
        all
    }

    fn public(&self, roll: &Roll, device: DeviceId) -> Option<PublicKey> {
        let introduced = self.introduced.get(&device);
        let rolled = roll.standing(device).map(|standing| standing.key);
        rolled.or(introduced.map(|introduction| introduction.signing))
    }

    /// The keys of all who have introduced themselves, but one.
    fn others(&self, own: DeviceId) -> Vec<PublicKey> {
        let others = self.introduced.iter().filter(|(device, _)| **device != own);
        others
            .map(|(_, introduction)| introduction.signing)
            .collect()
    }
}
