//! What other devices wrote, come to a vault that is open: read once, or held back by the roll, and never lost.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::faulty::{Failure, Faulty};
use common::{ONE, append};
use futures::executor::block_on;
use std::collections::BTreeMap;
use sync::{Fault, Found, HeldFor, Ledger, MemoryStorage, Opened, Storage};
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Keys, PersonKey, Proven, Role, Roll, Under};

/// A pen of another device: its frames one after the other.
struct Other {
    keys: Keys,
    place: Proven,
    log: Vec<Frame>,
}

impl Other {
    fn new(device: Device, name: &str) -> Self {
        let (first, place) = device.keys.begin(name).unwrap();
        Self {
            keys: device.keys,
            place,
            log: vec![first],
        }
    }

    fn write(&mut self, under: Under<'_>, payload: &[u8]) {
        let sealed = self.keys.seal(&self.place, under, payload).unwrap();
        self.push(sealed);
    }

    fn meet(&mut self) -> PersonKey {
        let key = self.keys.make_person_key(ONE).unwrap();
        let sealed = self.keys.seal_person_key(&self.place, &key).unwrap();
        self.push(sealed);
        key
    }

    fn push(&mut self, (frame, place): (Frame, Proven)) {
        self.log.push(frame);
        self.place = place;
    }
}

/// A vault of three devices: this one's storage with its first frame, its keys, and two others.
fn vault(seed: u64) -> (MemoryStorage, Keys, Other, Other) {
    let [own, one, two]: [Device; 3] = devices(seed, 3).try_into().ok().unwrap();
    let storage = MemoryStorage::new();
    append(&storage, &[own.keys.begin("own").unwrap().0], None);
    (
        storage,
        own.keys,
        Other::new(one, "one"),
        Other::new(two, "two"),
    )
}

/// Frames of a log that the storage lacks, as a pull brings them.
fn bring(storage: &MemoryStorage, log: &[Frame]) {
    let head = block_on(storage.head(log[0].device())).unwrap();
    let here = head.map_or(0, |head| head.sequence) as usize;
    if log.len() > here {
        append(storage, &log[here..], head);
    }
}

fn opened(storage: &MemoryStorage, keys: Keys, roll: Option<Roll>) -> Opened<MemoryStorage> {
    block_on(Ledger::open_by(storage.clone(), keys, roll)).unwrap()
}

fn caught_up(ledger: &Ledger<MemoryStorage>) -> Found {
    block_on(ledger.catch_up()).unwrap()
}

fn payloads(found: &Found) -> Vec<&[u8]> {
    let entries = found.entries.iter();
    entries.map(|entry| entry.payload.as_slice()).collect()
}

/// A roll on which the founder and those after it stand.
fn roll(founder: &Keys, others: &[(&Keys, Role)]) -> Roll {
    let mut roll = Roll::new(founder.vault());
    for (keys, role) in [(founder, Role::Lead)].iter().chain(others) {
        state(&mut roll, founder, keys, Change::Admit(*role));
    }
    roll
}

fn state(roll: &mut Roll, founder: &Keys, about: &Keys, change: Change) {
    let statement = founder.state(roll, about.public(), change).unwrap();
    roll.add(&statement).unwrap();
}

#[test]
fn what_comes_to_an_open_vault_is_read_once_and_in_order() {
    let (storage, keys, mut one, mut two) = vault(1);
    let opened = opened(&storage, keys, None);
    assert!(opened.entries.is_empty());
    one.write(Under::Epoch, b"first");
    let key = one.meet();
    one.write(Under::Person(&key), b"second");
    bring(&storage, &one.log);
    let found = caught_up(&opened.ledger);
    assert_eq!(payloads(&found), [b"first".as_slice(), b"second"]);
    assert_eq!(found.entries[1].subject, Some(ONE));
    assert!(found.damage.is_empty() && found.held.is_empty());
    assert!(caught_up(&opened.ledger).entries.is_empty(), "once");
    one.write(Under::Person(&key), b"third");
    two.write(Under::Epoch, b"elsewhere");
    bring(&storage, &one.log);
    bring(&storage, &two.log);
    let found = caught_up(&opened.ledger);
    let mut read = payloads(&found);
    read.sort_unstable();
    assert_eq!(read, [b"elsewhere".as_slice(), b"third"]);
}

