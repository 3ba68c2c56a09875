//! Writing and reading again.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{
    ONE, OTHER, append, founded, golden, golden_vault, kept, payloads, reopened, slot_key, vault,
};
use futures::executor::block_on;
use sync::contract::{Outcome, keeping, tablet};
use sync::{
    Ledger, LedgerError, MemoryStorage, Refusal, Storage, StorageError, WriteError, Writing,
};
use vault::{Frame, Purpose};

#[test]
fn memory_keeps_frames_as_every_place_does() {
    let fresh = async |_| Ok(keeping::OfTablet(MemoryStorage::new()));
    all_kept(&block_on(keeping::run(fresh)));
}

#[test]
fn memory_keeps_every_promise_of_a_tablets_storage() {
    all_kept(&block_on(tablet::run(async || Ok(MemoryStorage::new()))).unwrap());
}

fn all_kept(outcomes: &[Outcome]) {
    let broken = outcomes.iter().filter(|outcome| outcome.ended.is_err());
    assert_eq!(broken.collect::<Vec<_>>(), Vec::<&Outcome>::new());
    assert!(
        outcomes.len() >= keeping::FEWEST,
        "{} cases",
        outcomes.len()
    );
}

#[test]
fn what_is_written_is_read_after_a_restart() {
    let (storage, file, ledger) = founded();
    block_on(ledger.write(b"a place", None, &[])).unwrap();
    block_on(ledger.write(b"right eye", Some(ONE), &[])).unwrap();
    block_on(ledger.write(b"left eye", Some(ONE), &[])).unwrap();
    let opened = reopened(&storage, &file);
    assert_eq!(
        payloads(&opened),
        [b"a place".as_slice(), b"right eye", b"left eye"]
    );
    let subjects: Vec<_> = opened.entries.iter().map(|entry| entry.subject).collect();
    assert_eq!(subjects, [None, Some(ONE), Some(ONE)]);
    assert_eq!(
        (opened.damage.len(), opened.unread, opened.refusal),
        (0, 0, None)
    );
    // And on from there, with the same person key.
    block_on(opened.ledger.write(b"both eyes", Some(ONE), &[])).unwrap();
    assert_eq!(payloads(&reopened(&storage, &file)).len(), 4);
    assert_eq!(purposes(&storage, &file), "IEPEEE");
}

/// The purposes of this device's frames: introduction, person key, entry.
fn purposes(storage: &MemoryStorage, file: &vault::KeyFile) -> String {
    let frames = block_on(storage.page(file.device(), 1, 100)).unwrap();
    let purpose = |kept: sync::StoredFrame| Frame::parse(kept.bytes).unwrap().header().purpose;
    frames
        .into_iter()
        .map(|kept| match purpose(kept) {
            Purpose::Introduction => 'I',
            Purpose::PersonKey => 'P',
            Purpose::Entry => 'E',
            Purpose::Epoch => 'N',
            Purpose::Erasure => 'X',
            Purpose::Later(_) => '?',
        })
        .collect()
}

#[test]
fn a_persons_key_comes_once_and_before_the_first_entry_about_them() {
    let (storage, file, ledger) = founded();
    let writings = [ONE, OTHER, ONE].map(|subject| Writing {
        payload: b"x",
        subject: Some(subject),
    });
    let head = block_on(ledger.write_all(&writings, &[])).unwrap();
    assert_eq!(head.sequence, 6);
    assert_eq!(purposes(&storage, &file), "IPEPEE");
    let key_of = |sequence| {
        Frame::parse(kept(&storage, file.device(), sequence))
            .unwrap()
            .header()
            .key
    };
    assert_eq!(key_of(3), key_of(6));
    assert_ne!(key_of(3), key_of(5));
}

#[test]
fn writing_nothing_changes_nothing() {
    let (_, _, ledger) = founded();
    assert_eq!(block_on(ledger.write_all(&[], &[])).unwrap().sequence, 1);
}

#[test]
fn one_payload_too_long_writes_none_of_them() {
    let (storage, file, ledger) = founded();
    let long = vec![0; vault::frame::LONGEST_PAYLOAD + 1];
    let writings = [b"short".as_slice(), &long].map(|payload| Writing {
        payload,
        subject: Some(ONE),
    });
    assert!(matches!(
        block_on(ledger.write_all(&writings, &[])),
        Err(WriteError::Seal(_))
    ));
    assert_eq!(purposes(&storage, &file), "I");
    block_on(ledger.write(b"short", Some(ONE), &[])).unwrap();
    assert_eq!(purposes(&storage, &file), "IPE");
}

#[test]
fn a_draft_is_kept_and_goes_with_the_entry_that_it_became() {
    let (storage, file, ledger) = founded();
    block_on(ledger.put_draft(b"acuity", b"6/")).unwrap();
    block_on(ledger.put_draft(b"near", b"N")).unwrap();
    let opened = reopened(&storage, &file);
    assert_eq!(
        block_on(opened.ledger.draft(b"acuity")).unwrap().unwrap(),
        b"6/"
    );
    let name = opened.ledger.draft_name(b"acuity");
    block_on(opened.ledger.write(b"6/9", Some(ONE), &[name])).unwrap();
    assert_eq!(block_on(opened.ledger.draft(b"acuity")).unwrap(), None);
    assert_eq!(block_on(opened.ledger.drafts()).unwrap().plain, [b"N"]);
}

