//! Damage is reported, costs nothing but itself, and never leads to writing after what is not sound.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{ONE, OTHER, append, founded, kept, payloads, reopened, slot_key, vault};
use futures::executor::block_on;
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::TestRunner;
use sync::{Damage, Fault, MemoryStorage, Opened, Refusal, Storage, WriteError};
use vault::{KeyFile, Under};

/// Frames: 1 introduction, 2 "a", 3 ONE's key, 4 "b", 5 "c", 6 OTHER's key, 7 "d".
fn filled() -> (MemoryStorage, KeyFile) {
    let (storage, file, ledger) = founded();
    let entries: [(&[u8], _); 4] = [
        (b"a", None),
        (b"b", Some(ONE)),
        (b"c", Some(ONE)),
        (b"d", Some(OTHER)),
    ];
    for (payload, subject) in entries {
        block_on(ledger.write(payload, subject, &[])).unwrap();
    }
    (storage, file)
}

/// Reads on with frame `sequence` replaced, or gone.
fn damaged(sequence: u64, bytes: Option<Vec<u8>>) -> (MemoryStorage, Opened<MemoryStorage>) {
    let (storage, file) = filled();
    storage.damage(file.device(), sequence, bytes);
    let opened = reopened(&storage, &file);
    (storage, opened)
}

fn faults(opened: &Opened<MemoryStorage>) -> Vec<(u64, Fault)> {
    opened
        .damage
        .iter()
        .map(
            |Damage {
                 sequence, fault, ..
             }| (*sequence, *fault),
        )
        .collect()
}

#[test]
fn a_missing_entry_costs_only_itself_and_writing_goes_on() {
    let (_, opened) = damaged(4, None);
    assert_eq!(payloads(&opened), [b"a", b"c", b"d"]);
    assert_eq!(faults(&opened), [(4, Fault::Missing { through: 4 })]);
    assert_eq!(
        opened.damage[0].to_string(),
        "entry 4 from “bedside tablet” is missing"
    );
    assert_eq!(
        block_on(opened.ledger.write(b"e", None, &[]))
            .unwrap()
            .sequence,
        8
    );
}

#[test]
fn a_missing_persons_key_costs_what_is_about_that_person() {
    let (_, opened) = damaged(3, None);
    assert_eq!(payloads(&opened), [b"a", b"d"]);
    assert_eq!(
        faults(&opened),
        [
            (3, Fault::Missing { through: 3 }),
            (4, Fault::NoKey),
            (5, Fault::NoKey)
        ]
    );
    // A new key is made for what is written from now on, and it is read again.
    block_on(opened.ledger.write(b"e", Some(ONE), &[])).unwrap();
}

#[test]
fn a_missing_introduction_of_our_own_costs_only_itself() {
    let (_, opened) = damaged(1, None);
    assert_eq!(payloads(&opened), [b"a", b"b", b"c", b"d"]);
    assert_eq!(faults(&opened), [(1, Fault::Missing { through: 1 })]);
    assert_eq!(opened.refusal, None);
}

#[test]
fn nothing_is_written_after_a_missing_end() {
    let (storage, opened) = damaged(7, None);
    assert_eq!(payloads(&opened), [b"a", b"b", b"c"]);
    assert_eq!(faults(&opened), [(7, Fault::Missing { through: 7 })]);
    assert_eq!(opened.refusal, Some(Refusal::DamagedEnd));
    let refused = block_on(opened.ledger.write(b"e", None, &[])).unwrap_err();
    assert_eq!(refused, WriteError::Refused(Refusal::DamagedEnd));
    let device = opened.ledger.device();
    assert_eq!(block_on(storage.head(device)).unwrap().unwrap().sequence, 7);
}

#[test]
fn a_gap_is_said_once() {
    let (storage, file) = filled();
    for sequence in 2..=5 {
        storage.damage(file.device(), sequence, None);
    }
    let opened = reopened(&storage, &file);
    assert_eq!(
        opened.damage[0].to_string(),
        "entries 2 to 5 from “bedside tablet” are missing"
    );
    assert_eq!(
        (opened.damage.len(), payloads(&opened)),
        (1, vec![b"d".as_slice()])
    );
}

#[test]
fn an_entry_in_anothers_place_is_not_read_twice() {
    let (storage, file) = filled();
    let moved = kept(&storage, file.device(), 4);
    storage.damage(file.device(), 5, Some(moved));
    let opened = reopened(&storage, &file);
    assert_eq!(payloads(&opened), [b"a", b"b", b"d"]);
    assert_eq!(faults(&opened), [(5, Fault::Misplaced)]);
}

