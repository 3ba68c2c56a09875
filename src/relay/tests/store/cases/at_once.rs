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
