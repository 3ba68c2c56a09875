//! The carry file: written, taken in, and refused.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{append, golden, golden_vault, hex};
use futures::executor::block_on;
use proptest::prelude::*;
use std::fs;
use std::path::Path;
use sync::carry::{Apart, CarryError, CarryFile, Report, export, import};
use sync::exchange::Vector;
use sync::{Append, MemoryStorage, Storage, StorageError};
use vault::sample::{Device, devices};
use vault::{DeviceId, Frame, Head};

fn folder() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden/carry")
}

fn file(name: &str) -> Vec<u8> {
    hex(&fs::read_to_string(folder().join(format!("{name}.hex"))).unwrap())
}

/// What is kept of every log, to see that nothing was changed.
fn everything(storage: &MemoryStorage) -> Vec<(DeviceId, Head, Vec<Vec<u8>>)> {
    block_on(storage.vector())
        .unwrap()
        .into_iter()
        .map(|(device, head)| {
            let page = block_on(storage.page(device, 1, 100_000)).unwrap();
            (
                device,
                head,
                page.into_iter().map(|kept| kept.bytes).collect(),
            )
        })
        .collect()
}

fn both() -> Vec<Frame> {
    golden(&[
        "other-1-introduction",
        "other-2-person-entry",
        "other-3-later",
    ])
}

fn taken(tablets: usize, new: u64, known: u64) -> Report {
    Report {
        tablets,
        new,
        known,
        apart: vec![],
    }
}

#[test]
fn the_same_logs_are_written_byte_for_byte() {
    let (storage, keys) = golden_vault();
    append(&storage, &both(), None);
    let exported = block_on(export(&storage, &keys, &Vector::new())).unwrap();
    assert_eq!(exported.bytes, file("good"));
    assert_eq!((exported.frames, exported.left_out), (7, vec![]));
    let own = keys.device();
    let theirs = [(own, block_on(storage.head(own)).unwrap().unwrap())]
        .into_iter()
        .collect();
    assert_eq!(
        block_on(export(&storage, &keys, &theirs)).unwrap().bytes,
        file("good-other")
    );
    let mut theirs: Vector = theirs;
    theirs.set(both()[0].device(), Some(both()[0].head()));
    assert_eq!(
        block_on(export(&storage, &keys, &theirs)).unwrap().bytes,
        file("good-later")
    );
}

#[test]
fn a_frozen_file_is_taken_in_and_the_second_time_does_nothing() {
    let (storage, keys) = golden_vault();
    assert_eq!(
        block_on(import(&storage, &keys, &file("good"))),
        Ok(taken(2, 3, 4))
    );
    let after = everything(&storage);
    assert_eq!(
        block_on(import(&storage, &keys, &file("good"))),
        Ok(taken(2, 0, 7))
    );
    assert_eq!(
        block_on(import(&storage, &keys, &file("good-later"))),
        Ok(taken(1, 0, 2))
    );
    assert_eq!(everything(&storage), after);
    let bytes: Vec<Vec<u8>> = both().iter().map(|frame| frame.bytes().to_vec()).collect();
    assert_eq!(
        after
            .iter()
            .find(|(device, ..)| *device == both()[0].device())
            .unwrap()
            .2,
        bytes
    );
    assert_eq!(
        taken(2, 0, 7).to_string(),
        "nothing in this carry file is new: its 7 entries of 2 tablets are here already"
    );
    assert_eq!(
        taken(2, 3, 4).to_string(),
        "7 entries of 2 tablets, 3 were new"
    );
}

#[test]
fn a_roll_goes_along_and_is_written_byte_for_byte() {
    let (storage, keys) = golden_vault();
    let read = CarryFile::parse(&file("good-roll")).unwrap();
    let roll: Vec<Vec<u8>> = read
        .roll
        .iter()
        .map(|statement| statement.bytes().to_vec())
        .collect();
    assert_eq!(roll.len(), 2);
    assert_eq!(read.logs, CarryFile::parse(&file("good")).unwrap().logs);
    assert!(vault::Roll::read(keys.vault(), &read.roll).is_ok());
    assert_eq!(
        block_on(import(&storage, &keys, &file("good-roll"))),
        Ok(taken(2, 3, 4))
    );
    block_on(storage.put_roll(&roll)).unwrap();
    let exported = block_on(export(&storage, &keys, &Vector::new())).unwrap();
    assert_eq!(exported.bytes, file("good-roll"));
}

