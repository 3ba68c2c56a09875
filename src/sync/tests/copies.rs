//! A device that was put back from a copy: it is noticed, reads on, takes another identity, and nothing is lost.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{ONE, append, founded, slot_key};
use futures::executor::block_on;
use std::cell::{Cell, RefCell};
use std::collections::BTreeSet;
use sync::exchange::{
    Answer, Exchange, Failure, FrameStore, Host, MemoryStore, Notice, Quota, Request, Vector,
    answer, round,
};
use sync::{Ledger, MemoryStorage, Opened, Refusal, Storage, WriteError};
use vault::roll::Change;
use vault::{DeviceId, Frame, KeyFile, Keys, Opener, Role, Roll};

/// A relay, asked by one device.
struct Line<'a> {
    relay: &'a MemoryStore,
    keys: &'a Keys,
    seen: RefCell<Vector>,
    told: RefCell<Vec<Notice>>,
    drawn: Cell<u32>,
}

impl Host for Line<'_> {
    async fn ask(&self, request: Request) -> Result<Answer, Failure> {
        let quota = Quota { bytes: u64::MAX };
        answer(
            self.relay,
            self.keys.vault(),
            self.keys.device(),
            quota,
            request,
        )
        .map_err(|refusal| Failure::Refused(refusal.to_string()))
    }

    fn random(&self) -> u32 {
        self.drawn.replace(self.drawn.get() + 1)
    }

    async fn remember(&self, seen: &Vector) {
        *self.seen.borrow_mut() = seen.clone();
    }

    fn tell(&self, notice: Notice) {
        self.told.borrow_mut().push(notice);
    }
}

/// A round of the exchange; gives what the relay is known to have held afterwards.
fn exchange(relay: &MemoryStore, storage: &MemoryStorage, keys: &Keys, seen: &Vector) -> Vector {
    let line = Line {
        relay,
        keys,
        seen: RefCell::new(seen.clone()),
        told: RefCell::default(),
        drawn: Cell::new(0),
    };
    let mut exchange = Exchange::new(keys.vault(), keys.device(), seen.clone());
    block_on(round(&mut exchange, storage, &line)).unwrap();
    line.seen.into_inner()
}

/// The same bytes in another storage.
fn copy(storage: &MemoryStorage, file: &KeyFile) -> MemoryStorage {
    let other = MemoryStorage::new();
    block_on(other.put_key_file(&file.to_bytes())).unwrap();
    for (device, _) in block_on(storage.vector()).unwrap() {
        append(&other, &log(storage, device), None);
    }
    for draft in block_on(storage.drafts()).unwrap() {
        block_on(other.put_draft(draft.name, &draft.sealed)).unwrap();
    }
    other
}

fn log(storage: &MemoryStorage, device: DeviceId) -> Vec<Frame> {
    let page = block_on(storage.page(device, 1, 1_000)).unwrap();
    page.into_iter()
        .map(|kept| Frame::parse(kept.bytes).unwrap())
        .collect()
}

fn open(storage: &MemoryStorage, file: &KeyFile) -> Opened<MemoryStorage> {
    let keys = file.unlock(&slot_key()).unwrap();
    block_on(Ledger::open(storage.clone(), keys)).unwrap()
}

fn texts(opened: &Opened<MemoryStorage>) -> BTreeSet<String> {
    let entries = opened.entries.iter();
    entries
        .map(|entry| String::from_utf8(entry.payload.clone()).unwrap())
        .collect()
}

/// A vault on a relay, with an entry and a draft, and a copy of the tablet's storage from before the second entry.
struct Scene {
    relay: MemoryStore,
    storage: MemoryStorage,
    file: KeyFile,
    copy: MemoryStorage,
    /// What the relay was known to have held when the copy was made.
    seen: Vector,
}

fn scene() -> Scene {
    let (storage, file, ledger) = founded();
    let keys = file.unlock(&slot_key()).unwrap();
    let relay = MemoryStore::new();
    let roll = Roll::new(keys.vault());
    let founding = keys
        .state(&roll, keys.public(), Change::Admit(Role::Lead))
        .unwrap();
    assert!(relay.open_vault(&founding));
    block_on(ledger.write(b"before", Some(ONE), &[])).unwrap();
    block_on(ledger.put_draft(b"acuity", b"6/")).unwrap();
    let seen = exchange(&relay, &storage, &keys, &Vector::new());
    // Not yet on the relay when the copy is made.
    block_on(ledger.write(b"shared", Some(ONE), &[])).unwrap();
    let copy = copy(&storage, &file);
    block_on(ledger.write(b"after the copy", Some(ONE), &[])).unwrap();
    exchange(&relay, &storage, &keys, &seen);
    Scene {
        relay,
        storage,
        file,
        copy,
        seen,
    }
}

