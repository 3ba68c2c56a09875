//! A carry file gone through frame by frame says what the same file says taken in whole.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{ONE, OTHER, append, founded, golden_vault, hex, slot_key};
use futures::executor::block_on;
use proptest::prelude::*;
use std::fs;
use std::io::Cursor;
use std::path::Path;
use sync::carry::{
    Apart, BySubject, CarryError, Through, Walk, WalkError, export, import, read_through,
};
use sync::exchange::Vector;
use sync::{Ledger, MemoryStorage, Read};
use vault::Keys;
use vault::sample::{Device, devices};

const WHEN: u64 = 1_772_600_000_000;

fn file(name: &str) -> Vec<u8> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("golden/carry");
    hex(&fs::read_to_string(folder.join(format!("{name}.hex"))).unwrap())
}

fn walk(bytes: &[u8]) -> Result<Walk<Cursor<&[u8]>>, WalkError> {
    Walk::begin(Cursor::new(bytes))
}

fn read(bytes: &[u8], keys: &Keys) -> Result<(Vec<Read>, Through), WalkError> {
    let mut entries = Vec::new();
    let through = read_through(&mut walk(bytes)?, keys, |entry| entries.push(entry))?;
    Ok((entries, through))
}

fn refused(bytes: &[u8], keys: &Keys) -> CarryError {
    match read(bytes, keys) {
        Err(WalkError::Carry(error)) => error,
        other => panic!("{other:?}"),
    }
}

/// What a ledger reads once the same file was taken in.
fn taken_in(bytes: &[u8], keys: Keys) -> Vec<Read> {
    let storage = MemoryStorage::new();
    block_on(import(&storage, &keys, bytes)).unwrap();
    let opened = block_on(Ledger::open(storage, keys)).unwrap();
    opened.entries
}

#[test]
fn it_reads_what_the_ledger_reads() {
    let (_, keys) = golden_vault();
    for name in ["good", "good-other"] {
        let (entries, through) = read(&file(name), &keys).unwrap();
        assert_eq!(entries, taken_in(&file(name), golden_vault().1), "{name}");
        assert_eq!(through.entries, entries.len() as u64);
    }
}

#[test]
fn more_than_a_page_of_two_tablets() {
    let mut pair: [Device; 2] = devices(3, 2).try_into().ok().unwrap();
    let storage = MemoryStorage::new();
    for device in &mut pair {
        append(&storage, &device.log(1_200), None);
    }
    let carried = block_on(export(&storage, &pair[0].keys, &Vector::new())).unwrap();
    let (entries, through) = read(&carried.bytes, &pair[0].keys).unwrap();
    assert_eq!((entries.len(), through.entries), (2_400, 2_400));
    assert!(through.damage.is_empty() && through.apart.is_empty());
    assert_eq!(through.names.len(), 2);
    let spans = walk(&carried.bytes).unwrap().check().unwrap();
    let ends: Vec<_> = spans
        .iter()
        .map(|log| (log.first, log.head.sequence))
        .collect();
    assert_eq!(ends, [(1, 1_201), (1, 1_201)]);
}

#[test]
fn a_log_without_its_beginning_is_left_out_and_said() {
    let mut pair: [Device; 2] = devices(3, 2).try_into().ok().unwrap();
    let log = pair[0].log(3);
    let device = pair[0].keys.device();
    let storage = MemoryStorage::new();
    append(&storage, &log, None);
    let beyond = [(device, log[1].head())].into_iter().collect();
    let later = block_on(export(&storage, &pair[0].keys, &beyond)).unwrap();
    let (entries, through) = read(&later.bytes, &pair[1].keys).unwrap();
    assert!(entries.is_empty());
    let gap = Apart::Gap {
        device,
        from: 1,
        through: 2,
    };
    assert_eq!(through.apart, [gap]);
}

#[test]
fn another_vaults_file_says_nothing() {
    let mut foreign = devices(1, 1).remove(0);
    let storage = MemoryStorage::new();
    append(&storage, &foreign.log(2), None);
    let carried = block_on(export(&storage, &foreign.keys, &Vector::new())).unwrap();
    let (_, keys) = golden_vault();
    assert_eq!(refused(&carried.bytes, &keys), CarryError::OtherVault);
}

#[test]
fn of_who_was_erased_nothing_is_said() {
    let (storage, file, ledger) = founded();
    for (payload, subject) in [("one", ONE), ("other", OTHER)] {
        block_on(ledger.write(payload.as_bytes(), Some(subject), &[])).unwrap();
    }
    let keys = file.unlock(&slot_key()).unwrap();
    block_on(ledger.erase(ONE, WHEN)).unwrap();
    let carried = block_on(export(&storage, &keys, &Vector::new())).unwrap();
    let (entries, through) = read(&carried.bytes, &keys).unwrap();
    let said: Vec<&[u8]> = entries.iter().map(|read| read.payload.as_slice()).collect();
    assert_eq!(said, [b"other"]);
    assert!(through.damage.is_empty(), "{:?}", through.damage);
}

/// Subject by subject come the entries that come in one go, those of each in their order; more of them than fit into a page, some
/// one after the other and some not.
#[test]
fn subject_by_subject_it_says_the_same() {
    let (storage, file, ledger) = founded();
    for at in 0..1_300_u32 {
        let about = [None, Some(ONE), Some(OTHER), Some(OTHER)][at as usize / 3 % 4];
        block_on(ledger.write(&at.to_be_bytes(), about, &[])).unwrap();
    }
    let unlock = || file.unlock(&slot_key()).unwrap();
    let by_subject = |bytes: &[u8]| {
        let input = Cursor::new(bytes.to_vec());
        let mut all = Vec::new();
        let walk = Walk::begin(input).unwrap();
        let (mut file, through) =
            BySubject::read_through(walk, unlock(), |read| all.push(read)).unwrap();
        assert_eq!(through.entries, all.len() as u64);
        for subject in file.subjects() {
            let (theirs, others): (Vec<_>, Vec<_>) =
                all.into_iter().partition(|read| read.subject == subject);
            let mut again = Vec::new();
            file.of(subject, |read| again.push(read)).unwrap();
            assert_eq!(again, theirs);
            all = others;
        }
        assert!(all.is_empty(), "{all:?}");
        file.subjects()
    };
    let carried = block_on(export(&storage, &unlock(), &Vector::new())).unwrap();
    assert_eq!(by_subject(&carried.bytes), [None, Some(ONE), Some(OTHER)]);

    block_on(ledger.erase(ONE, WHEN)).unwrap();
    let carried = block_on(export(&storage, &unlock(), &Vector::new())).unwrap();
    assert_eq!(by_subject(&carried.bytes), [None, Some(OTHER)]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    /// With the sum made right again, what is left is for the walk and the signatures to find.
    #[test]
    fn no_changed_byte_passes_the_check(at in any::<prop::sample::Index>(), flip in 1_u8..=255) {
        let mut bytes = file("good-other");
        let end = bytes.len() - 32;
        bytes[at.index(end)] ^= flip;
        let sum = vault::carry_sum(&bytes[..end]);
        bytes[end..].copy_from_slice(&sum);
        let checked = walk(&bytes).and_then(|mut walk| walk.check());
        prop_assert!(checked.is_err());
    }
}