#[test]
fn every_bad_file_is_refused_for_what_is_wrong_with_it_and_changes_nothing() {
    let (storage, keys) = golden_vault();
    let before = everything(&storage);
    let (mut good, mut bad) = (0, 0);
    for entry in fs::read_dir(folder()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        if !name.starts_with("bad") {
            good += 1;
            continue;
        }
        bad += 1;
        let text = fs::read_to_string(folder().join(&name)).unwrap();
        let error = block_on(import(&storage, &keys, &hex(&text))).unwrap_err();
        let said = word(&error);
        assert!(text.starts_with(&format!("# {said}:")), "{name}: {said}");
        let sentence = error.to_string();
        assert!(
            !sentence.contains('\n') && !sentence.contains(". "),
            "{sentence}"
        );
    }
    assert!(
        bad > 5 * good && good == 4,
        "{good} good ones, {bad} bad ones"
    );
    assert_eq!(everything(&storage), before);
}

fn word(error: &CarryError) -> &'static str {
    match error {
        CarryError::NotCarry => "NotCarry",
        CarryError::Format(_) => "Format",
        CarryError::Damaged => "Damaged",
        CarryError::Senseless { .. } => "Senseless",
        CarryError::Forged { .. } => "Forged",
        CarryError::OtherVault => "OtherVault",
        CarryError::Stranger(_) => "Stranger",
        CarryError::Nothing => "Nothing",
        CarryError::Storage(_) => "Storage",
    }
}

#[test]
fn a_file_from_another_vault_changes_nothing() {
    let (storage, keys) = golden_vault();
    let mut foreign = devices(1, 1).remove(0);
    let theirs = kept_by(&foreign.log(2));
    let exported = block_on(export(&theirs, &foreign.keys, &Vector::new())).unwrap();
    let before = everything(&storage);
    assert_eq!(
        block_on(import(&storage, &keys, &exported.bytes)),
        Err(CarryError::OtherVault)
    );
    assert_eq!(everything(&storage), before);
}

/// Whoever knows a vault's id can sign a log in it; without its key, not introduce itself.
#[test]
fn a_device_whose_introduction_does_not_open_is_a_stranger() {
    let (pair, logs, kept) = pair(2);
    let stranger = pair[0].keys.device();
    let beyond = [(stranger, logs[0][0].head())].into_iter().collect();
    let rest = block_on(export(&kept[0], &pair[0].keys, &beyond)).unwrap();
    append(&kept[1], &logs[0][..1], None);
    let mut altered = logs[0][0].bytes().to_vec();
    altered[200] ^= 1;
    kept[1].damage(stranger, 1, Some(altered));
    let before = everything(&kept[1]);
    let refused = block_on(import(&kept[1], &pair[1].keys, &rest.bytes));
    assert_eq!(refused, Err(CarryError::Stranger(stranger)));
    assert_eq!(everything(&kept[1]), before);
}

fn kept_by(log: &[Frame]) -> MemoryStorage {
    let storage = MemoryStorage::new();
    append(&storage, log, None);
    storage
}

/// Two devices of a vault, each with a log of its own and what it keeps.
fn pair(entries: usize) -> ([Device; 2], [Vec<Frame>; 2], [MemoryStorage; 2]) {
    let mut pair: [Device; 2] = devices(3, 2).try_into().ok().unwrap();
    let logs = [pair[0].log(entries), pair[1].log(entries)];
    let kept = [kept_by(&logs[0]), kept_by(&logs[1])];
    (pair, logs, kept)
}

#[test]
fn two_tablets_come_to_hold_the_same_by_files_alone() {
    let (pair, _, kept) = pair(1_200);
    let there = block_on(export(&kept[0], &pair[0].keys, &Vector::new())).unwrap();
    assert_eq!(
        block_on(import(&kept[1], &pair[1].keys, &there.bytes)),
        Ok(taken(1, 1_201, 0))
    );
    let theirs = CarryFile::parse(&there.bytes).unwrap().vector();
    let back = block_on(export(&kept[1], &pair[1].keys, &theirs)).unwrap();
    assert_eq!(back.frames, 1_201, "only what the other one lacks");
    assert_eq!(
        block_on(import(&kept[0], &pair[0].keys, &back.bytes)),
        Ok(taken(1, 1_201, 0))
    );
    assert_eq!(everything(&kept[0]), everything(&kept[1]));
    let all = CarryFile::parse(&back.bytes).unwrap().vector();
    let mut both: Vector = all;
    both.set(pair[0].keys.device(), theirs.head(pair[0].keys.device()));
    let nothing = block_on(export(&kept[1], &pair[1].keys, &both));
    assert_eq!(nothing, Err(CarryError::Nothing));
}