/// The key that another device made for a person is used here as well, and none is made beside it.
#[test]
fn a_person_met_elsewhere_is_written_about_under_the_same_key() {
    let (storage, keys, mut one, _) = vault(2);
    let device = keys.device();
    let opened = opened(&storage, keys, None);
    let key = one.meet();
    one.write(Under::Person(&key), b"there");
    bring(&storage, &one.log);
    caught_up(&opened.ledger);
    block_on(opened.ledger.write(b"here", Some(ONE), &[])).unwrap();
    let own = block_on(storage.page(device, 1, 9)).unwrap();
    assert_eq!(
        own.len(),
        2,
        "the introduction and the entry, no key between"
    );
    let last = Frame::parse(own[1].bytes.clone()).unwrap();
    assert_eq!(last.header().key, key.id());
    assert!(
        caught_up(&opened.ledger).entries.is_empty(),
        "nothing of one's own"
    );
}

/// An entry can come before the log that has its person's key: it waits, is said once, and is read when that comes.
#[test]
fn an_entry_waits_for_its_key() {
    let (storage, keys, mut one, mut two) = vault(3);
    let opened = opened(&storage, keys, None);
    let key = one.meet();
    two.write(Under::Person(&key), b"early");
    bring(&storage, &two.log);
    let found = caught_up(&opened.ledger);
    let faults: Vec<_> = found.damage.iter().map(|damage| damage.fault).collect();
    assert_eq!((found.entries.len(), faults), (0, vec![Fault::NoKey]));
    two.write(Under::Epoch, b"next");
    bring(&storage, &two.log);
    let found = caught_up(&opened.ledger);
    assert_eq!(payloads(&found), [b"next".as_slice()]);
    assert!(found.damage.is_empty(), "said once");
    bring(&storage, &one.log);
    let found = caught_up(&opened.ledger);
    assert_eq!(payloads(&found), [b"early".as_slice()]);
}

/// Whatever was reported and whatever was read: piece by piece, the same as all at once on opening.
#[test]
fn piece_by_piece_is_the_same_as_at_once() {
    let (storage, keys, mut one, mut two) = vault(4);
    let opened_at_first = opened(&storage, keys, None);
    let key = one.meet();
    for number in 0..20_u8 {
        one.write(
            if number % 3 == 0 {
                Under::Epoch
            } else {
                Under::Person(&key)
            },
            &[number],
        );
        two.write(
            if number % 2 == 0 {
                Under::Epoch
            } else {
                Under::Person(&key)
            },
            &[100 + number],
        );
    }
    let mut pieces = BTreeMap::new();
    for end in 1..=one.log.len().max(two.log.len()) {
        // The second log runs ahead of the first, which has the key.
        bring(&storage, &two.log[..end.min(two.log.len())]);
        bring(&storage, &one.log[..end.div_ceil(2)]);
        let found = caught_up(&opened_at_first.ledger);
        pieces.extend(
            found
                .entries
                .into_iter()
                .map(|read| ((read.device, read.sequence), read)),
        );
    }
    bring(&storage, &one.log);
    let found = caught_up(&opened_at_first.ledger);
    pieces.extend(
        found
            .entries
            .into_iter()
            .map(|read| ((read.device, read.sequence), read)),
    );
    let [own, _, _]: [Device; 3] = devices(4, 3).try_into().ok().unwrap();
    let at_once = opened(&storage, own.keys, None);
    assert_eq!(at_once.entries.len(), 40);
    assert_eq!(pieces.into_values().collect::<Vec<_>>(), at_once.entries);
}

#[test]
fn damage_in_what_comes_costs_nothing_but_itself() {
    let (storage, keys, mut one, _) = vault(5);
    for number in 0..3_u8 {
        one.write(Under::Epoch, &[number]);
    }
    let opened = opened(&storage, keys, None);
    bring(&storage, &one.log);
    let mut bytes = one.log[2].bytes().to_vec();
    bytes[130] ^= 1;
    storage.damage(one.keys.device(), 3, Some(bytes));
    let found = caught_up(&opened.ledger);
    assert_eq!(payloads(&found), [[0].as_slice(), &[2]]);
    assert_eq!(found.damage.len(), 1);
    assert_eq!(
        found.damage[0].to_string(),
        "entry 3 from “one” can't be read: it was altered after it was written"
    );
    assert!(caught_up(&opened.ledger).damage.is_empty(), "said once");
}

