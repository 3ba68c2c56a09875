use crate::Place;
use crate::sample::{Vault, run};
use sync::exchange::Why;
use vault::Frame;

fn kept(frame: &Frame, why: Why) -> (Why, Vec<u8>) {
    (why, frame.bytes().to_vec())
}

pub fn nothing_is_aside_at_first(store: &impl Place, vault: &mut Vault) {
    store.append(&run(&vault.log(2))).unwrap();
    assert_eq!(store.aside(vault.id, None, 10), Ok(vec![]));
}

pub fn what_is_aside_is_in_no_log(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(2);
    store.append(&run(&log[..1])).unwrap();
    store.set_aside(&log[1], Why::AfterRemoval).unwrap();
    assert_eq!(
        store.aside(vault.id, None, 10),
        Ok(vec![kept(&log[1], Why::AfterRemoval)])
    );
    assert_eq!(
        store.head(vault.id, vault.device(0)),
        Ok(Some(log[0].head()))
    );
    assert_eq!(
        store
            .hashes(vault.id, vault.device(0), 1, 10)
            .unwrap()
            .len(),
        1
    );
}

pub fn the_same_frame_is_aside_once(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(1);
    store.set_aside(&log[0], Why::Fork).unwrap();
    store.set_aside(&log[0], Why::AfterRemoval).unwrap();
    assert_eq!(
        store.aside(vault.id, None, 10),
        Ok(vec![kept(&log[0], Why::Fork)]),
        "the first reason stays"
    );
}

pub fn two_frames_of_one_number_are_both_aside(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(1);
    let pair = [b"one", b"two"].map(|payload| vault.after(&log, payload));
    for frame in &pair {
        store.set_aside(frame, Why::Fork).unwrap();
    }
    assert_eq!(store.aside(vault.id, None, 10).unwrap().len(), 2);
}

pub fn aside_is_in_order_and_cut(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(12);
    for frame in log.iter().rev() {
        store.set_aside(frame, Why::Fork).unwrap();
    }
    let expected: Vec<_> = log[..11]
        .iter()
        .map(|frame| kept(frame, Why::Fork))
        .collect();
    assert_eq!(store.aside(vault.id, None, 11), Ok(expected));
}

pub fn aside_goes_on_where_it_was_cut(store: &impl Place, vault: &mut Vault) {
    let mut frames = vault.log(5);
    // Two of one number, and a second device.
    frames.push(vault.after(&frames[..2], b"other"));
    frames.extend(vault.devices[1].log(3));
    for frame in &frames {
        store.set_aside(frame, Why::Fork).unwrap();
    }
    let all = store.aside(vault.id, None, 99).unwrap();
    assert_eq!(all.len(), 10);
    let (mut after, mut piece_by_piece) = (None, Vec::new());
    loop {
        let some = store.aside(vault.id, after, 3).unwrap();
        let Some((_, last)) = some.last() else {
            break;
        };
        let last = Frame::parse(last.clone()).unwrap();
        after = Some((last.device(), last.head()));
        piece_by_piece.extend(some);
    }
    assert_eq!(piece_by_piece, all);
}

pub fn aside_is_by_vault(store: &impl Place, vault: &mut Vault) {
    let other = Vault::new();
    store.set_aside(&vault.log(1)[0], Why::Fork).unwrap();
    assert_eq!(store.aside(other.id, None, 10), Ok(vec![]));
}

pub fn size_counts_logs_and_what_is_aside(store: &impl Place, vault: &mut Vault) {
    let (log, other) = (vault.log(3), vault.devices[1].log(0));
    store.append(&run(&log[..2])).unwrap();
    store.append(&run(&other)).unwrap();
    store.set_aside(&log[2], Why::Fork).unwrap();
    let frames = log.iter().chain(&other);
    let all: usize = frames.map(|frame| frame.bytes().len()).sum();
    assert_eq!(store.size(vault.id), Ok(all as u64));
}

pub fn size_counts_nothing_that_was_refused(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(3);
    store.append(&run(&log[..1])).unwrap();
    store.append(&run(&log[2..])).unwrap();
    store.append(&run(&log[..1])).unwrap();
    assert_eq!(store.size(vault.id), Ok(log[0].bytes().len() as u64));
}
