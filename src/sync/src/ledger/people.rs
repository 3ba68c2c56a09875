//! The person keys at hand.

use std::collections::HashMap;
use std::rc::Rc;
use vault::{DeviceId, ErasedKey, KeyId, PersonKey, Subject};

/// Every person key that was read or made. Two devices may have made one each for the same person: both read, and the one
/// with the smaller id is written under, so that it doesn't matter in which order they were met.
#[derive(Clone, Default)]
pub struct People {
    by_id: HashMap<KeyId, Met>,
    by_subject: HashMap<Subject, Rc<PersonKey>>,
}

/// A key and the frame that holds it.
#[derive(Clone)]
struct Met {
    key: Rc<PersonKey>,
    device: DeviceId,
    sequence: u64,
    /// Whether it may be written under.
    counts: bool,
}

/// In whose log a key's frame is, and its number.
pub type Place = (DeviceId, u64);

impl People {
    pub fn add(&mut self, key: PersonKey, place: Place) {
        let key = self.insert(key, place, true);
        write_under(&mut self.by_subject, &key);
    }

    /// A key that only reads: nothing of this device's own is ever written under it.
    pub fn add_for_reading(&mut self, key: PersonKey, place: Place) {
        self.insert(key, place, false);
    }

    fn insert(&mut self, key: PersonKey, (device, sequence): Place, counts: bool) -> Rc<PersonKey> {
        let key = Rc::new(key);
        let met = Met {
            key: Rc::clone(&key),
            device,
            sequence,
            counts,
        };
        self.by_id.insert(key.id(), met);
        key
    }

    pub fn by_id(&self, id: KeyId) -> Option<&PersonKey> {
        self.by_id.get(&id).map(|met| met.key.as_ref())
    }

    pub fn of(&self, subject: Subject) -> Option<&PersonKey> {
        self.by_subject.get(&subject).map(Rc::as_ref)
    }

    /// All keys of a person, for erasing them, in the order of their ids.
    pub fn all_of(&self, subject: Subject) -> Vec<ErasedKey> {
        let keys = self
            .by_id
            .iter()
            .filter(|(_, met)| met.key.subject() == subject);
        let mut keys: Vec<ErasedKey> = keys
            .map(|(id, met)| ErasedKey {
                id: *id,
                device: met.device,
                sequence: met.sequence,
            })
            .collect();
        keys.sort_by_key(|key| key.id);
        keys
    }

    /// Forgets every key that `gone` says so of.
    pub fn forget(&mut self, gone: impl Fn(KeyId, Place) -> bool) {
        self.by_id
            .retain(|id, met| !gone(*id, (met.device, met.sequence)));
        self.by_subject.clear();
        for met in self.by_id.values().filter(|met| met.counts) {
            write_under(&mut self.by_subject, &met.key);
        }
    }
}

/// Of several keys of one person, the one with the smallest id is written under.
fn write_under(by_subject: &mut HashMap<Subject, Rc<PersonKey>>, key: &Rc<PersonKey>) {
    let written = by_subject.entry(key.subject());
    let kept = written.or_insert_with(|| Rc::clone(key));
    if key.id() < kept.id() {
        *kept = Rc::clone(key);
    }
}
