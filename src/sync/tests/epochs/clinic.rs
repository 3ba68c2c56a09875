//! A clinic whose tablets pass on what they have by hand.

use crate::common::{ONE, append};
use futures::executor::block_on;
use std::collections::{BTreeMap, BTreeSet};
use sync::{Ledger, MemoryStorage, Opened, Storage};
use vault::enrolment::{Host, Newcomer, Terms};
use vault::roll::Change;
use vault::{
    DeviceId, Frame, KeyFile, Keys, Role, Roll, SlotKey, Statement, StretchParams, found_vault,
};

pub fn slot_key() -> SlotKey {
    SlotKey::from_bytes([1; 32])
}

pub const PARAMS: StretchParams = StretchParams {
    salt: [0; 16],
    memory_kib: 8192,
    passes: 1,
    lanes: 1,
};

/// A device with its own storage.
pub struct Tablet {
    pub file: KeyFile,
    pub storage: MemoryStorage,
    pub ledger: Ledger<MemoryStorage>,
    /// Whether it still hears what others write.
    pub here: bool,
    /// Which tablet brought it in.
    pub host: usize,
}

/// A clinic's devices and its roll, which a relay shows to all of them.
pub struct Clinic {
    pub tablets: Vec<Tablet>,
    pub statements: Vec<Statement>,
}

impl Clinic {
    /// A lead and two more devices, of which the second is a lead as well.
    pub fn new() -> Self {
        let (file, keys) = found_vault(&slot_key(), PARAMS, "one").unwrap();
        let storage = MemoryStorage::new();
        let ledger = block_on(Ledger::found(storage.clone(), &file, keys)).unwrap();
        let first = Tablet {
            file,
            storage,
            ledger,
            here: true,
            host: 0,
        };
        let mut clinic = Self {
            tablets: vec![first],
            statements: Vec::new(),
        };
        clinic.enrol(0, Role::Lead);
        clinic.enrol(0, Role::Clinician);
        clinic
    }

    pub fn keys(&self, at: usize) -> Keys {
        self.tablets[at].file.unlock(&slot_key()).unwrap()
    }

    pub fn device(&self, at: usize) -> DeviceId {
        self.tablets[at].file.device()
    }

    pub fn roll(&self) -> Roll {
        Roll::read(self.tablets[0].file.vault(), &self.statements).unwrap()
    }

    /// The lead's keys as they are in its open vault: a key file alone knows only those with which it was made.
    pub fn open_keys(&self, at: usize) -> Keys {
        let keys = self.keys(at);
        for (_, frames) in logs(&self.tablets[at].storage) {
            for frame in frames {
                let _ = keys.learn_epoch(&frame, true);
            }
        }
        keys
    }

    /// A lead brings another device in.
    pub fn enrol(&mut self, lead: usize, role: Role) {
        let keys = self.open_keys(lead);
        let newcomer = Newcomer::new("another").unwrap();
        let host = Host::receive(&keys, newcomer.request().clone()).unwrap();
        let acquainted = newcomer.meet(host.offer().clone());
        let checked = host.check(acquainted.reveal()).unwrap();
        let terms = Terms {
            role,
            roll: &self.statements,
            relay: None,
        };
        let (packet, added) = checked.admit(&keys, terms).unwrap();
        self.statements.extend(added);
        let arrival = acquainted.take(&packet).ok().unwrap();
        let (file, keys) = arrival.keep(&slot_key(), PARAMS).unwrap();
        let storage = MemoryStorage::new();
        let ledger = block_on(Ledger::found(storage.clone(), &file, keys)).unwrap();
        self.tablets.push(Tablet {
            file,
            storage,
            ledger,
            here: true,
            host: lead,
        });
        self.tell_roll();
    }

    /// A lead removes a device; what is at the lead's counts.
    pub fn remove(&mut self, lead: usize, who: usize) -> bool {
        let (keys, about) = (self.keys(lead), self.keys(who).public());
        let head = block_on(self.tablets[lead].storage.head(self.device(who))).unwrap();
        let last = head.map_or(0, |head| head.sequence);
        let Ok(statement) = keys.state(&self.roll(), about, Change::Remove { last }) else {
            return false;
        };
        self.statements.push(statement);
        self.tablets[who].here = false;
        self.tell_roll();
        true
    }

    pub fn tell_roll(&self) {
        let roll = self.roll();
        for tablet in self.tablets.iter().filter(|tablet| tablet.here) {
            block_on(tablet.ledger.go_by(roll.clone()));
        }
    }

    /// Everything that `from` has comes to `to`.
    pub fn bring(&self, from: usize, to: usize) {
        for (device, frames) in logs(&self.tablets[from].storage) {
            let head = block_on(self.tablets[to].storage.head(device)).unwrap();
            let here = head.map_or(0, |head| head.sequence as usize);
            if frames.len() > here {
                append(&self.tablets[to].storage, &frames[here..], head);
            }
        }
        block_on(self.tablets[to].ledger.catch_up()).unwrap();
    }

    pub fn bring_all(&self) {
        for _ in 0..2 {
            for from in 0..self.tablets.len() {
                for to in 0..self.tablets.len() {
                    if from != to {
                        self.bring(from, to);
                    }
                }
            }
        }
    }

    pub fn write(&self, at: usize, payload: &[u8]) {
        block_on(self.tablets[at].ledger.write(payload, Some(ONE), &[])).unwrap();
    }

    /// Opens a device's vault from its storage, as after a restart.
    pub fn reopened(&self, at: usize) -> Opened<MemoryStorage> {
        let storage = self.tablets[at].storage.clone();
        block_on(Ledger::open_by(storage, self.keys(at), Some(self.roll()))).unwrap()
    }
}

pub fn logs(storage: &MemoryStorage) -> Vec<(DeviceId, Vec<Frame>)> {
    let vector = block_on(storage.vector()).unwrap();
    let log = |device| {
        let page = block_on(storage.page(device, 1, 100_000)).unwrap();
        page.into_iter()
            .map(|kept| Frame::parse(kept.bytes).unwrap())
            .collect()
    };
    vector
        .into_iter()
        .map(|(device, _)| (device, log(device)))
        .collect()
}

/// What was read and from where, but for some places.
pub fn places<'a>(
    opened: &'a Opened<MemoryStorage>,
    but: &BTreeSet<(DeviceId, u64)>,
) -> BTreeMap<(DeviceId, u64), &'a [u8]> {
    let entries = opened.entries.iter();
    entries
        .map(|entry| ((entry.device, entry.sequence), entry.payload.as_slice()))
        .filter(|(place, _)| !but.contains(place))
        .collect()
}

pub fn texts(opened: &Opened<MemoryStorage>) -> BTreeSet<Vec<u8>> {
    let entries = opened.entries.iter();
    entries.map(|entry| entry.payload.clone()).collect()
}
