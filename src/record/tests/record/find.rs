//! Finding people: a list of what is asked, and who has to come.

use chrono::NaiveDate;
use proptest::prelude::*;
use record::find::{Findable, Found, Index};
use record::{Born, Identifier, PersonDetails, PersonId, PlaceDetails, PlaceId, Unit};
use uuid::Uuid;

use crate::desk::{Desk, day, details};

type Row = (u8, &'static str, &'static str, &'static str, Born);

const fn on(year: i32, month: u32, day: u32) -> Born {
    Born::Date(NaiveDate::from_ymd_opt(year, month, day).unwrap())
}

const AGED_86: Born = Born::Stated {
    years: 86,
    in_year: 2026,
};

const ROWS: [Row; 8] = [
    (
        1,
        "Orla Pennyquick",
        "14",
        "Saltmarsh Court",
        on(1938, 3, 12),
    ),
    (
        2,
        "Piers Oakhollow",
        "3",
        "Saltmarsh Court",
        on(1938, 12, 3),
    ),
    (3, "Philippa Garrowby", "14b", "Tern House", on(1941, 3, 12)),
    (4, "Åse Strømvik", "Blue 3", "Tern House", on(1938, 7, 1)),
    (5, "Linnet Penhallow-Quay", "7", "The Capstan", AGED_86),
    (
        6,
        "Ottoline O\u{2019}Marrow",
        "21",
        "Tern House",
        on(1950, 1, 31),
    ),
    (7, "Ivo Tern", "9", "The Capstan", on(1933, 5, 20)),
    (8, "Corvin Saltgarth", "38", "Wrackholm", on(1944, 2, 29)),
];

fn row((key, name, room, place, born): Row) -> Findable<u8> {
    Findable {
        name: name.into(),
        room: room.into(),
        place: place.into(),
        born: Some(born),
        ..Findable::new(key)
    }
}

fn index() -> Index<u8> {
    let mut index = Index::default();
    index.follow(ROWS.map(row));
    index
}

/// What is asked and who comes, in this order. The expectations were written down from the table of weights in the
/// module's page and the names above, before the index was.
#[test]
fn whoever_is_meant_is_found() {
    let index = index();
    let asked: [(&str, &[u8]); 38] = [
        // By the beginning of any word of the name, whatever its case and accents.
        ("orla", &[1]),
        ("PENNY", &[1]),
        ("pen", &[5, 1]),
        ("ase strom", &[4]),
        ("Strømvik", &[4]),
        ("quay", &[5]),
        ("omarrow", &[6]),
        ("o'marrow", &[6]),
        // Both names in either order; every piece has to go with something.
        ("pennyquick orla", &[1]),
        ("orla oakhollow", &[]),
        ("zzz", &[]),
        // One slip: a letter missing, too many, another, two swapped, the first one missing.
        ("penyquick", &[1]),
        ("pennnyquick", &[1]),
        ("pennyquyck", &[1]),
        ("pennyqucik", &[1]),
        ("ennyquick", &[1]),
        ("oakholow", &[2]),
        // By the sound.
        ("filipa", &[3]),
        ("garraby", &[3]),
        // By the room, alone and with a name.
        ("14", &[1, 3]),
        ("14b", &[3]),
        ("blue", &[4]),
        ("3 piers", &[2]),
        // By the place; a person of that name goes first.
        ("saltmarsh", &[2, 1]),
        ("tern", &[7, 3, 6, 4]),
        // By the date of birth in any usual order: day first goes before month first.
        ("12.3.1938", &[1, 2]),
        ("12/3/38", &[1, 2]),
        ("1938-03-12", &[1]),
        ("12 March 1938", &[1]),
        ("12. März 1938", &[1]),
        ("12.Maerz.1938", &[1]),
        ("3. Dez. 1938", &[2]),
        ("12 3 1938", &[1, 2]),
        ("12031938", &[1, 2]),
        ("garrowby 12.3.", &[3]),
        ("march 1938", &[1]),
        // By the year; an age that was stated goes with it, but last.
        ("1938", &[2, 1, 4]),
        ("1940", &[5]),
    ];
    for (asked, expected) in asked {
        assert_eq!(index.find(asked), expected, "{asked}");
    }
}

#[test]
fn nothing_asked_gives_everybody_by_family_name() {
    let all = index().find("  ");
    assert_eq!(all, [3, 2, 6, 5, 1, 8, 4, 7]);
}

#[test]
fn a_change_is_followed_and_what_is_gone_is_forgotten() {
    let mut index = index();
    let renamed = Findable {
        name: "Orla Driftwell".into(),
        ..row(ROWS[0])
    };
    index.put(renamed);
    assert_eq!(index.find("driftwell"), [1]);
    assert_eq!(index.find("pennyquick"), [0_u8; 0]);
    assert_eq!(index.find("orla"), [1]);
    index.remove(&1);
    assert_eq!((index.find("orla"), index.len()), (vec![], 7));
    index.follow([row(ROWS[3])]);
    assert_eq!(index.find(""), [4]);
}

#[test]
fn people_are_found_by_a_number_and_shown_as_they_are_now() {
    let mut desk = Desk::new(1);
    let person = PersonId::from_uuid(Uuid::from_u128(1));
    let numbered = PersonDetails {
        identifiers: vec![Identifier {
            number: "SK-4471".into(),
            issuer: "the islands\u{2019} health service".into(),
        }],
        born: Some(Born::Date(day(1938, 3, 12))),
        ..details("Orla", "Pennyquick")
    };
    desk.write(desk.story.put_person(person, numbered));
    let mut index = Index::default();
    index.follow(desk.story.findable_people());
    for asked in ["4471", "sk-4471", "orla 1938"] {
        assert_eq!(index.find(asked), [person], "{asked}");
    }
    desk.write(desk.story.put_person(person, details("Orla", "Driftwell")));
    index.follow(desk.story.findable_people());
    assert_eq!(index.find("driftwell"), [person]);
    assert_eq!(index.find("4471"), []);
}

/// Three people and two homes, of which one was renamed.
fn island() -> Desk {
    let mut desk = Desk::new(1);
    let at = |place: &str, given: &str, family: &str| PersonDetails {
        place: place.into(),
        room: "12".into(),
        ..details(given, family)
    };
    for (number, details) in [
        (1, at("Saltmarsh Court", "Orla", "Pennyquick")),
        (2, at("Saltmarsh Court", "Piers", "Oakhollow")),
        (3, at("Tern House", "Saltmarsh", "Garrowby")),
    ] {
        let person = PersonId::from_uuid(Uuid::from_u128(number));
        desk.write(desk.story.put_person(person, details));
    }
    let home = |name: &str, address: &str, units: &[&str]| PlaceDetails {
        name: name.into(),
        address: address.into(),
        units: units
            .iter()
            .map(|name| Unit {
                name: (*name).into(),
                rooms: vec!["12".into()],
            })
            .collect(),
        ..PlaceDetails::default()
    };
    for (number, details) in [
        (
            7,
            home(
                "Saltmarsh Court",
                "1 Quay Road, Wrackholm",
                &["Harbour wing", "Attic"],
            ),
        ),
        (8, home("The Capstan", "", &[])),
        (8, home("Kelpwright Lodge", "", &["Ground floor"])),
    ] {
        let place = PlaceId::from_uuid(Uuid::from_u128(number));
        desk.write(desk.story.put_place(place, details));
    }
    desk
}

const fn person(number: u128) -> Found {
    Found::Person(PersonId::from_uuid(Uuid::from_u128(number)))
}

const fn place(number: u128) -> Found {
    Found::Place(PlaceId::from_uuid(Uuid::from_u128(number)))
}

/// The expectations were written down from the table of weights in the module's page, before places were in the index.
#[test]
fn places_are_found_by_name_sound_unit_and_former_name() {
    let mut index = Index::default();
    index.follow(island().story.findable());
    let asked: [(&str, &[Found]); 13] = [
        // The home itself, and somebody of that name, before those who live there.
        ("saltmarsh", &[place(7), person(3), person(2), person(1)]),
        ("saltmarsh court", &[place(7), person(2), person(1)]),
        ("kelp", &[place(8)]),
        // By the sound, and with one slip.
        ("salltmarrsh", &[place(7), person(3), person(2), person(1)]),
        ("kelpwrigt", &[place(8)]),
        // By a unit, by the address, by what it was called before.
        ("harbour", &[place(7)]),
        ("attic", &[place(7)]),
        ("wrackholm", &[place(7)]),
        ("quay road", &[place(7)]),
        ("capstan", &[place(8)]),
        ("ground floor", &[place(8)]),
        // A room is somebody's.
        ("12", &[person(3), person(2), person(1)]),
        ("saltmarsh zzz", &[]),
    ];
    for (asked, expected) in asked {
        assert_eq!(index.find(asked), expected, "{asked}");
    }
}

#[test]
fn a_place_that_changes_is_followed() {
    let mut desk = island();
    let mut index = Index::default();
    index.follow(desk.story.findable());
    let details = PlaceDetails {
        name: "Brinecote House".into(),
        ..PlaceDetails::default()
    };
    let seven = PlaceId::from_uuid(Uuid::from_u128(7));
    desk.write(desk.story.put_place(seven, details));
    index.follow(desk.story.findable());
    assert_eq!(index.find("brinecote"), [place(7)]);
    assert_eq!(index.find("harbour"), []);
    // By its former name after whoever is called so.
    assert_eq!(index.find("saltmarsh").first(), Some(&person(3)));
    assert!(index.find("saltmarsh").contains(&place(7)));
}

proptest! {
    /// Whatever was put in and taken out before, the index answers as one that was made of what is there.
    #[test]
    fn an_index_that_was_kept_up_is_one_made_anew(
        changes in prop::collection::vec((0..6_u8, 0..8_usize, any::<bool>()), 0..30),
        asked in "[a-z0-9 ./]{0,8}",
    ) {
        let mut kept = Index::default();
        let mut stands = std::collections::BTreeMap::new();
        for (key, of, gone) in changes {
            let thing = Findable { key, ..row(ROWS[of]) };
            if gone {
                kept.remove(&key);
                stands.remove(&key);
            } else {
                stands.insert(key, thing.clone());
                kept.put(thing);
            }
        }
        let mut anew = Index::default();
        anew.follow(stands.into_values());
        for asked in [asked.as_str(), "pennyquik", "tern", "1938", ""] {
            let sorted = |mut found: Vec<u8>| { found.sort_unstable(); found };
            prop_assert_eq!(sorted(kept.find(asked)), sorted(anew.find(asked)), "{}", asked);
        }
    }

    /// Nothing that anybody types brings it down, and nobody comes twice.
    #[test]
    fn anything_may_be_asked(asked in ".{0,40}") {
        let found = index().find(&asked);
        let once: std::collections::BTreeSet<u8> = found.iter().copied().collect();
        prop_assert_eq!(found.len(), once.len());
    }
}
