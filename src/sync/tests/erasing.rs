//! A person is erased: the key and everything under it go from every device, the chains still verify, and nothing else is lost.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::faulty::{Failure, Faulty};
use common::{ONE, OTHER, append, founded, reopened};
use futures::executor::block_on;
use sync::{Fault, LeadError, Ledger, MemoryStorage, Opened, Storage};
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Keys, Role, Roll};

/// When, in milliseconds since 1970.
const WHEN: u64 = 1_772_600_000_000;

fn log(storage: &MemoryStorage, device: vault::DeviceId) -> Vec<Frame> {
    let page = block_on(storage.page(device, 1, 1_000)).unwrap();
    page.into_iter()
        .map(|kept| Frame::parse(kept.bytes).unwrap())
        .collect()
}

fn contents(opened: &Opened<MemoryStorage>) -> Vec<&[u8]> {
    let entries = opened.entries.iter();
    entries.map(|entry| entry.payload.as_slice()).collect()
}

/// Every frame's signature and its link to the one before.
fn assert_chained(storage: &MemoryStorage, keys: &Keys) {
    let frames = log(storage, keys.device());
    for frame in &frames {
        frame.verify(&keys.public()).unwrap();
    }
    for pair in frames.windows(2) {
        assert_eq!(pair[1].header().previous, pair[0].hash());
    }
}

#[test]
fn who_was_erased_is_gone_and_everybody_else_is_there() {
    let (storage, file, ledger) = founded();
    for (payload, subject) in [("one", ONE), ("other", OTHER), ("one again", ONE)] {
        block_on(ledger.write(payload.as_bytes(), Some(subject), &[])).unwrap();
    }
    let opened = reopened(&storage, &file);
    block_on(storage.put_checkpoint(&[vec![9; 60]])).unwrap();
    let erased = block_on(opened.ledger.erase(ONE, WHEN)).unwrap();
    assert_eq!(
        (erased.subject, erased.at, erased.by),
        (ONE, WHEN, file.device())
    );
    assert!(
        block_on(storage.checkpoint()).unwrap().is_empty(),
        "a checkpoint may hold what was erased"
    );
    // Introduction, key, one, key, other, one again, erasure: three of them are empty now.
    let frames = log(&storage, file.device());
    let emptied: Vec<bool> = frames.iter().map(Frame::is_emptied).collect();
    assert_eq!(emptied, [false, true, true, false, false, true, false]);
    let keys = file.unlock(&common::slot_key()).unwrap();
    assert_chained(&storage, &keys);
    let again = reopened(&storage, &file);
    assert_eq!(contents(&again), [b"other"]);
    assert!(again.damage.is_empty() && again.refusal.is_none());
    assert_eq!(again.erased, [erased]);
    let said = again.erased[0].to_string();
    assert!(said.starts_with("one person\u{2019}s records were erased by tablet "));
    // Somebody who comes again gets another key, and is read.
    block_on(again.ledger.write(b"back again", Some(ONE), &[])).unwrap();
    assert_eq!(
        contents(&reopened(&storage, &file)),
        [b"other".as_slice(), b"back again"]
    );
    assert_eq!(
        block_on(
            again
                .ledger
                .erase(vault::Subject::from_bytes([9; 16]), WHEN)
        ),
        Err(LeadError::Nobody)
    );
}

/// Two devices, of which the first is the lead.
fn pair(seed: u64) -> (MemoryStorage, MemoryStorage, [Keys; 2], Roll) {
    let [one, two]: [Device; 2] = devices(seed, 2).try_into().ok().unwrap();
    let mut roll = Roll::new(one.keys.vault());
    for (keys, role) in [(&one.keys, Role::Lead), (&two.keys, Role::Clinician)] {
        let change = Change::Admit(role);
        roll.add(&one.keys.state(&roll, keys.public(), change).unwrap())
            .unwrap();
    }
    let (here, there) = (MemoryStorage::new(), MemoryStorage::new());
    append(&here, &[one.keys.begin("one").unwrap().0], None);
    append(&there, &[two.keys.begin("two").unwrap().0], None);
    (here, there, [one.keys, two.keys], roll)
}

fn keys(seed: u64, at: usize) -> Keys {
    devices(seed, 2).remove(at).keys
}

fn open(storage: &MemoryStorage, keys: Keys, roll: &Roll) -> Opened<MemoryStorage> {
    block_on(Ledger::open_by(storage.clone(), keys, Some(roll.clone()))).unwrap()
}

fn bring(from: &MemoryStorage, to: &MemoryStorage) {
    for (device, _) in block_on(from.vector()).unwrap() {
        let frames = log(from, device);
        let head = block_on(to.head(device)).unwrap();
        let here = head.map_or(0, |head| head.sequence as usize);
        if frames.len() > here {
            append(to, &frames[here..], head);
        }
    }
}

