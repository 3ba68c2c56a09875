//! Devices come and go, and keys change with them: who stays reads everything, who went reads nothing that came after,
//! and two leads at once settle on one key.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod any_order;
mod clinic;
#[path = "../common/mod.rs"]
mod common;

use clinic::{Clinic, PARAMS, logs, slot_key, texts};
use common::{ONE, append};
use futures::executor::block_on;
use std::collections::BTreeSet;
use sync::{Fault, HeldFor, KeysDue, LeadError, Ledger, Storage};
use vault::sample::devices;
use vault::{Frame, Role, SlotKey, recover};

/// A tablet reads so many entries, and nothing is wrong with any.
fn reads_all(clinic: &Clinic, at: usize, entries: usize) {
    let opened = clinic.reopened(at);
    assert_eq!(opened.entries.len(), entries);
    assert!(opened.damage.is_empty(), "{:?}", opened.damage);
}

#[test]
fn who_stays_reads_on_and_who_went_does_not() {
    let mut clinic = Clinic::new();
    clinic.write(2, b"before");
    clinic.bring_all();
    assert_eq!(
        block_on(clinic.tablets[0].ledger.keys_due()),
        KeysDue::Nothing
    );
    assert!(clinic.remove(0, 2));
    assert_eq!(
        block_on(clinic.tablets[0].ledger.keys_due()),
        KeysDue::Renew
    );
    block_on(clinic.tablets[0].ledger.renew_keys())
        .unwrap()
        .unwrap();
    assert_eq!(
        block_on(clinic.tablets[0].ledger.keys_due()),
        KeysDue::Nothing
    );
    block_on(clinic.tablets[0].ledger.write(b"after", None, &[])).unwrap();
    // A day's work of the removed device, which doesn't know.
    clinic.write(2, b"a day's work");
    clinic.bring_all();
    block_on(clinic.tablets[1].ledger.write(b"after that", None, &[])).unwrap();
    clinic.bring_all();
    for at in [0, 1] {
        let opened = clinic.reopened(at);
        let expected = ["before", "after", "after that"].map(|text| text.as_bytes().to_vec());
        assert_eq!(texts(&opened), BTreeSet::from(expected));
        assert!(opened.damage.is_empty() && opened.refusal.is_none());
        assert_eq!(opened.held.len(), 1);
        assert_eq!(opened.held[0].why, HeldFor::Removed);
        assert_eq!(opened.held[0].read.payload, b"a day's work");
    }
    // The removed device has all frames and reads none of the new ones.
    let gone = block_on(Ledger::open(
        clinic.tablets[2].storage.clone(),
        clinic.keys(2),
    ))
    .unwrap();
    assert!(!texts(&gone).contains(b"after".as_slice()));
    assert!(!texts(&gone).contains(b"after that".as_slice()));
    assert_eq!(gone.damage.len(), 2);
}

#[test]
fn two_leads_at_once_settle_on_one_key_whatever_comes_first() {
    let mut clinic = Clinic::new();
    clinic.bring_all();
    assert!(clinic.remove(0, 2));
    for at in [0, 1] {
        block_on(clinic.tablets[at].ledger.renew_keys())
            .unwrap()
            .unwrap();
    }
    clinic.write(0, b"under one");
    clinic.write(1, b"under the other");
    clinic.bring(1, 0);
    clinic.bring(0, 1);
    clinic.write(0, b"under the same");
    clinic.write(1, b"under the same too");
    clinic.bring_all();
    let last = |at: usize| {
        let log = logs(&clinic.tablets[at].storage);
        let own = log.iter().find(|(device, _)| *device == clinic.device(at));
        own.unwrap().1.last().unwrap().header().epoch
    };
    assert_eq!((last(0), last(1)), (2, 2));
    let current = [0, 1].map(|at| clinic.open_keys(at).epoch_now());
    assert_eq!(current[0], current[1]);
    for at in [0, 1] {
        reads_all(&clinic, at, 4);
    }
}