fn admit(scene: &Scene, keys: &Keys) {
    let lead = scene.file.unlock(&slot_key()).unwrap();
    let statements = scene.relay.roll(lead.vault()).unwrap();
    let roll = Roll::read(lead.vault(), &statements).unwrap();
    let statement = lead
        .state(&roll, keys.public(), Change::Admit(Role::Clinician))
        .unwrap();
    assert!(scene.relay.extend_roll(&statement).unwrap());
}

/// Takes the new identity in the copy, is admitted, exchanges, and gives the key file.
fn renewed(scene: &Scene, seen: &Vector) -> KeyFile {
    let opened = open(&scene.copy, &scene.file);
    assert_eq!(opened.refusal, Some(Refusal::Copy));
    let key = slot_key();
    let by = Opener::Passphrase(&key);
    let seen = seen.head(scene.file.device());
    let file = block_on(opened.ledger.renew(&scene.file, by, seen, &opened.entries)).unwrap();
    let keys = file.unlock(&slot_key()).unwrap();
    admit(scene, &keys);
    exchange(&scene.relay, &scene.copy, &keys, &Vector::new());
    file
}

#[test]
fn a_copy_that_wrote_nothing_is_noticed_and_gets_another_name() {
    let scene = scene();
    let keys = scene.file.unlock(&slot_key()).unwrap();
    let opened = open(&scene.copy, &scene.file);
    assert_eq!(opened.refusal, None, "nobody can tell before the exchange");
    let seen = exchange(&scene.relay, &scene.copy, &keys, &scene.seen);
    // The open vault hears of it, writes no more and reads on.
    block_on(opened.ledger.catch_up()).unwrap();
    assert_eq!(
        block_on(opened.ledger.write(b"x", None, &[])),
        Err(WriteError::Refused(Refusal::Copy))
    );
    let file = renewed(&scene, &seen);
    assert_ne!(file.device(), scene.file.device());
    let again = open(&scene.copy, &file);
    assert_eq!(again.refusal, None);
    assert!(again.damage.is_empty(), "{:?}", again.damage);
    assert_eq!(
        texts(&again),
        BTreeSet::from(["before", "shared", "after the copy"].map(Into::into))
    );
    assert_eq!(
        block_on(again.ledger.draft(b"acuity")).unwrap().unwrap(),
        b"6/"
    );
    block_on(again.ledger.write(b"under the new name", Some(ONE), &[])).unwrap();
}

#[test]
fn what_a_copy_wrote_meanwhile_comes_to_everybody() {
    let scene = scene();
    let keys = scene.file.unlock(&slot_key()).unwrap();
    let opened = open(&scene.copy, &scene.file);
    for text in ["a day\u{2019}s work", "and more of it", "a third"] {
        block_on(opened.ledger.write(text.as_bytes(), Some(ONE), &[])).unwrap();
    }
    let seen = exchange(&scene.relay, &scene.copy, &keys, &scene.seen);
    let file = renewed(&scene, &seen);
    let all = BTreeSet::from(
        [
            "before",
            "shared",
            "after the copy",
            "a day\u{2019}s work",
            "and more of it",
            "a third",
        ]
        .map(Into::into),
    );
    let copy = open(&scene.copy, &file);
    assert_eq!(texts(&copy), all);
    assert!(copy.damage.is_empty() && copy.refusal.is_none());
    // The other one goes on under the old name, and hears of all of it.
    exchange(&scene.relay, &scene.storage, &keys, &Vector::new());
    let original = open(&scene.storage, &scene.file);
    assert_eq!(texts(&original), all);
    assert!(original.damage.is_empty() && original.refusal.is_none());
    assert_eq!(
        log(&scene.storage, scene.file.device()),
        log(&scene.copy, scene.file.device())
    );
}

/// The relay's word on how far it went is not here any more: everything of its own is written anew, and nothing is lost.
#[test]
fn a_copy_that_remembers_nothing_writes_all_of_its_own_anew() {
    let scene = scene();
    let keys = scene.file.unlock(&slot_key()).unwrap();
    let opened = open(&scene.copy, &scene.file);
    block_on(opened.ledger.write(b"a day", Some(ONE), &[])).unwrap();
    exchange(&scene.relay, &scene.copy, &keys, &Vector::new());
    let file = renewed(&scene, &Vector::new());
    let copy = open(&scene.copy, &file);
    assert_eq!(
        texts(&copy),
        BTreeSet::from(["before", "shared", "after the copy", "a day"].map(Into::into))
    );
    assert!(copy.damage.is_empty());
}

#[test]
fn a_wrong_passphrase_or_a_storage_that_moved_changes_nothing() {
    let scene = scene();
    let opened = open(&scene.copy, &scene.file);
    let wrong = vault::SlotKey::from_bytes([8; 32]);
    let refused = block_on(opened.ledger.renew(
        &scene.file,
        Opener::Passphrase(&wrong),
        None,
        &opened.entries,
    ));
    assert!(refused.is_err());
    let kept = block_on(scene.copy.key_file()).unwrap();
    assert_eq!(kept, Some(scene.file.to_bytes()));
    assert_eq!(block_on(scene.copy.vector()).unwrap().len(), 1);
}