#[test]
fn it_goes_from_every_device_that_hears_of_it() {
    let (here, there, [one, two], roll) = pair(1);
    let (lead, other) = (
        open(&here, one, &roll).ledger,
        open(&there, two, &roll).ledger,
    );
    block_on(lead.write(b"found here", Some(ONE), &[])).unwrap();
    bring(&here, &there);
    block_on(other.catch_up()).unwrap();
    block_on(other.write(b"found there", Some(ONE), &[])).unwrap();
    block_on(other.write(b"somebody else", Some(OTHER), &[])).unwrap();
    bring(&there, &here);
    block_on(lead.catch_up()).unwrap();
    block_on(lead.erase(ONE, WHEN)).unwrap();
    // Written meanwhile, of a person of whom the lead has erased everything.
    block_on(other.write(b"too late", Some(ONE), &[])).unwrap();
    bring(&here, &there);
    let found = block_on(other.catch_up()).unwrap();
    assert_eq!(found.erased.len(), 1);
    assert!(found.damage.is_empty(), "{:?}", found.damage);
    bring(&there, &here);
    assert!(block_on(lead.catch_up()).unwrap().damage.is_empty());
    for (storage, at) in [(&here, 0), (&there, 1)] {
        let opened = open(storage, keys(1, at), &roll);
        assert_eq!(contents(&opened), [b"somebody else"]);
        assert!(opened.damage.is_empty() && opened.refusal.is_none());
        for at in [0, 1] {
            assert_chained(storage, &keys(1, at));
            for frame in log(storage, keys(1, at).device()) {
                let bytes = frame.bytes();
                assert!(frame.is_emptied() == (bytes.len() == 196));
            }
        }
    }
    let emptied = |storage: &MemoryStorage| {
        let frames = [0, 1].map(|at| log(storage, keys(1, at).device())).concat();
        frames.iter().filter(|frame| frame.is_emptied()).count()
    };
    // The key, and an entry each; and what was written too late.
    assert_eq!((emptied(&here), emptied(&there)), (4, 4));
}

#[test]
fn a_device_that_ends_with_an_erased_entry_writes_on() {
    let (here, there, [one, two], roll) = pair(2);
    let lead = open(&here, one, &roll).ledger;
    block_on(lead.write(b"here", Some(ONE), &[])).unwrap();
    bring(&here, &there);
    let other = open(&there, two, &roll).ledger;
    block_on(other.write(b"there", Some(ONE), &[])).unwrap();
    block_on(lead.erase(ONE, WHEN)).unwrap();
    bring(&here, &there);
    block_on(other.catch_up()).unwrap();
    let opened = open(&there, keys(2, 1), &roll);
    assert_eq!(opened.refusal, None);
    block_on(opened.ledger.write(b"goes on", None, &[])).unwrap();
    assert_eq!(contents(&open(&there, keys(2, 1), &roll)), [b"goes on"]);
}

#[test]
fn what_is_empty_without_a_leads_word_is_damage() {
    let (here, there, [one, two], roll) = pair(3);
    let lead = open(&here, one, &roll).ledger;
    block_on(lead.write(b"here", Some(ONE), &[])).unwrap();
    let frames = log(&here, lead.device());
    block_on(here.empty(&[frames[2].emptied()])).unwrap();
    let opened = open(&here, keys(3, 0), &roll);
    assert_eq!(opened.damage.len(), 1);
    assert_eq!(opened.damage[0].fault, Fault::Emptied);
    assert_eq!(
        opened.damage[0].to_string(),
        "entry 3 from “one” can't be read: its content was dropped, and no lead has erased it"
    );
    // A clinician's word doesn't count: what it names is still read, and it is held back.
    bring(&here, &there);
    let other = open(&there, two, &roll).ledger;
    assert_eq!(block_on(other.erase(ONE, WHEN)), Err(LeadError::NotALead));
}

/// The storage fails or the device dies anywhere on the way: afterwards either nothing was erased, or all of it is.
#[test]
fn an_erasure_that_breaks_off_is_taken_up() {
    for failing in 0.. {
        let (storage, file, ledger) = founded();
        block_on(ledger.write(b"one", Some(ONE), &[])).unwrap();
        block_on(ledger.write(b"other", Some(OTHER), &[])).unwrap();
        let keys = || file.unlock(&common::slot_key()).unwrap();
        let faulty = Faulty::new(storage.clone(), Some((failing, Failure::Before)));
        let Ok(opened) = block_on(Ledger::open(&faulty, keys())) else {
            continue;
        };
        let done = block_on(opened.ledger.erase(ONE, WHEN)).is_ok();
        let again = reopened(&storage, &file);
        let stays: Vec<&[u8]> = if again.erased.is_empty() {
            vec![b"one", b"other"]
        } else {
            vec![b"other"]
        };
        assert_eq!(contents(&again), stays, "effect {failing}");
        assert!(again.damage.is_empty());
        let left = log(&storage, file.device());
        let emptied = left.iter().filter(|frame| frame.is_emptied()).count();
        assert_eq!(emptied, if again.erased.is_empty() { 0 } else { 2 });
        if done {
            assert!(failing > 3, "nothing failed");
            return;
        }
    }
}
