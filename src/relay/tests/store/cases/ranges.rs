use crate::Place;
use crate::sample::{Vault, bytes, run};
use vault::{Frame, FrameHash};

/// A log of so many frames, kept.
fn kept(store: &impl Place, vault: &mut Vault, frames: usize) -> Vec<Frame> {
    let log = vault.log(frames);
    store.append(&run(&log)).unwrap();
    log
}

fn range(store: &impl Place, vault: &Vault, from: u64, frames: usize, room: usize) -> Vec<Vec<u8>> {
    store
        .range(vault.id, vault.device(0), from, frames, room)
        .unwrap()
}

pub fn a_range_has_no_more_bytes_than_asked_for(store: &impl Place, vault: &mut Vault) {
    let log = kept(store, vault, 5);
    let two = log[0].bytes().len() + log[1].bytes().len();
    for (room, frames) in [(two - 1, 1), (two, 2), (two + 1, 2)] {
        assert_eq!(range(store, vault, 1, 10, room), bytes(&log[..frames]));
    }
}

/// Longer than any store reads at a time.
pub fn a_long_range_has_no_more_bytes_than_asked_for(store: &impl Place, vault: &mut Vault) {
    let log = kept(store, vault, 130);
    let room: usize = log[..120].iter().map(|frame| frame.bytes().len()).sum();
    assert_eq!(range(store, vault, 1, 1000, room), bytes(&log[..120]));
    assert_eq!(range(store, vault, 1, 1000, room - 1), bytes(&log[..119]));
}

pub fn a_range_that_fits_exactly_is_whole(store: &impl Place, vault: &mut Vault) {
    let log = kept(store, vault, 4);
    let all = log.iter().map(|frame| frame.bytes().len()).sum();
    assert_eq!(range(store, vault, 1, 4, all), bytes(&log));
}

pub fn a_range_without_room_is_empty(store: &impl Place, vault: &mut Vault) {
    let log = kept(store, vault, 2);
    assert!(range(store, vault, 1, 10, 0).is_empty());
    assert!(range(store, vault, 1, 10, log[0].bytes().len() - 1).is_empty());
}

pub fn hashes_are_those_of_the_frames(store: &impl Place, vault: &mut Vault) {
    let log = kept(store, vault, 4);
    let hashes: Vec<FrameHash> = log.iter().map(Frame::hash).collect();
    assert_eq!(store.hashes(vault.id, vault.device(0), 1, 10), Ok(hashes));
}

pub fn hashes_stop_where_they_are_asked_to(store: &impl Place, vault: &mut Vault) {
    let log = kept(store, vault, 4);
    let two = vec![log[1].hash(), log[2].hash()];
    assert_eq!(store.hashes(vault.id, vault.device(0), 2, 2), Ok(two));
    assert_eq!(store.hashes(vault.id, vault.device(0), 2, 0), Ok(vec![]));
}

pub fn hashes_after_the_end_are_none(store: &impl Place, vault: &mut Vault) {
    kept(store, vault, 4);
    assert_eq!(store.hashes(vault.id, vault.device(0), 5, 2), Ok(vec![]));
}

pub fn hashes_from_a_number_beyond_all_are_none(store: &impl Place, vault: &mut Vault) {
    kept(store, vault, 2);
    let none = store.hashes(vault.id, vault.device(0), u64::MAX, usize::MAX);
    assert_eq!(none, Ok(vec![]));
}

pub fn hashes_are_of_one_device(store: &impl Place, vault: &mut Vault) {
    kept(store, vault, 2);
    assert_eq!(store.hashes(vault.id, vault.device(1), 1, 9), Ok(vec![]));
}
