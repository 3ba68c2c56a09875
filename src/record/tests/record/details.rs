//! What is written down of a person beside the name, and what was told of them at a visit.

use record::{
    Capacity, Consent, Contact, Doctor, ExamId, Finding, History, Identifier, LooksAt, Mobility,
    Part, PersonDetails,
};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day, details};

fn fields(details: &PersonDetails) -> Vec<String> {
    let errors = details.check(day(2026, 3, 4)).into_iter();
    errors.map(|error| error.field).collect()
}

#[test]
fn each_line_of_a_list_says_enough_or_is_taken_out() {
    let number = |number: &str, issuer: &str| Identifier {
        number: number.into(),
        issuer: issuer.into(),
    };
    let looks_at = |what: &str, at_cm| LooksAt {
        what: what.into(),
        at_cm,
    };
    let orla = details("Orla", "Pennyquick");
    let whole = PersonDetails {
        identifiers: vec![number("H-0014", "Tern House")],
        contacts: vec![Contact {
            relation: "daughter".into(),
            ..Contact::default()
        }],
        looks_at: vec![looks_at("television", Some(280)), looks_at("reading", None)],
        ..orla.clone()
    };
    assert!(fields(&whole).is_empty());
    let lacking = PersonDetails {
        identifiers: vec![number("", "Tern House"), number("H-0014", " ")],
        contacts: vec![Contact::default()],
        looks_at: vec![
            looks_at("", Some(280)),
            looks_at("television", Some(4)),
            looks_at("television", Some(2001)),
        ],
        ..orla
    };
    assert_eq!(
        fields(&lacking),
        [
            "identifiers",
            "identifiers",
            "contacts",
            "looks_at",
            "looks_at",
            "looks_at"
        ]
    );
}

#[test]
fn a_number_from_before_issuers_is_still_known() {
    let known = PersonDetails {
        identifier: Some("H-0014".into()),
        identifiers: vec![Identifier {
            number: "SK-4471".into(),
            issuer: "the islands\u{2019} health service".into(),
        }],
        ..details("Orla", "Pennyquick")
    };
    let said: Vec<String> = known.known_as().iter().map(ToString::to_string).collect();
    assert_eq!(
        said,
        ["H-0014", "SK-4471 (the islands\u{2019} health service)"]
    );
}

#[test]
fn they_read_as_one_would_say_them() {
    let television = LooksAt {
        what: "television".into(),
        at_cm: Some(280),
    };
    let reading = LooksAt {
        what: "reading".into(),
        at_cm: Some(35),
    };
    assert_eq!(television.to_string(), "television at 2.8 m");
    assert_eq!(reading.to_string(), "reading at 35 cm");
    let doctor = Doctor {
        name: "Dr Brinecote".into(),
        reach: "555 0100".into(),
        ..Doctor::default()
    };
    assert_eq!(doctor.to_string(), "Dr Brinecote, 555 0100");
    let ada = Contact {
        name: "Ada".into(),
        relation: "daughter".into(),
        reach: "555 0142".into(),
    };
    assert_eq!(ada.to_string(), "Ada, daughter: 555 0142");
}

/// Nothing new is written where nothing new is known: an older reader meets the bytes that it knows.
#[test]
fn details_without_anything_new_are_written_as_before() {
    let mut desk = Desk::new(1);
    desk.write(desk.story.put_person(PERSON, details("Orla", "Pennyquick")));
    let bytes = desk.written[0].to_cbor();
    let text = String::from_utf8_lossy(&bytes);
    for field in [
        "identifiers",
        "contacts",
        "doctor",
        "hearing",
        "language",
        "looks_at",
    ] {
        assert!(!text.contains(field), "{field}");
    }
}

#[test]
fn what_was_told_comes_from_the_newest_exam_that_says_it() {
    let mut desk = Desk::with_exam(1);
    let earlier = ExamId::from_uuid(Uuid::from_u128(1));
    desk.open(earlier, PERSON, day(2025, 3, 4));
    let then = History {
        allergies: Finding::Done("penicillin".into()),
        medicines: "aspirin".into(),
        ..History::default()
    };
    let planned = desk.story.put_section(&earlier, then.into_section(), None);
    desk.write(planned.unwrap());
    let now = History {
        medicines: "none".into(),
        falls_in_12_months: Finding::Done(2),
        mobility: Some(Mobility::WithAid),
        ..History::default()
    };
    desk.put(now.into_section(), None);
    let consent = Consent {
        capacity: Finding::Done(Capacity::Presumed),
        ..Consent::default()
    };
    desk.put(consent.into_section(), None);
    let told = desk.story.told_of(&PERSON);
    let said: Vec<_> = told
        .iter()
        .map(|told| (told.told.label, told.words.as_str(), told.exam == EXAM))
        .collect();
    assert_eq!(
        said,
        [
            ("allergies", "penicillin", false),
            ("medicines", "none", true),
            ("falls in twelve months", "2", true),
            ("gets about", "walks with a stick or a frame", true),
            ("capacity", "can decide, presumed", true),
        ]
    );
    assert_eq!(told[0].on, day(2025, 3, 4));
}

#[test]
fn a_distance_is_read_as_people_write_it() {
    let read = |text: &str| LooksAt::read_distance(text);
    for (text, cm) in [
        ("2.8 m", 280),
        ("2,8m", 280),
        ("2.8", 280),
        ("35 cm", 35),
        ("35", 35),
        ("0.4 m", 40),
    ] {
        assert_eq!(read(text), Ok(Some(cm)), "{text}");
    }
    assert_eq!(read("  "), Ok(None));
    for text in ["far", "m", "-3", "1e9 m", "nan"] {
        assert!(read(text).is_err(), "{text}");
    }
    let again = LooksAt {
        what: "television".into(),
        at_cm: Some(285),
    };
    assert_eq!(read(&again.distance()), Ok(again.at_cm));
}

#[test]
fn what_is_known_reads_line_by_line_and_what_is_not_is_left_out() {
    let known = PersonDetails {
        hearing: "aid in the left ear".into(),
        identifier: Some("H-0014".into()),
        ..details("Orla", "Pennyquick")
    };
    let labels: Vec<String> = known.lines().into_iter().map(|line| line.label).collect();
    assert_eq!(labels, ["hearing", "known as"]);
    assert_eq!(details("Orla", "Pennyquick").lines(), []);
}
