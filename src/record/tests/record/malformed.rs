//! Bytes that are no entry: each gives one typed error, and none a panic.

use proptest::prelude::*;
use record::{Draft, Entry, ReadError, RecordError};

use crate::samples::{bytes, names};

/// What is expected of each file in the folder.
const EXPECTED: [(&str, &str); 36] = [
    ("array", "envelope"),
    ("axis-of-200", "body"),
    ("bad-utf8", "not cbor"),
    ("body-is-text", "body"),
    ("break-alone", "envelope"),
    ("counter-too-large", "envelope"),
    ("cut-by-one", "not cbor"),
    ("cut-in-half", "not cbor"),
    ("cylinder-without-axis", "body"),
    ("date-as-number", "body"),
    ("deep", "envelope"),
    ("deep-body", "too deep"),
    ("done-and-blank", "body"),
    ("empty", "not cbor"),
    ("endless-sphere", "body"),
    ("huge-array", "not cbor"),
    ("huge-bytes", "envelope"),
    ("huge-map", "not cbor"),
    ("huge-text", "envelope"),
    ("large-schema", "envelope"),
    ("negative-schema", "envelope"),
    ("no-body", "envelope"),
    ("no-exam", "body"),
    ("no-id", "envelope"),
    ("no-such-date", "body"),
    ("no-such-line", "body"),
    ("no-such-urgency", "body"),
    ("not-a-map", "envelope"),
    ("reserved-head", "not cbor"),
    ("short-device", "envelope"),
    ("short-id", "envelope"),
    ("text-id", "envelope"),
    ("trailing", "trailing"),
    ("twice-the-author", "envelope"),
    ("working-at-nought", "body"),
    ("zero-schema", "envelope"),
];

fn refusal(bytes: &[u8]) -> &'static str {
    match Entry::from_cbor(bytes) {
        Ok(_) => "accepted",
        Err(RecordError::Read(error)) => match error {
            ReadError::TooLong { .. } => "too long",
            ReadError::NotCbor { .. } => "not cbor",
            ReadError::TooDeep => "too deep",
            ReadError::Trailing { .. } => "trailing",
            ReadError::Envelope { .. } => "envelope",
            ReadError::Body { .. } => "body",
        },
        Err(_) => "another error",
    }
}

#[test]
fn every_malformed_file_is_refused_for_its_reason() {
    let found: Vec<(String, &str)> = names("malformed")
        .into_iter()
        .map(|name| {
            let why = refusal(&bytes(&format!("malformed/{name}")));
            (name, why)
        })
        .collect();
    let expected: Vec<(String, &str)> = EXPECTED
        .iter()
        .map(|(name, why)| ((*name).to_owned(), *why))
        .collect();
    assert_eq!(found, expected);
}

#[test]
fn more_than_one_push_may_carry_is_not_even_looked_at() {
    let bytes = vec![0xF6; (1 << 20) + 1];
    assert_eq!(refusal(&bytes), "too long");
}

#[test]
fn an_error_says_what_and_where() {
    let said = |name: &str| Entry::from_cbor(&bytes(name)).unwrap_err().to_string();
    assert_eq!(
        said("malformed/trailing"),
        "1 bytes follow the end of the entry"
    );
    assert!(said("malformed/no-such-line").contains("the chart has no 6/7 line"));
    assert!(said("malformed/no-such-line").contains("section-acuity"));
}

proptest! {
    /// A good entry with any one byte changed is read or refused, and never brings the reader down.
    #[test]
    fn one_changed_byte_never_panics(at in any::<prop::sample::Index>(), to in any::<u8>()) {
        for name in names("v1") {
            let mut changed = bytes(&format!("v1/{name}"));
            let at = at.index(changed.len());
            changed[at] = to;
            if let Ok(entry) = Entry::from_cbor(&changed) {
                let again = Entry::from_cbor(&entry.to_cbor()).unwrap();
                prop_assert_eq!(again.to_cbor(), entry.to_cbor());
            }
            let _refused_or_read = Draft::from_cbor(&changed);
        }
    }

    /// Nor do bytes at random.
    #[test]
    fn noise_is_refused(noise in prop::collection::vec(any::<u8>(), 0..200)) {
        prop_assert!(Entry::from_cbor(&noise).is_err());
    }
}
