//! Bytes of what came to be known of a person later, that must never change; made as those in `frozen.rs` were.

use record::{
    Apart, Body, Born, Contact, Doctor, Entry, Identifier, LooksAt, Name, PersonDetails, PersonId,
    Same,
};
use uuid::Uuid;

use crate::desk::day;
use crate::frozen::{PERSON, entry, id};
use crate::samples::{bytes, names};

const OTHER: PersonId =
    PersonId::from_uuid(Uuid::from_u128(0x0195_6000_0000_7000_8000_0000_0000_0102));

fn whole() -> Body {
    let details = PersonDetails {
        name: Name {
            given: "Orla".into(),
            family: "Pennyquick".into(),
        },
        born: Some(Born::Date(day(1940, 1, 31))),
        place: "Saltmarsh Court".into(),
        room: "14".into(),
        identifier: None,
        note: "cataract watched".into(),
        identifiers: vec![
            Identifier {
                number: "SK-4471".into(),
                issuer: "Skerrow Health".into(),
            },
            Identifier {
                number: "H-0014".into(),
                issuer: String::new(),
            },
        ],
        contacts: vec![Contact {
            name: "Ada Pennyquick".into(),
            relation: "daughter".into(),
            reach: "555 0142".into(),
        }],
        doctor: Doctor {
            name: "Dr Brinecote".into(),
            practice: "Quayside".into(),
            reach: String::new(),
        },
        hearing: "aid in the left ear".into(),
        language: "Skerrish".into(),
        looks_at: vec![
            LooksAt {
                what: "television".into(),
                at_cm: Some(280),
            },
            LooksAt {
                what: "knitting".into(),
                at_cm: None,
            },
        ],
    };
    Body::Person {
        person: PERSON,
        details,
    }
}

fn expected() -> Vec<(&'static str, Entry)> {
    let same = Body::Same(Same {
        kept: PERSON,
        other: OTHER,
        why: "same face, same room".into(),
    });
    let apart = Body::Apart(Apart {
        same: id(61),
        why: String::new(),
    });
    vec![
        ("person-whole", entry(60, &[1], whole())),
        ("same-person", entry(61, &[1, 2], same)),
        ("two-persons", entry(62, &[61], apart)),
    ]
}

#[test]
fn what_came_to_be_known_of_a_person_is_frozen() {
    for (name, entry) in expected() {
        let frozen = bytes(&format!("v5-person/{name}"));
        assert_eq!(Entry::from_cbor(&frozen).as_ref(), Ok(&entry), "{name}");
        assert_eq!(entry.to_cbor(), frozen, "{name}");
    }
}

#[test]
fn no_file_of_these_is_left_unread() {
    let known: Vec<&str> = expected().iter().map(|(name, _)| *name).collect();
    assert_eq!(names("v5-person"), known);
}
