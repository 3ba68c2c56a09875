use crate::Place;
use crate::sample::{Vault, bytes, run};
use sync::exchange::Why;
use vault::{ErasedKey, Frame, KeyId, Purpose};

/// The key that the samples' entries are under, as if it were a person's.
fn entries_key(log: &[Frame]) -> ErasedKey {
    ErasedKey {
        id: log[1].header().key,
        device: log[0].device(),
        sequence: u64::MAX >> 1,
    }
}

/// The key that is in a frame, under which no entry is.
fn key_in(frame: &Frame) -> ErasedKey {
    ErasedKey {
        id: KeyId::from_bytes([0xee; 16]),
        device: frame.device(),
        sequence: frame.sequence(),
    }
}

fn emptied(frames: &[Frame]) -> Vec<Frame> {
    frames.iter().map(Frame::emptied).collect()
}

fn everything(store: &impl Place, vault: &Vault) -> Vec<Vec<u8>> {
    store
        .range(vault.id, vault.device(0), 1, usize::MAX, usize::MAX)
        .unwrap()
}

fn length(frames: &[Frame]) -> u64 {
    let lengths = frames.iter().map(|frame| frame.bytes().len() as u64);
    lengths.sum()
}

pub fn what_is_emptied_stays_in_its_place(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(6);
    store.append(&run(&log)).unwrap();
    store.empty(&emptied(&log[2..4])).unwrap();
    let mut left = log.clone();
    left[2..4].clone_from_slice(&emptied(&log[2..4]));
    assert_eq!(everything(store, vault), bytes(&left));
    let hashes: Vec<_> = log.iter().map(Frame::hash).collect();
    assert_eq!(store.hashes(vault.id, vault.device(0), 1, 9), Ok(hashes));
    let head = store.head(vault.id, vault.device(0));
    assert_eq!(head, Ok(Some(log[5].head())));
    assert_eq!(store.size(vault.id), Ok(length(&left)), "room comes back");
}

pub fn emptying_twice_is_emptying_once(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(3);
    store.append(&run(&log)).unwrap();
    for _ in 0..2 {
        store.empty(&emptied(&log[1..])).unwrap();
    }
    let left = [&log[..1], &emptied(&log[1..])].concat();
    assert_eq!(everything(store, vault), bytes(&left));
    assert_eq!(store.size(vault.id), Ok(length(&left)));
}

pub fn a_log_with_emptied_frames_goes_on(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(5);
    store.append(&run(&log[..3])).unwrap();
    store.empty(&emptied(&log[1..3])).unwrap();
    store.append(&run(&log[3..])).unwrap();
    let left = [&log[..1], &emptied(&log[1..3]), &log[3..]].concat();
    assert_eq!(everything(store, vault), bytes(&left));
    assert_eq!(store.size(vault.id), Ok(length(&left)));
}

pub fn emptied_frames_are_appended_as_any(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(3);
    let left = [&log[..1], &emptied(&log[1..])].concat();
    store.append(&run(&left)).unwrap();
    assert_eq!(everything(store, vault), bytes(&left));
    assert_eq!(store.size(vault.id), Ok(length(&left)));
}

pub fn another_frame_of_that_number_stays(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(2);
    let other = vault.after(&log[..1], b"otherwise");
    store.append(&run(&log)).unwrap();
    store.set_aside(&other, Why::Fork).unwrap();
    store.empty(&[other.emptied()]).unwrap();
    assert_eq!(everything(store, vault), bytes(&log));
    let aside = vec![(Why::Fork, other.emptied().bytes().to_vec())];
    assert_eq!(store.aside(vault.id, None, 9), Ok(aside));
    let all = length(&log) + length(&[other.emptied()]);
    assert_eq!(store.size(vault.id), Ok(all));
}

pub fn emptying_what_is_not_there_leaves_nothing(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(3);
    store.append(&run(&log[..1])).unwrap();
    store.empty(&emptied(&log[1..])).unwrap();
    store.empty(&[]).unwrap();
    assert_eq!(everything(store, vault), bytes(&log[..1]));
    assert_eq!(store.aside(vault.id, None, 9), Ok(vec![]));
    assert_eq!(store.size(vault.id), Ok(length(&log[..1])));
}

pub fn what_comes_under_an_erased_key_is_kept_emptied(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(4);
    store.append(&run(&log[..2])).unwrap();
    let erased = entries_key(&log);
    for _ in 0..2 {
        store.remember_erased(vault.id, &[erased]).unwrap();
    }
    assert_eq!(
        everything(store, vault),
        bytes(&log[..2]),
        "what was there before is for whoever erases"
    );
    store.append(&run(&log[2..])).unwrap();
    let left = [&log[..2], &emptied(&log[2..])].concat();
    assert_eq!(everything(store, vault), bytes(&left));
    assert_eq!(store.size(vault.id), Ok(length(&left)));
}

pub fn what_is_set_aside_under_an_erased_key_is_kept_emptied(
    store: &impl Place,
    vault: &mut Vault,
) {
    let log = vault.log(3);
    store
        .remember_erased(vault.id, &[entries_key(&log)])
        .unwrap();
    for frame in [&log[0], &log[2]] {
        store.set_aside(frame, Why::AfterRemoval).unwrap();
    }
    let aside = [&log[0], &log[2].emptied()];
    let aside = aside.map(|frame| (Why::AfterRemoval, frame.bytes().to_vec()));
    assert_eq!(store.aside(vault.id, None, 9), Ok(aside.to_vec()));
}

/// A frame that holds a person's key is known by its place: the key that it is under is the vault's.
pub fn a_frame_that_holds_an_erased_key_is_known_by_its_place(
    store: &impl Place,
    vault: &mut Vault,
) {
    let keys = vault.log(3).into_iter().map(|frame| {
        let mut bytes = frame.bytes().to_vec();
        bytes[94] = 2;
        Frame::parse(bytes).unwrap()
    });
    let keys: Vec<Frame> = keys.collect();
    assert_eq!(keys[1].header().purpose, Purpose::PersonKey);
    let [first, other] = [key_in(&keys[1]), key_in(&keys[2])];
    let elsewhere = ErasedKey {
        device: vault.device(1),
        ..other
    };
    store
        .remember_erased(vault.id, &[first, elsewhere])
        .unwrap();
    for frame in &keys {
        store.set_aside(frame, Why::Fork).unwrap();
    }
    let aside = [&keys[0], &keys[1].emptied(), &keys[2]];
    let aside = aside.map(|frame| (Why::Fork, frame.bytes().to_vec()));
    assert_eq!(store.aside(vault.id, None, 9), Ok(aside.to_vec()));
}

pub fn erased_keys_are_by_vault(store: &impl Place, vault: &mut Vault) {
    let (log, other) = (vault.log(2), Vault::new());
    store
        .remember_erased(other.id, &[entries_key(&log), key_in(&log[1])])
        .unwrap();
    store.remember_erased(vault.id, &[]).unwrap();
    store.append(&run(&log)).unwrap();
    assert_eq!(everything(store, vault), bytes(&log));
}
