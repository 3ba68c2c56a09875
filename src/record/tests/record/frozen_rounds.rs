//! Bytes of places, rounds, visits and the kit that must never change; made as those in `frozen.rs` were.

use record::{
    Body, Entry, Kit, Notice, PackedEntry, PersonId, PlaceDetails, PlaceEntry, PlaceId,
    RoundDetails, RoundEntry, RoundId, Unit, Visit, VisitEntry, VisitState,
};
use uuid::Uuid;

use crate::desk::day;
use crate::frozen::entry;
use crate::samples::{bytes, names};

const BASE: u128 = 0x0195_6000_0000_7000_8000_0000_0000_0000;
const PLACE: PlaceId = PlaceId::from_uuid(Uuid::from_u128(BASE + 0x0401));
const ROUND: RoundId = RoundId::from_uuid(Uuid::from_u128(BASE + 0x0501));
const ORLA: PersonId = PersonId::from_uuid(Uuid::from_u128(BASE + 0x0101));
const IVO: PersonId = PersonId::from_uuid(Uuid::from_u128(BASE + 0x0102));

fn place(details: PlaceDetails) -> Body {
    let place = PLACE;
    Body::Place(PlaceEntry { place, details })
}

fn round(details: RoundDetails) -> Body {
    let round = ROUND;
    Body::Round(RoundEntry { round, details })
}

fn visit(state: VisitState, word: &str) -> Body {
    Body::Visit(VisitEntry {
        round: ROUND,
        person: ORLA,
        visit: Visit {
            state,
            word: word.into(),
            at: day(2026, 3, 4).and_hms_opt(10, 20, 0).unwrap(),
        },
    })
}

fn court() -> PlaceDetails {
    let unit = |name: &str, rooms: &[&str]| Unit {
        name: name.into(),
        rooms: rooms.iter().map(|room| (*room).to_owned()).collect(),
    };
    PlaceDetails {
        name: "Saltmarsh Court".into(),
        address: "1 Quay Lane, Gullhaven".into(),
        units: vec![unit("Ground floor", &["3", "10a"]), unit("Lounge", &[])],
        contact: "the nurse in charge".into(),
        door: "ring twice".into(),
        past: true,
    }
}

fn bare() -> PlaceDetails {
    PlaceDetails {
        name: "Saltmarsh Court".into(),
        ..PlaceDetails::default()
    }
}

fn full_round() -> RoundDetails {
    RoundDetails {
        date: day(2026, 3, 4),
        place: Some(PLACE),
        people: vec![IVO, ORLA],
        notice: Some(Notice {
            to: "the harbour health board".into(),
            words: "number 17".into(),
            given_on: Some(day(2026, 2, 2)),
            remind_on: Some(day(2026, 2, 1)),
        }),
        note: "lift out of order".into(),
        called_off: true,
    }
}

fn round_to_be_noticed() -> RoundDetails {
    let notice = Notice {
        to: "the harbour health board".into(),
        ..Notice::default()
    };
    RoundDetails {
        notice: Some(notice),
        ..RoundDetails::new(day(2026, 3, 4), None)
    }
}

fn expected() -> Vec<(&'static str, Entry)> {
    let items: Vec<String> = vec!["trial frame".into(), "spare batteries".into()];
    let packed = Body::Packed(PackedEntry {
        round: ROUND,
        items: vec!["trial frame".into()],
    });
    vec![
        ("kit", entry(67, &[], Body::Kit(Kit { items }))),
        ("packed", entry(66, &[63], packed)),
        ("place", entry(61, &[60], place(court()))),
        ("place-bare", entry(60, &[], place(bare()))),
        ("round", entry(63, &[62], round(full_round()))),
        ("round-bare", entry(62, &[], round(round_to_be_noticed()))),
        (
            "visit",
            entry(64, &[63], visit(VisitState::Asleep, "after lunch")),
        ),
        (
            "visit-put-off",
            entry(68, &[65], visit(VisitState::PutOff, "")),
        ),
        (
            "visit-taken-back",
            entry(65, &[64], visit(VisitState::ToSee, "")),
        ),
    ]
}

#[test]
fn rounds_and_places_are_frozen() {
    for (name, entry) in expected() {
        let frozen = bytes(&format!("rounds/{name}"));
        assert_eq!(Entry::from_cbor(&frozen).as_ref(), Ok(&entry), "{name}");
        assert_eq!(entry.to_cbor(), frozen, "{name}");
    }
}

#[test]
fn no_file_of_rounds_is_left_unread() {
    let known: Vec<&str> = expected().iter().map(|(name, _)| *name).collect();
    assert_eq!(names("rounds"), known);
}

/// The newer layout is made by this crate from a frozen one: only the number of the layout differs.
#[test]
fn what_a_newer_version_says_of_a_round_is_carried() {
    let mut newer = entry(64, &[63], visit(VisitState::Asleep, "after lunch"));
    newer.schema = 2;
    let bytes = newer.to_cbor();
    let read = Entry::from_cbor(&bytes).unwrap();
    assert!(matches!(&read.body, Body::Unread(unread) if unread.kind() == "round-visit"));
    assert_eq!(read.to_cbor(), bytes);
}

#[test]
fn a_body_that_is_none_is_refused_by_its_kind() {
    for name in ["kit", "packed", "place", "round", "visit"] {
        let good = bytes(&format!("rounds/{name}"));
        // The first key of the body, after the word "body" and the map's head, loses its first letter.
        let at = good
            .windows(5)
            .position(|four| &four[..5] == b"dbody")
            .unwrap();
        let mut bad = good.clone();
        bad[at + 7] = b'x';
        let error = Entry::from_cbor(&bad).unwrap_err().to_string();
        assert!(error.starts_with("the body of this"), "{name}: {error}");
    }
}