#[test]
fn a_gap_and_a_fork_leave_their_log_and_take_the_rest() {
    let (mut pair, logs, kept) = pair(3);
    let device = pair[0].keys.device();
    let from = [(device, logs[0][1].head())].into_iter().collect();
    let later = block_on(export(&kept[0], &pair[0].keys, &from)).unwrap();
    let gap = Report {
        tablets: 1,
        new: 0,
        known: 0,
        apart: vec![Apart::Gap {
            device,
            from: 1,
            through: 2,
        }],
    };
    assert_eq!(
        block_on(import(&kept[1], &pair[1].keys, &later.bytes)),
        Ok(gap)
    );

    // The first device's log was continued otherwise on the second tablet, which holds its own log too.
    let mut fork = logs[0][..2].to_vec();
    fork.push(pair[0].write(logs[0][1].head(), b"otherwise"));
    append(&kept[1], &fork, None);
    let third = kept_by(&logs[0]);
    let theirs = block_on(export(&kept[1], &pair[1].keys, &Vector::new())).unwrap();
    let report = block_on(import(&third, &pair[0].keys, &theirs.bytes)).unwrap();
    let apart = vec![Apart::Fork {
        device,
        sequence: 3,
    }];
    assert_eq!(
        report,
        Report {
            tablets: 2,
            new: 4,
            known: 0,
            apart
        }
    );
    assert!(
        report
            .to_string()
            .starts_with("4 entries of 2 tablets, all new; from tablet "),
        "{report}"
    );
    let log = everything(&third)
        .into_iter()
        .find(|(id, ..)| *id == device)
        .unwrap()
        .2;
    assert_eq!(
        log,
        logs[0]
            .iter()
            .map(|frame| frame.bytes().to_vec())
            .collect::<Vec<_>>()
    );

    // A fork right after what is here.
    let fourth = kept_by(&logs[0][..3]);
    fork.push(pair[0].write(fork[2].head(), b"and on"));
    let ahead = kept_by(&fork);
    let beyond = [(device, fork[2].head())].into_iter().collect();
    let tail = block_on(export(&ahead, &pair[0].keys, &beyond)).unwrap();
    let report = block_on(import(&fourth, &pair[0].keys, &tail.bytes)).unwrap();
    assert_eq!(
        report.apart,
        [Apart::Fork {
            device,
            sequence: 3
        }]
    );
}

#[test]
fn damage_here_is_left_out_and_said() {
    let (pair, logs, kept) = pair(3);
    let device = pair[0].keys.device();
    kept[0].damage(device, 3, Some(vec![1, 2, 3]));
    append(&kept[0], &logs[1], None);
    let exported = block_on(export(&kept[0], &pair[0].keys, &Vector::new())).unwrap();
    assert_eq!((exported.frames, exported.left_out), (6, vec![(device, 3)]));
}

/// A storage that has room for so many appends only.
struct Small<'a>(&'a MemoryStorage, std::cell::Cell<u32>);

