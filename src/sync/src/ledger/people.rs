//! The person keys at hand.

use std::collections::HashMap;
use std::rc::Rc;
use vault::{KeyId, PersonKey, Subject};

/// Every person key that was read or made. Two devices may have made one each for the same person: both read, and
/// whichever was met first is written under.
#[derive(Clone, Default)]
pub struct People {
    by_id: HashMap<KeyId, Rc<PersonKey>>,
    by_subject: HashMap<Subject, Rc<PersonKey>>,
}

impl People {
    pub fn add(&mut self, key: PersonKey) {
        let key = Rc::new(key);
        self.by_id.insert(key.id(), Rc::clone(&key));
        self.by_subject.entry(key.subject()).or_insert(key);
    }

    /// A key that only reads: nothing of this device's own is ever written under it.
    pub fn add_for_reading(&mut self, key: PersonKey) {
        self.by_id.insert(key.id(), Rc::new(key));
    }

    pub fn by_id(&self, id: KeyId) -> Option<&PersonKey> {
        self.by_id.get(&id).map(Rc::as_ref)
    }

    pub fn of(&self, subject: Subject) -> Option<&PersonKey> {
        self.by_subject.get(&subject).map(Rc::as_ref)
    }
}