/// Every effect of opening and catching up fails once; what was not told then, is told the next time.
#[test]
fn a_storage_that_fails_loses_nothing_of_what_is_to_be_read() {
    for failing in 0.. {
        let (storage, keys, mut one, _) = vault(6);
        let faulty = Faulty::new(storage.clone(), Some((failing, Failure::Before)));
        let Ok(opened) = block_on(Ledger::open(&faulty, keys)) else {
            continue;
        };
        one.write(Under::Epoch, b"kept");
        bring(&storage, &one.log);
        let first = block_on(opened.ledger.catch_up());
        let failed = first.is_err();
        let found = first.or_else(|_| block_on(opened.ledger.catch_up()));
        let read = found.unwrap().entries.into_iter();
        let read: Vec<_> = read.map(|read| read.payload).collect();
        assert_eq!(read, [b"kept".to_vec()], "effect {failing}");
        if !failed {
            assert!(failing > 2, "nothing failed");
            return;
        }
    }
}

#[test]
fn who_is_not_on_the_roll_is_held_back_and_released_once_on_it() {
    let (storage, keys, mut one, mut two) = vault(7);
    let mut roll = roll(&keys, &[(&one.keys, Role::Clinician)]);
    let key = two.meet();
    two.write(Under::Person(&key), b"a day's work");
    one.write(Under::Epoch, b"counts");
    bring(&storage, &one.log);
    bring(&storage, &two.log);
    let [founder, _, _]: [Device; 3] = devices(7, 3).try_into().ok().unwrap();
    let opened = opened(&storage, keys, Some(roll.clone()));
    assert_eq!(opened.entries.len(), 1);
    assert!(opened.damage.is_empty());
    let [held] = opened.held.as_slice() else {
        panic!("{:?}", opened.held);
    };
    assert_eq!(
        (held.read.payload.as_slice(), held.why),
        (b"a day's work".as_slice(), HeldFor::NotAllowed)
    );
    assert_eq!(
        held.to_string(),
        "entry 3 from “two” is held back: the tablet is not one of those that may write in this vault"
    );
    // Nothing is written under a stranger's key.
    block_on(opened.ledger.write(b"own", Some(ONE), &[])).unwrap();
    let own = block_on(storage.page(founder.keys.device(), 1, 9)).unwrap();
    assert_eq!(
        own.len(),
        3,
        "the introduction, a key of this device's own, the entry"
    );

    state(
        &mut roll,
        &founder.keys,
        &two.keys,
        Change::Admit(Role::Clinician),
    );
    let released = block_on(opened.ledger.go_by(roll.clone()));
    assert_eq!(payloads(&released), [b"a day's work".as_slice()]);
    assert!(released.held.is_empty());
    assert!(
        block_on(opened.ledger.go_by(roll)).entries.is_empty(),
        "once"
    );
}

#[test]
fn what_a_removed_tablet_wrote_afterwards_is_held_back_whenever_it_comes() {
    let (storage, keys, mut one, _) = vault(8);
    let mut roll = roll(&keys, &[(&one.keys, Role::Clinician)]);
    one.write(Under::Epoch, b"before");
    state(&mut roll, &keys, &one.keys, Change::Remove { last: 2 });
    one.write(Under::Epoch, b"after");
    let opened = opened(&storage, keys, Some(roll));
    bring(&storage, &one.log);
    let found = caught_up(&opened.ledger);
    assert_eq!(payloads(&found), [b"before".as_slice()]);
    assert_eq!(found.held.len(), 1);
    assert_eq!(
        (found.held[0].why, found.held[0].read.sequence),
        (HeldFor::Removed, 3)
    );
    assert_eq!(
        block_on(storage.page(one.keys.device(), 1, 9))
            .unwrap()
            .len(),
        3,
        "all of it is kept"
    );
}

#[test]
fn a_viewer_may_say_who_it_is_and_nothing_else() {
    let (storage, keys, mut one, _) = vault(9);
    let roll = roll(&keys, &[(&one.keys, Role::Viewer)]);
    one.write(Under::Epoch, b"written by a viewer");
    bring(&storage, &one.log);
    let opened = opened(&storage, keys, Some(roll));
    assert!(opened.entries.is_empty() && opened.damage.is_empty());
    assert_eq!(opened.held[0].why, HeldFor::NotAllowed);
}

/// A device that finds itself off the roll still shows its user what it wrote.
#[test]
fn ones_own_entries_are_never_held_back() {
    let (storage, keys, one, _) = vault(10);
    let [own, _, _]: [Device; 3] = devices(10, 3).try_into().ok().unwrap();
    let first = opened(&storage, keys, None);
    block_on(first.ledger.write(b"own", None, &[])).unwrap();
    let mut roll = roll(&one.keys, &[(&own.keys, Role::Clinician)]);
    state(&mut roll, &one.keys, &own.keys, Change::Remove { last: 1 });
    let again = opened(&storage, own.keys, Some(roll));
    assert_eq!((again.entries.len(), again.held.len()), (1, 0));
}