impl Storage for Small<'_> {
    async fn head(&self, device: DeviceId) -> Result<Option<Head>, StorageError> {
        self.0.head(device).await
    }
    async fn append(&self, append: Append<'_>) -> Result<(), StorageError> {
        let left = self.1.get().checked_sub(1).ok_or(StorageError::Full)?;
        self.1.set(left);
        self.0.append(append).await
    }
    async fn page(
        &self,
        device: DeviceId,
        from: u64,
        limit: usize,
    ) -> Result<Vec<sync::StoredFrame>, StorageError> {
        self.0.page(device, from, limit).await
    }
    async fn vector(&self) -> Result<Vec<(DeviceId, Head)>, StorageError> {
        self.0.vector().await
    }
    async fn key_file(&self) -> Result<Option<Vec<u8>>, StorageError> {
        self.0.key_file().await
    }
    async fn put_key_file(&self, bytes: &[u8]) -> Result<(), StorageError> {
        self.0.put_key_file(bytes).await
    }
    async fn found(&self, key_file: &[u8], first: &Frame) -> Result<(), StorageError> {
        self.0.found(key_file, first).await
    }
    async fn put_draft(&self, name: vault::DraftName, sealed: &[u8]) -> Result<(), StorageError> {
        self.0.put_draft(name, sealed).await
    }
    async fn draft(&self, name: vault::DraftName) -> Result<Option<Vec<u8>>, StorageError> {
        self.0.draft(name).await
    }
    async fn drafts(&self) -> Result<Vec<sync::StoredDraft>, StorageError> {
        self.0.drafts().await
    }
    async fn remove_draft(&self, name: vault::DraftName) -> Result<(), StorageError> {
        self.0.remove_draft(name).await
    }
    async fn checkpoint(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        self.0.checkpoint().await
    }
    async fn put_checkpoint(&self, pieces: &[Vec<u8>]) -> Result<(), StorageError> {
        self.0.put_checkpoint(pieces).await
    }
    async fn roll(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        self.0.roll().await
    }
    async fn put_roll(&self, statements: &[Vec<u8>]) -> Result<(), StorageError> {
        self.0.put_roll(statements).await
    }
    async fn empty(&self, frames: &[Frame]) -> Result<(), StorageError> {
        self.0.empty(frames).await
    }
    async fn is_copy(&self) -> Result<bool, StorageError> {
        self.0.is_copy().await
    }
    async fn mark_copy(&self) -> Result<(), StorageError> {
        self.0.mark_copy().await
    }
    async fn renew(&self, renewal: sync::Renewal<'_>) -> Result<(), StorageError> {
        self.0.renew(renewal).await
    }
    async fn wipe(&self) -> Result<(), StorageError> {
        self.0.wipe().await
    }
}

#[test]
fn an_import_that_breaks_off_goes_on_the_next_time() {
    let (pair, _, kept) = pair(1_200);
    let there = block_on(export(&kept[0], &pair[0].keys, &Vector::new())).unwrap();
    let small = Small(&kept[1], 2.into());
    let full = block_on(import(&small, &pair[1].keys, &there.bytes));
    assert_eq!(full, Err(CarryError::Storage(StorageError::Full)));
    assert_eq!(
        block_on(import(&kept[1], &pair[1].keys, &there.bytes)),
        Ok(taken(1, 201, 1_000))
    );
}

#[test]
fn what_was_taken_in_is_read_by_the_ledger() {
    let (storage, keys) = golden_vault();
    block_on(import(&storage, &keys, &file("good"))).unwrap();
    let opened = block_on(sync::Ledger::open(storage, keys)).unwrap();
    assert!(opened.damage.is_empty() && opened.refusal.is_none());
    let other = both()[0].device();
    assert!(
        opened
            .entries
            .iter()
            .any(|entry| entry.device == other && entry.payload == b"left eye, 6/12")
    );
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_changed_byte_passes_unseen(at in any::<proptest::sample::Index>(), flip in 1_u8..=255) {
        let mut bytes = file("good-other");
        let at = at.index(bytes.len());
        bytes[at] ^= flip;
        prop_assert!(CarryFile::parse(&bytes).is_err());
    }

    /// With the sum made right again, what is left is for the parser and the signatures to find.
    #[test]
    fn no_changed_byte_under_a_right_sum_passes_unseen(at in any::<proptest::sample::Index>(), flip in 1_u8..=255) {
        let mut bytes = file("good-other");
        let end = bytes.len() - 32;
        let at = at.index(end);
        bytes[at] ^= flip;
        let sum = vault::carry_sum(&bytes[..end]);
        bytes[end..].copy_from_slice(&sum);
        prop_assert!(CarryFile::parse(&bytes).is_err());
    }

    #[test]
    fn no_bytes_make_the_reader_panic(bytes in proptest::collection::vec(any::<u8>(), 0..500)) {
        let body = [b"lightround carry\x01".as_slice(), &bytes].concat();
        let summed = [body.as_slice(), &vault::carry_sum(&body)].concat();
        prop_assert!(CarryFile::parse(&bytes).is_err());
        prop_assert!(CarryFile::parse(&summed).is_err());
    }
}
