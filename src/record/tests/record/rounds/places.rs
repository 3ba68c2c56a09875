//! Places, by the names that people call them.

use record::{PlaceDetails, Unit};

use super::{PLACE, court, desk, in_room, person, unit};

#[test]
fn people_belong_to_a_place_by_its_name_and_by_its_old_ones() {
    let mut desk = desk();
    assert_eq!(desk.story.people_at(&PLACE).len(), 5);
    let renamed = PlaceDetails {
        name: "Saltmarsh House".into(),
        ..court()
    };
    desk.write(desk.story.put_place(PLACE, renamed));
    let mut moved = in_room("Wrenfold", "22");
    moved.place = "  saltmarsh  HOUSE ".into();
    desk.write(desk.story.put_person(person(1), moved));
    assert_eq!(desk.story.people_at(&PLACE).len(), 5);
    assert_eq!(
        desk.story
            .place_called("saltmarsh court")
            .map(record::Place::id),
        Some(PLACE)
    );
    assert!(
        desk.story.place_called("").is_none() && desk.story.place_called("Gullhaven").is_none()
    );
}

#[test]
fn a_place_needs_a_name_and_each_unit_its_own() {
    let said = |details: PlaceDetails| -> Vec<String> {
        details
            .check()
            .into_iter()
            .map(|error| error.field)
            .collect()
    };
    assert!(said(court()).is_empty());
    assert_eq!(said(PlaceDetails::default()), ["name"]);
    let mut twice = court();
    twice.units.push(unit("garden FLOOR", &[]));
    twice.units.push(unit(" ", &[]));
    assert_eq!(said(twice), ["units.2", "units.3"]);
}

#[test]
fn a_place_that_only_stands_in_words_is_offered_once() {
    let mut desk = desk();
    assert!(desk.story.places_in_words().is_empty());
    for (n, place) in [(6, "Gullhaven"), (7, " gullhaven "), (8, "")] {
        let mut details = in_room("Garrowby", "1");
        details.place = place.into();
        desk.write(desk.story.put_person(person(n), details));
    }
    assert_eq!(desk.story.places_in_words(), ["Gullhaven"]);
}

#[test]
fn units_are_read_as_they_are_written() {
    let lines = "Ground floor: 3, 10a\n\nLounge\n Attic :, 40 ,\n";
    let units = Unit::read_lines(lines);
    assert_eq!(
        units,
        [
            unit("Ground floor", &["3", "10a"]),
            unit("Lounge", &[]),
            unit("Attic", &["40"])
        ]
    );
    let written: Vec<String> = units.iter().map(Unit::to_string).collect();
    assert_eq!(written, ["Ground floor: 3, 10a", "Lounge", "Attic: 40"]);
    assert_eq!(Unit::read_lines(&written.join("\n")), units);
}

#[test]
fn a_room_is_put_into_its_unit_once_and_in_order() {
    let mut place = court();
    place.add_room("garden floor", "9");
    place.add_room("Garden floor", "11");
    place.add_room("Attic", "40");
    assert_eq!(place.units[1], unit("Garden floor", &["3", "9", "11"]));
    assert_eq!(place.units[2], unit("Attic", &["40"]));
    assert_eq!((place.unit_of("40"), place.unit_of("41")), (Some(2), None));
}
