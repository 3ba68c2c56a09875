//! What is written down about people, as it comes out of a frame, and drafts.

use crate::seeds::frozen;
use record::{Body, Draft, Entry, Story};
use std::collections::BTreeMap;

pub fn seeds() -> Vec<Vec<u8>> {
    frozen(&[
        "src/record/frozen/carried",
        "src/record/frozen/malformed",
        "src/record/frozen/rounds",
        "src/record/frozen/v1",
        "src/record/frozen/v2",
        "src/record/frozen/v3",
        "src/record/frozen/v4",
        "src/record/frozen/v5-person",
        "src/record/frozen/v5-settings",
        "src/record/frozen/v6-mappings",
        "src/record/frozen/v6-sent",
    ])
}

/// What is read is written to what reads the same, and takes its place in a story once, however often it comes.
pub fn entry(bytes: &[u8]) {
    let Ok(entry) = Entry::from_cbor(bytes) else {
        return;
    };
    assert_eq!(Entry::from_cbor(&entry.to_cbor()).as_ref(), Ok(&entry));
    let mut story = Story::default();
    story
        .admit(entry.clone())
        .expect("there is no other of its name");
    let (length, waiting) = (story.len(), story.waiting());
    story.admit(entry).expect("it is the same");
    assert_eq!((story.len(), story.waiting()), (length, waiting));
    for person in story.people() {
        let _ = person.details().lines();
    }
}

/// Of every section that is frozen.
pub fn drafts() -> Vec<Vec<u8>> {
    let entries = seeds()
        .into_iter()
        .filter_map(|bytes| Entry::from_cbor(&bytes).ok());
    entries.filter_map(draft_of).collect()
}

fn draft_of(entry: Entry) -> Option<Vec<u8>> {
    let Body::Section { exam, section, .. } = entry.body else {
        return None;
    };
    let draft = Draft {
        exam,
        section,
        typing: BTreeMap::from([("right lens".to_owned(), "lens 2.5 - 90".to_owned())]),
        based_on: entry.parents,
        saved: entry.stamp,
    };
    Some(draft.to_cbor())
}

/// What is read is written to what reads the same; whatever is in its fields, they are checked.
pub fn draft(bytes: &[u8]) {
    if let Ok(draft) = Draft::from_cbor(bytes) {
        assert_eq!(Draft::from_cbor(&draft.to_cbor()).as_ref(), Ok(&draft));
        let _ = draft.check();
    }
}
