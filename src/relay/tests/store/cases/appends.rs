use crate::Place;
use crate::sample::{Vault, bytes, run};
use std::thread;
use sync::exchange::Appended;
use vault::Frame;
use vault::sample::devices;

const KEPT: Result<Appended, sync::exchange::StoreError> = Ok(Appended::Kept);

fn everything(store: &impl Place, vault: &Vault) -> Vec<Vec<u8>> {
    store
        .range(vault.id, vault.device(0), 1, usize::MAX, usize::MAX)
        .unwrap()
}

pub fn a_log_begins_with_its_first_frame(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(1);
    assert_eq!(store.append(&run(&log)), KEPT);
    assert_eq!(everything(store, vault), bytes(&log));
}

pub fn a_run_continues_its_log(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(5);
    for part in [&log[..2], &log[2..3], &log[3..]] {
        assert_eq!(store.append(&run(part)), KEPT);
    }
    assert_eq!(everything(store, vault), bytes(&log));
}

pub fn a_run_of_many_is_kept_whole(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(500);
    assert_eq!(store.append(&run(&log)), KEPT);
    assert_eq!(everything(store, vault), bytes(&log));
}

pub fn a_run_after_a_gap_is_not_kept(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(4);
    store.append(&run(&log[..1])).unwrap();
    let head = Some(log[0].head());
    assert_eq!(store.append(&run(&log[2..])), Ok(Appended::Moved { head }));
}

pub fn a_run_without_a_beginning_is_not_kept(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(2);
    assert_eq!(
        store.append(&run(&log[1..])),
        Ok(Appended::Moved { head: None })
    );
    assert!(store.vector(vault.id).unwrap().is_empty());
}

pub fn the_same_run_again_has_moved(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(2);
    store.append(&run(&log)).unwrap();
    let head = Some(log[1].head());
    assert_eq!(store.append(&run(&log)), Ok(Appended::Moved { head }));
    assert_eq!(everything(store, vault), bytes(&log));
}

pub fn an_overlapping_run_has_moved(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(4);
    store.append(&run(&log[..2])).unwrap();
    let head = Some(log[1].head());
    assert_eq!(store.append(&run(&log[1..])), Ok(Appended::Moved { head }));
    assert_eq!(everything(store, vault), bytes(&log[..2]));
}

pub fn another_first_frame_has_moved(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(1);
    let other = vec![vault.devices[0].begin("another name")];
    store.append(&run(&log)).unwrap();
    let head = Some(log[0].head());
    assert_eq!(store.append(&run(&other)), Ok(Appended::Moved { head }));
    assert_eq!(everything(store, vault), bytes(&log));
}

pub fn a_fork_after_the_head_has_moved(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(2);
    let mut fork = vec![log[0].clone()];
    fork.push(vault.after(&fork, b"otherwise"));
    fork.push(vault.after(&fork, b"and on"));
    store.append(&run(&log)).unwrap();
    let head = Some(log[1].head());
    assert_eq!(store.append(&run(&fork[2..])), Ok(Appended::Moved { head }));
}

pub fn what_has_moved_says_where_to(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(6);
    for length in 1..5 {
        store.append(&run(&log[length - 1..length])).unwrap();
        let head = store.head(vault.id, vault.device(0)).unwrap();
        assert_eq!(head, Some(log[length - 1].head()));
        assert_eq!(store.append(&run(&log[5..])), Ok(Appended::Moved { head }));
    }
}

pub fn a_refused_run_leaves_everything(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(6);
    store.append(&run(&log[..2])).unwrap();
    let before = (
        store.vector(vault.id),
        store.size(vault.id),
        everything(store, vault),
    );
    store.append(&run(&log[3..])).unwrap();
    store.append(&run(&log[..1])).unwrap();
    let after = (
        store.vector(vault.id),
        store.size(vault.id),
        everything(store, vault),
    );
    assert_eq!(before, after);
}

pub fn the_largest_frame_is_kept(store: &impl Place, vault: &mut Vault) {
    let mut log = vault.log(1);
    log.push(vault.after(&log, &vec![7; vault::frame::LONGEST_PAYLOAD]));
    assert_eq!(log[1].bytes().len(), vault::frame::LONGEST);
    assert_eq!(store.append(&run(&log)), KEPT);
    assert_eq!(everything(store, vault), bytes(&log));
}

/// A store looks at no signature and no purpose: that is done before.
pub fn a_frame_of_a_later_purpose_is_kept_like_any(store: &impl Place, vault: &mut Vault) {
    let mut later = vault.log(1)[0].bytes().to_vec();
    later[94] = 200;
    let later = vec![Frame::parse(later).unwrap()];
    assert_eq!(store.append(&run(&later)), KEPT);
    assert_eq!(everything(store, vault), bytes(&later));
}

pub fn of_many_at_once_one_comes_first(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(1);
    let rivals: Vec<Vec<Frame>> = (0..8_u8)
        .map(|rival| vec![vault.after(&log, &[rival])])
        .collect();
    store.append(&run(&log)).unwrap();
    let kept = thread::scope(|scope| {
        let tries: Vec<_> = rivals
            .iter()
            .map(|rival| scope.spawn(|| store.append(&run(rival))))
            .collect();
        let ended = tries.into_iter().map(|one| one.join().unwrap());
        ended.filter(|ended| *ended == KEPT).count()
    });
    assert_eq!(kept, 1);
    assert_eq!(everything(store, vault).len(), 2);
}

pub fn many_logs_grow_at_once(store: &impl Place, vault: &mut Vault) {
    let mut many = devices(1_000_000 + u64::from(vault.id.as_bytes()[0]), 6);
    let logs: Vec<Vec<Frame>> = many.iter_mut().map(|device| device.log(9)).collect();
    let shared = logs[0][0].header().vault;
    let before = store.vector(shared).unwrap().len();
    assert_eq!(before, 0, "a vault of this test's own");
    thread::scope(|scope| {
        for log in &logs {
            scope.spawn(move || {
                for frame in log {
                    assert_eq!(store.append(&run(std::slice::from_ref(frame))), KEPT);
                }
            });
        }
    });
    let heads: Vec<u64> = store
        .vector(shared)
        .unwrap()
        .iter()
        .map(|(_, head)| head.sequence)
        .collect();
    assert_eq!(heads, [10; 6]);
}

pub fn one_log_grows_by_many_hands(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(24);
    thread::scope(|scope| {
        for _ in 0..4 {
            scope.spawn(|| {
                for frame in &log {
                    // Whoever comes late finds it there.
                    let ended = store.append(&run(std::slice::from_ref(frame)));
                    assert!(ended.is_ok(), "{ended:?}");
                }
            });
        }
    });
    assert_eq!(everything(store, vault), bytes(&log));
}