#[test]
fn a_damaged_draft_is_counted_and_the_others_are_read() {
    let (storage, _, ledger) = founded();
    block_on(ledger.put_draft(b"acuity", b"6/")).unwrap();
    block_on(storage.put_draft(vault::DraftName::from_bytes([3; 16]), b"nothing of ours")).unwrap();
    let drafts = block_on(ledger.drafts()).unwrap();
    assert_eq!((drafts.plain, drafts.unopened), (vec![b"6/".to_vec()], 1));
}

#[test]
fn no_vault_is_founded_over_another_nor_with_anothers_key_file() {
    let (storage, file, _) = founded();
    let (other_file, other_keys) = vault();
    let refused = block_on(Ledger::found(storage.clone(), &other_file, other_keys)).unwrap_err();
    assert_eq!(refused, LedgerError::Storage(StorageError::NotEmpty));
    let refused = block_on(Ledger::found(MemoryStorage::new(), &file, vault().1)).unwrap_err();
    assert_eq!(refused, LedgerError::OtherVault);
}

#[test]
fn keys_of_another_vault_open_nothing_and_write_nothing() {
    let (storage, _, _) = founded();
    let refused = block_on(Ledger::open(storage, vault().1)).unwrap_err();
    assert_eq!(refused, LedgerError::OtherVault);
}

#[test]
fn keys_without_their_log_write_nothing() {
    let (file, keys) = vault();
    let storage = MemoryStorage::new();
    block_on(storage.put_key_file(&file.to_bytes())).unwrap();
    let opened = block_on(Ledger::open(storage.clone(), keys)).unwrap();
    assert_eq!(opened.refusal, Some(Refusal::NoLog));
    let refused = block_on(opened.ledger.write(b"x", None, &[])).unwrap_err();
    assert_eq!(refused, WriteError::Refused(Refusal::NoLog));
    assert!(block_on(storage.vector()).unwrap().is_empty());
}

#[test]
fn two_open_ledgers_cannot_both_write() {
    let (storage, file, ledger) = founded();
    let other = reopened(&storage, &file).ledger;
    block_on(ledger.write(b"one", None, &[])).unwrap();
    let refused = block_on(other.write(b"two", None, &[])).unwrap_err();
    assert!(matches!(
        refused,
        WriteError::Storage(StorageError::Moved { .. })
    ));
    assert_eq!(payloads(&reopened(&storage, &file)), [b"one"]);
}

#[test]
fn writes_at_the_same_time_wait_for_one_another() {
    let (storage, file, ledger) = founded();
    let (one, two) = block_on(futures::future::join(
        ledger.write(b"one", Some(ONE), &[]),
        ledger.write(b"two", Some(ONE), &[]),
    ));
    assert_ne!(one.unwrap(), two.unwrap());
    assert_eq!(purposes(&storage, &file), "IPEE");
}

#[test]
fn a_changed_passphrase_opens_the_same_log() {
    let (storage, file, ledger) = founded();
    block_on(ledger.write(b"one", Some(ONE), &[])).unwrap();
    let new = vault::SlotKey::from_bytes([9; 32]);
    let changed = file
        .change_passphrase(&slot_key(), &new, file.passphrase_params())
        .unwrap();
    block_on(storage.put_key_file(&changed.to_bytes())).unwrap();
    let opened = block_on(Ledger::open(storage, changed.unlock(&new).unwrap())).unwrap();
    assert_eq!(payloads(&opened), [b"one"]);
    assert_eq!(opened.refusal, None);
}

/// From the frozen samples: another device's log, read with ours, whichever of the two comes first.
#[test]
fn another_devices_log_is_read_under_the_same_keys() {
    let (storage, keys) = golden_vault();
    append(
        &storage,
        &golden(&[
            "other-1-introduction",
            "other-2-person-entry",
            "other-3-later",
        ]),
        None,
    );
    let opened = block_on(Ledger::open(storage, keys)).unwrap();
    let mut read = payloads(&opened);
    read.sort_unstable();
    assert_eq!(
        read,
        [
            b"left eye, 6/12".as_slice(),
            &[b'n'; 300],
            b"right eye, 6/9"
        ]
    );
    assert_eq!(
        (opened.damage.len(), opened.unread, opened.refusal),
        (0, 1, None)
    );
    let subjects = opened
        .entries
        .iter()
        .filter(|entry| entry.subject == Some(vault::Subject::from_bytes([0xaa; 16])));
    assert_eq!(subjects.count(), 2);
}

/// Nobody can tell who wrote what follows a damaged introduction of another device; ours is not touched by it.
#[test]
fn another_devices_log_without_its_introduction_is_not_believed() {
    let (storage, keys) = golden_vault();
    let other = golden(&["other-1-introduction", "other-2-person-entry"]);
    append(&storage, &other, None);
    storage.damage(other[0].device(), 1, None);
    let opened = block_on(Ledger::open(storage, keys)).unwrap();
    assert_eq!(
        payloads(&opened),
        [b"right eye, 6/9".as_slice(), &[b'n'; 300]]
    );
    let said: Vec<String> = opened.damage.iter().map(ToString::to_string).collect();
    let tablet = &other[0].device().to_string()[..8];
    assert_eq!(
        said,
        [
            format!("entry 1 from tablet {tablet} is missing"),
            format!("entry 2 from tablet {tablet} can't be read: nothing here shows who wrote it"),
        ]
    );
    assert_eq!(opened.refusal, None);
}
