//! Whatever can be written of places and rounds can be read back the same, and a changed byte harms nobody.

use chrono::NaiveDate;
use proptest::option;
use proptest::prelude::*;
use record::{
    Body, DeviceId, Entry, EntryId, Kit, Notice, OneOf, PackedEntry, PersonId, PlaceDetails,
    PlaceEntry, RoundDetails, RoundEntry, Stamp, Unit, Visit, VisitEntry, VisitState,
};
use uuid::Uuid;

use super::{PLACE, ROUND};
use crate::desk::day;
use crate::samples::{bytes, names};

fn date() -> impl Strategy<Value = NaiveDate> {
    (0..200_000_i64).prop_map(|days| day(1900, 1, 1) + chrono::TimeDelta::days(days))
}

fn text() -> impl Strategy<Value = String> {
    ".{0,20}"
}

fn texts() -> impl Strategy<Value = Vec<String>> {
    prop::collection::vec(text(), 0..4)
}

fn people() -> impl Strategy<Value = Vec<PersonId>> {
    let person = any::<u128>().prop_map(|n| PersonId::from_uuid(Uuid::from_u128(n)));
    prop::collection::vec(person, 0..6)
}

fn place() -> impl Strategy<Value = Body> {
    let unit = (text(), texts()).prop_map(|(name, rooms)| Unit { name, rooms });
    let units = prop::collection::vec(unit, 0..4);
    (text(), text(), units, text(), text(), any::<bool>()).prop_map(
        |(name, address, units, contact, door, past)| {
            let details = PlaceDetails {
                name,
                address,
                units,
                contact,
                door,
                past,
            };
            let place = PLACE;
            Body::Place(PlaceEntry { place, details })
        },
    )
}

fn round() -> impl Strategy<Value = Body> {
    let notice = (text(), text(), option::of(date()), option::of(date())).prop_map(
        |(to, words, given_on, remind_on)| Notice {
            to,
            words,
            given_on,
            remind_on,
        },
    );
    let parts = (
        date(),
        any::<bool>(),
        people(),
        option::of(notice),
        text(),
        any::<bool>(),
    );
    parts.prop_map(|(date, placed, people, notice, note, called_off)| {
        let details = RoundDetails {
            date,
            place: placed.then_some(PLACE),
            people,
            notice,
            note,
            called_off,
        };
        let round = ROUND;
        Body::Round(RoundEntry { round, details })
    })
}

fn visit() -> impl Strategy<Value = Body> {
    let state = prop::sample::select(VisitState::all());
    (state, text(), date(), 0..24_u32, 0..60_u32).prop_map(|(state, word, on, hour, minute)| {
        let at = on.and_hms_opt(hour, minute, 0).unwrap();
        Body::Visit(VisitEntry {
            round: ROUND,
            person: super::person(1),
            visit: Visit { state, word, at },
        })
    })
}

fn body() -> impl Strategy<Value = Body> {
    let round = ROUND;
    prop_oneof![
        place().boxed(),
        self::round().boxed(),
        visit().boxed(),
        texts()
            .prop_map(move |items| Body::Packed(PackedEntry { round, items }))
            .boxed(),
        texts().prop_map(|items| Body::Kit(Kit { items })).boxed(),
    ]
}

proptest! {
    #[test]
    fn an_entry_comes_back_as_it_went(body in body(), wall_ms in any::<u64>()) {
        let id = EntryId::from_uuid(Uuid::from_u128(1));
        let stamp = Stamp { wall_ms, counter: 0 };
        let entry = Entry::new(id, vec![id], "M. Farrow".into(), DeviceId([1; 16]), stamp, body);
        let written = entry.to_cbor();
        let read = Entry::from_cbor(&written).expect("what was just written");
        prop_assert_eq!(read.to_cbor(), written);
        prop_assert_eq!(read, entry);
    }

    #[test]
    fn one_changed_byte_never_panics(at in any::<prop::sample::Index>(), to in any::<u8>()) {
        for name in names("rounds") {
            let mut changed = bytes(&format!("rounds/{name}"));
            let at = at.index(changed.len());
            changed[at] = to;
            if let Ok(entry) = Entry::from_cbor(&changed) {
                let again = Entry::from_cbor(&entry.to_cbor()).unwrap();
                prop_assert_eq!(again.to_cbor(), entry.to_cbor());
            }
        }
    }
}