/// Enrolled by one lead while another begins an epoch: the newcomer lacks it, and gets it from any lead.
#[test]
fn a_device_that_came_while_the_key_changed_is_handed_it() {
    let mut clinic = Clinic::new();
    clinic.bring_all();
    assert!(clinic.remove(1, 2));
    block_on(clinic.tablets[1].ledger.renew_keys())
        .unwrap()
        .unwrap();
    clinic.enrol(0, Role::Clinician);
    clinic.write(1, b"under the new key");
    clinic.bring_all();
    assert!(clinic.reopened(3).entries.is_empty());
    assert_eq!(
        block_on(clinic.tablets[1].ledger.keys_due()),
        KeysDue::HandOn(1)
    );
    block_on(clinic.tablets[1].ledger.renew_keys())
        .unwrap()
        .unwrap();
    clinic.bring_all();
    assert_eq!(
        block_on(clinic.tablets[1].ledger.keys_due()),
        KeysDue::Nothing
    );
    let opened = clinic.reopened(3);
    assert_eq!(
        texts(&opened),
        BTreeSet::from([b"under the new key".to_vec()])
    );
    assert!(opened.damage.is_empty());
    clinic.write(3, b"and writes under it");
    clinic.bring_all();
    assert_eq!(clinic.reopened(0).entries.len(), 2);
    // One that comes in later introduces itself under the new key, and is read by all, whatever order the logs stand in.
    for _ in 0..4 {
        clinic.enrol(1, Role::Clinician);
    }
    clinic.bring_all();
    for at in [0, 1, 3, 4, 5, 6, 7] {
        let storage = clinic.tablets[at].storage.clone();
        let opened = block_on(Ledger::open(storage, clinic.keys(at))).unwrap();
        assert!(opened.damage.is_empty(), "{at}: {:?}", opened.damage);
    }
}

#[test]
fn only_a_lead_changes_keys_and_a_clinicians_attempt_is_held_back() {
    let mut clinic = Clinic::new();
    clinic.enrol(0, Role::Clinician);
    clinic.bring_all();
    clinic.remove(0, 2);
    assert_eq!(
        block_on(clinic.tablets[3].ledger.renew_keys()),
        Err(LeadError::NotALead)
    );
    assert_eq!(
        block_on(clinic.tablets[3].ledger.erase(ONE, 1)),
        Err(LeadError::NotALead)
    );
    // One that makes a frame of it all the same is not followed.
    let keys = clinic.keys(3);
    let own = logs(&clinic.tablets[3].storage);
    let log = &own
        .iter()
        .find(|(device, _)| *device == keys.device())
        .unwrap()
        .1;
    let proven = keys.prove(&log[0], log.last().unwrap()).unwrap();
    let epoch = keys.make_epoch(99).unwrap();
    let (frame, _) = keys.seal_epoch(&proven, &epoch, &[]).unwrap();
    append(&clinic.tablets[3].storage, &[frame], Some(proven.head()));
    clinic.bring(3, 0);
    clinic.write(0, b"x");
    let head = block_on(clinic.tablets[0].storage.head(clinic.device(0)))
        .unwrap()
        .unwrap();
    let kept = common::kept(&clinic.tablets[0].storage, clinic.device(0), head.sequence);
    assert_eq!(Frame::parse(kept).unwrap().header().epoch, 1);
}

/// Everything is lost but the sheet and a copy of the frames, after an epoch that the sheet's maker did not begin.
#[test]
fn the_recovery_code_alone_opens_all_history() {
    let mut clinic = Clinic::new();
    clinic.bring_all();
    // The sheet is made on the first tablet: a lead seals the keys to it.
    let (file, code) = clinic.tablets[0]
        .file
        .add_recovery(vault::Opener::Passphrase(&slot_key()))
        .unwrap();
    clinic.tablets[0].file = file;
    clinic.write(0, b"before");
    clinic.tablets[0].ledger = clinic.reopened(0).ledger;
    assert_eq!(
        block_on(clinic.tablets[0].ledger.keys_due()),
        KeysDue::HandOn(1)
    );
    block_on(clinic.tablets[0].ledger.renew_keys())
        .unwrap()
        .unwrap();
    assert_eq!(
        block_on(clinic.tablets[0].ledger.keys_due()),
        KeysDue::Nothing
    );
    clinic.bring_all();
    assert!(clinic.remove(1, 2));
    block_on(clinic.tablets[1].ledger.renew_keys())
        .unwrap()
        .unwrap();
    clinic.write(1, b"after");
    clinic.bring_all();
    let vault = clinic.tablets[0].file.vault();
    let frames: Vec<Frame> = logs(&clinic.tablets[1].storage)
        .into_iter()
        .flat_map(|(_, log)| log)
        .collect();
    let typed: String = code
        .groups()
        .iter()
        .map(|group| group.to_lowercase())
        .collect();
    let recovered = recover(&typed.parse().unwrap(), vault, &frames).unwrap();
    let (file, keys) = recovered.keep(&slot_key(), PARAMS, "found again").unwrap();
    let storage = clinic.tablets[1].storage.clone();
    block_on(storage.put_key_file(&file.to_bytes())).unwrap();
    let opened = block_on(Ledger::open(storage, keys)).unwrap();
    assert_eq!(
        texts(&opened),
        BTreeSet::from([b"before".to_vec(), b"after".to_vec()])
    );
    // The sheet also opens the tablet that made it, and sets a new passphrase there.
    let by_code = clinic.tablets[0]
        .file
        .unlock_by(vault::Opener::Recovery(&code));
    assert_eq!(by_code.unwrap().device(), clinic.device(0));
    let new = SlotKey::from_bytes([9; 32]);
    let changed =
        clinic.tablets[0]
            .file
            .set_passphrase(vault::Opener::Recovery(&code), &new, PARAMS);
    assert!(changed.unwrap().unlock(&new).is_ok());
    // Another sheet opens nothing.
    let (_, other) = file
        .add_recovery(vault::Opener::Passphrase(&slot_key()))
        .unwrap();
    assert_eq!(
        recover(&other, vault, &frames).err(),
        Some(vault::RecoverError::OtherCode)
    );
}

