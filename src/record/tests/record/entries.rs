//! Whatever can be written can be read back the same.

use proptest::option;
use proptest::prelude::*;
use record::{Body, Decision, DeviceId, Draft, Entry, ExamId, Section, Stamp};
use uuid::Uuid;

use crate::any::{entry_id, section};

proptest! {
    #[test]
    fn an_entry_comes_back_as_it_went(
        id in entry_id(),
        parents in prop::collection::vec(entry_id(), 0..5),
        author in ".{0,30}",
        device in any::<[u8; 16]>(),
        wall_ms in any::<u64>(),
        counter in any::<u16>(),
        section in section(),
        reason in option::of(".{0,30}"),
    ) {
        let exam = ExamId::from_uuid(Uuid::from_u128(7));
        let body = Body::Section { exam, section, reason };
        let entry = Entry::new(id, parents, author, DeviceId(device), Stamp { wall_ms, counter }, body);
        let bytes = entry.to_cbor();
        let read = Entry::from_cbor(&bytes).expect("what was just written");
        prop_assert_eq!(read.to_cbor(), bytes);
        prop_assert_eq!(read, entry);
    }

    #[test]
    fn a_draft_comes_back_as_it_went(
        section in section(),
        typing in prop::collection::btree_map(".{0,10}", ".{0,10}", 0..4),
        based_on in prop::collection::vec(entry_id(), 0..3),
    ) {
        let exam = ExamId::from_uuid(Uuid::from_u128(7));
        let draft = Draft { exam, section, typing, based_on, saved: Stamp::default() };
        prop_assert_eq!(Draft::from_cbor(&draft.to_cbor()), Ok(draft));
    }
}

/// The same section travels in an entry and in a draft; a draft cut short is refused like an entry.
#[test]
fn a_draft_cut_short_is_refused() {
    let draft = Draft {
        exam: ExamId::from_uuid(Uuid::from_u128(7)),
        section: Section::Decision(Decision::default()),
        typing: std::collections::BTreeMap::new(),
        based_on: Vec::new(),
        saved: Stamp::default(),
    };
    let bytes = draft.to_cbor();
    for end in 0..bytes.len() {
        assert!(Draft::from_cbor(&bytes[..end]).is_err(), "cut at {end}");
    }
}
