use super::{Ordinals, founded, golden};
use crate::{DraftName, Keys};

/// What the frozen draft is of, and how many draws came before its nonce.
const WHAT: &[u8] = b"exam 7, acuity";
const DRAWN: u8 = 16;

fn name(keys: &Keys) -> DraftName {
    keys.draft_name(WHAT)
}

#[test]
fn the_name_and_the_sealed_draft_are_the_frozen_ones() {
    let (_, keys, _) = founded();
    assert_eq!(name(&keys).as_bytes().as_slice(), golden("draft/name").0);
    let sealed = keys
        .seal_draft_from(name(&keys), b"half a line", &mut Ordinals(DRAWN))
        .unwrap();
    assert_eq!(sealed, golden("draft/good").0);
}

#[test]
fn the_frozen_draft_opens_under_its_name_and_no_other() {
    let (_, keys, _) = founded();
    let sealed = golden("draft/good").0;
    assert_eq!(
        *keys.open_draft(name(&keys), &sealed).unwrap(),
        b"half a line"
    );
    assert!(
        keys.open_draft(keys.draft_name(b"exam 7, near"), &sealed)
            .is_err()
    );
}

#[test]
fn a_draft_with_any_byte_changed_or_cut_off_is_refused() {
    let (_, keys, _) = founded();
    let sealed = golden("draft/good").0;
    for at in 0..sealed.len() {
        let mut changed = sealed.clone();
        changed[at] ^= 0x40;
        assert!(keys.open_draft(name(&keys), &changed).is_err(), "byte {at}");
        assert!(
            keys.open_draft(name(&keys), &sealed[..at]).is_err(),
            "cut to {at}"
        );
    }
}