#[test]
fn a_log_that_was_continued_twice_is_read_and_said() {
    let (file, keys) = vault();
    let (first, start) = keys.begin("bedside tablet").unwrap();
    let (second, two) = keys.seal(&start, Under::Epoch, b"one").unwrap();
    let (fork, _) = keys.seal(&start, Under::Epoch, b"another one").unwrap();
    let (third, _) = keys.seal(&two, Under::Epoch, b"two").unwrap();
    let (fourth, _) = keys
        .seal(&keys.prove(&first, &third).unwrap(), Under::Epoch, b"three")
        .unwrap();
    let storage = MemoryStorage::new();
    block_on(storage.found(&file.to_bytes(), &first)).unwrap();
    append(&storage, &[second, third, fourth], Some(first.head()));
    storage.damage(file.device(), 2, Some(fork.bytes().to_vec()));
    let opened = reopened(&storage, &file);
    assert_eq!(
        payloads(&opened),
        [b"another one".as_slice(), b"two", b"three"]
    );
    assert_eq!(faults(&opened), [(3, Fault::Unlinked)]);
    assert_eq!(opened.refusal, None);
}

#[test]
fn nothing_is_written_after_an_end_that_is_not_the_one_that_was_kept() {
    let (file, keys) = vault();
    let (first, start) = keys.begin("bedside tablet").unwrap();
    let (second, _) = keys.seal(&start, Under::Epoch, b"one").unwrap();
    let (fork, _) = keys.seal(&start, Under::Epoch, b"another one").unwrap();
    let storage = MemoryStorage::new();
    block_on(storage.found(&file.to_bytes(), &first)).unwrap();
    append(&storage, &[second], Some(first.head()));
    storage.damage(file.device(), 2, Some(fork.bytes().to_vec()));
    assert_eq!(reopened(&storage, &file).refusal, Some(Refusal::DamagedEnd));
}

#[test]
fn a_number_beyond_all_counting_ends_the_reading() {
    let (storage, file) = filled();
    storage.damage(file.device(), u64::MAX, Some(vec![1; 459]));
    let opened = reopened(&storage, &file);
    assert_eq!(payloads(&opened).len(), 4);
    assert_eq!(opened.refusal, Some(Refusal::DamagedEnd));
}

/// Runs `case` on one filled vault with one frame replaced, many times over; the vault is put right after each.
fn with_damage<V: Strategy>(
    strategy: V,
    damage: impl Fn(&V::Value, &dyn Fn(u64) -> Vec<u8>) -> (u64, Vec<u8>),
    case: impl Fn(u64, &Opened<MemoryStorage>),
) {
    let (storage, file) = filled();
    let original = |sequence| kept(&storage, file.device(), sequence);
    let config = ProptestConfig {
        cases: 64,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let run = TestRunner::new(config).run(&strategy, |drawn| {
        let (sequence, bytes) = damage(&drawn, &original);
        let sound = original(sequence);
        storage.damage(file.device(), sequence, Some(bytes));
        let opened = reopened(&storage, &file);
        storage.damage(file.device(), sequence, Some(sound));
        case(sequence, &opened);
        Ok(())
    });
    run.unwrap();
}

/// Whichever byte of whichever frame is changed: that frame is reported, what depends on it is reported, and everything
/// else is read.
#[test]
fn any_changed_byte_costs_no_more_than_its_frame() {
    let strategy = (1_u64..=7, any::<Index>(), 1_u8..=255);
    let damage = |(sequence, at, flip): &(u64, Index, u8), original: &dyn Fn(u64) -> Vec<u8>| {
        let mut bytes = original(*sequence);
        let at = at.index(bytes.len());
        bytes[at] ^= flip;
        (*sequence, bytes)
    };
    with_damage(strategy, damage, |sequence, opened| {
        let lost: &[u64] = match sequence {
            3 => &[3, 4, 5],
            6 => &[6, 7],
            _ => &[sequence],
        };
        let reported: Vec<u64> = opened.damage.iter().map(|damage| damage.sequence).collect();
        assert_eq!(reported, lost);
        let read: Vec<u64> = opened.entries.iter().map(|entry| entry.sequence).collect();
        let expected: Vec<u64> = [2, 4, 5, 7]
            .into_iter()
            .filter(|number| !lost.contains(number))
            .collect();
        assert_eq!(read, expected);
        assert_eq!(
            opened.refusal,
            (sequence == 7).then_some(Refusal::DamagedEnd)
        );
    });
}

/// Any bytes in place of a frame: the same, and no panic.
#[test]
fn any_bytes_in_a_frames_place_cost_no_more() {
    let damage = |bytes: &Vec<u8>, _: &dyn Fn(u64) -> Vec<u8>| (2, bytes.clone());
    with_damage(
        proptest::collection::vec(any::<u8>(), 0..1000),
        damage,
        |_, opened| {
            assert_eq!(payloads(opened), [b"b", b"c", b"d"]);
            assert_eq!(opened.damage.len(), 1);
        },
    );
}

#[test]
fn a_key_file_that_is_not_there_does_not_stop_the_reading() {
    let (storage, file) = filled();
    block_on(storage.put_key_file(b"nothing of ours")).unwrap();
    let keys = file.unlock(&slot_key()).unwrap();
    let opened = block_on(sync::Ledger::open(storage, keys)).unwrap();
    assert_eq!((payloads(&opened).len(), opened.refusal), (4, None));
}