/// What carries a key on may stand in a log that is read before the one with the key that opens it. Which of the two keys
/// gives way, and whose log comes first, is chance.
#[test]
fn a_key_that_is_carried_in_a_log_read_earlier_is_learnt() {
    for _ in 0..24 {
        let mut clinic = Clinic::new();
        assert!(clinic.remove(1, 2));
        let renew = |clinic: &Clinic, at: usize| {
            block_on(clinic.tablets[at].ledger.renew_keys()).unwrap();
        };
        renew(&clinic, 0);
        clinic.bring(0, 1);
        renew(&clinic, 1);
        clinic.write(0, b"under a key that may give way");
        for _ in 0..2 {
            clinic.bring_all();
            for at in [0, 1] {
                renew(&clinic, at);
            }
        }
        clinic.bring_all();
        for at in [0, 1] {
            reads_all(&clinic, at, 1);
        }
    }
}

/// A lead that was removed may have counted further than the one that removed it: its key is not written under any more.
#[test]
fn the_key_of_whoever_removed_a_lead_is_written_under_whatever_its_number() {
    let mut clinic = Clinic::new();
    clinic.enrol(0, Role::Clinician);
    clinic.bring_all();
    let renew = |clinic: &Clinic, at: usize| {
        block_on(clinic.tablets[at].ledger.renew_keys())
            .unwrap()
            .unwrap();
    };
    // The second lead begins two epochs that the first hears nothing of, and hands the newer one to whom it brings in.
    for gone in [2, 3] {
        assert!(clinic.remove(1, gone));
        renew(&clinic, 1);
    }
    clinic.enrol(1, Role::Clinician);
    assert!(clinic.remove(0, 1));
    renew(&clinic, 0);
    clinic.bring_all();
    renew(&clinic, 0);
    clinic.bring_all();
    let current = [0, 4].map(|at| clinic.open_keys(at).epoch_now());
    assert_eq!(current[0], current[1]);
    assert_ne!(current[0], clinic.open_keys(1).epoch_now());
}

/// A lead that has met nobody yet begins an epoch, which is sealed to itself alone, and is removed before it hands it on.
#[test]
fn what_a_removed_lead_wrote_under_its_own_key_is_told_as_without_a_key() {
    let mut clinic = Clinic::new();
    assert!(clinic.remove(0, 2));
    block_on(clinic.tablets[0].ledger.renew_keys())
        .unwrap()
        .unwrap();
    clinic.write(0, b"under a key of its own");
    assert!(clinic.remove(1, 0));
    clinic.bring_all();
    block_on(clinic.tablets[1].ledger.renew_keys())
        .unwrap()
        .unwrap();
    clinic.write(1, b"under the next");
    let stays = clinic.reopened(1);
    assert_eq!(texts(&stays), BTreeSet::from([b"under the next".to_vec()]));
    let first = clinic.device(0);
    assert!(!stays.damage.is_empty());
    for damage in &stays.damage {
        assert_eq!((damage.device, &damage.fault), (first, &Fault::NoKey));
    }
    // Whoever wrote it reads it on.
    assert!(texts(&clinic.reopened(0)).contains(b"under a key of its own".as_slice()));
}

#[test]
fn devices_of_another_vault_learn_nothing() {
    let clinic = Clinic::new();
    let keys = clinic.keys(0);
    let (first, proven) = keys.begin("one").unwrap();
    let epoch = keys.make_epoch(3).unwrap();
    let other = devices(7, 1).remove(0).keys;
    let (frame, _) = keys
        .seal_epoch(&proven, &epoch, &[other.exchange_public()])
        .unwrap();
    assert_eq!(
        other.learn_epoch(&frame, true),
        Err(vault::OpenError::OtherVault)
    );
    assert_eq!(
        keys.learn_epoch(&first, true),
        Err(vault::OpenError::OtherPurpose)
    );
    // Not sealed to oneself: nothing is learnt, and nothing is wrong.
    let notice = clinic.keys(1).learn_epoch(&frame, true).unwrap();
    assert!(!notice.ours);
}
