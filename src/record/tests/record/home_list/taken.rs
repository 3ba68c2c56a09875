//! The good rows as entries.

use record::home_list::Taken;
use record::{Body, Born, PersonDetails, PlaceDetails, PlaceId, Unit};
use uuid::Uuid;

use super::{HOME, counting, good, judged};
use crate::desk::{Desk, PERSON, day, details};

const PLACE: PlaceId = PlaceId::from_uuid(Uuid::from_u128(0x91));

fn home() -> PlaceDetails {
    PlaceDetails {
        name: HOME.into(),
        ..PlaceDetails::default()
    }
}

fn take(desk: &Desk, list: &str) -> Taken {
    let rows = good(judged(list, &desk.story));
    desk.story.take_list(PLACE, &home(), &rows, counting(0xF0))
}

fn write(desk: &mut Desk, taken: Taken) {
    for write in taken.writes {
        desk.write(write.planned);
    }
}

const LIST: &str = "Name;DOB;Room;Floor;Notes;ID\nOrla Pennyquick;31/01/1940;14;Ground floor;cataract watched;H-14\nIvo Castlemere;04/05/1946;2;Ground floor;;\n";

#[test]
fn new_people_come_whole_and_the_place_learns_its_rooms() {
    let mut desk = Desk::new(1);
    let taken = take(&desk, LIST);
    assert_eq!((taken.people.len(), taken.writes.len()), (2, 3));
    assert!(
        taken
            .writes
            .iter()
            .zip(&taken.people)
            .all(|(write, person)| write.about == Some(*person))
    );
    write(&mut desk, taken);
    let people = desk.story.people_at(&PLACE);
    let orla = people
        .iter()
        .find(|person| person.details().name.given == "Orla")
        .unwrap()
        .details();
    assert_eq!(
        (
            orla.room.as_str(),
            orla.note.as_str(),
            orla.identifier.as_deref()
        ),
        ("14", "cataract watched", Some("H-14"))
    );
    assert_eq!(orla.born, Some(Born::Date(day(1940, 1, 31))));
    let place = desk.story.place(&PLACE).unwrap().details();
    let rooms = vec!["2".into(), "14".into()];
    assert_eq!(
        place.units,
        [Unit {
            name: "Ground floor".into(),
            rooms
        }]
    );
}

#[test]
fn the_same_list_twice_writes_nothing_the_second_time() {
    let mut desk = Desk::new(1);
    let first = take(&desk, LIST);
    write(&mut desk, first.clone());
    let rows = good(judged(LIST, &desk.story));
    let place = desk.story.place(&PLACE).unwrap().details().clone();
    let again = desk
        .story
        .take_list(PLACE, &place, &rows, || panic!("nobody is new"));
    assert_eq!(again.people, first.people);
    assert!(again.writes.is_empty(), "{:?}", again.writes);
}

#[test]
fn somebody_known_follows_the_list_and_keeps_what_it_does_not_tell() {
    let mut desk = Desk::new(1);
    let before = PersonDetails {
        born: Some(Born::Date(day(1940, 1, 31))),
        place: "Gullhaven".into(),
        room: "3".into(),
        note: "hears on the left".into(),
        ..details("Orla", "Pennyquick")
    };
    desk.write(desk.story.put_person(PERSON, before));
    let taken = take(&desk, LIST);
    assert_eq!(taken.people[0], PERSON);
    write(&mut desk, taken);
    let orla = desk.story.person(&PERSON).unwrap().details();
    assert_eq!((orla.place.as_str(), orla.room.as_str()), (HOME, "14"));
    assert_eq!(
        (orla.note.as_str(), orla.identifier.as_deref()),
        ("hears on the left", Some("H-14"))
    );
    assert_eq!(desk.story.people().len(), 2, "nobody is doubled");
}

#[test]
fn two_unsettled_versions_of_a_person_are_left_for_somebody_to_choose() {
    let mut one = Desk::new(1);
    one.write(one.story.put_person(
        PERSON,
        PersonDetails {
            place: HOME.into(),
            ..details("Orla", "Pennyquick")
        },
    ));
    let mut two = Desk::new(2);
    two.hear(&one);
    for (desk, room) in [(&mut one, "3"), (&mut two, "4")] {
        let details = PersonDetails {
            place: HOME.into(),
            room: room.into(),
            ..details("Orla", "Pennyquick")
        };
        desk.write(desk.story.put_person(PERSON, details));
    }
    one.hear(&two);
    let taken = take(&one, LIST);
    assert_eq!(taken.people[0], PERSON);
    let about = taken.writes.iter().any(|write| write.about == Some(PERSON));
    assert!(!about && matches!(taken.writes.last().unwrap().planned.body, Body::Place(_)));
}

#[test]
fn a_room_of_two_units_is_called_by_both_names() {
    let mut desk = Desk::new(1);
    let list =
        "Name;Room;Wing\nOrla Pennyquick;1;East\nIvo Castlemere;1;West\nMaud Ellingsea;2;West\n";
    let taken = take(&desk, list);
    let people = taken.people.clone();
    write(&mut desk, taken);
    let rooms: Vec<&str> = people
        .iter()
        .map(|person| desk.story.person(person).unwrap().details().room.as_str())
        .collect();
    assert_eq!(rooms, ["East 1", "West 1", "2"]);
    assert_eq!(
        desk.story.by_room(Some(PLACE), &people),
        [people[0], people[2], people[1]]
    );
}
