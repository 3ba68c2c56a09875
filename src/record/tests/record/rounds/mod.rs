//! Places, rounds and what became of visits.

mod days;
mod due;
mod folded;
mod kept;
mod notice;
mod order;
mod places;
mod standing;

use chrono::NaiveDateTime;
use record::{
    ExamId, Name, PersonDetails, PersonId, PlaceDetails, PlaceId, RoundDetails, RoundId, Unit,
    Visit, VisitState,
};
use uuid::Uuid;

use crate::desk::{Desk, day};

pub const PLACE: PlaceId = PlaceId::from_uuid(Uuid::from_u128(0x91));
pub const ROUND: RoundId = RoundId::from_uuid(Uuid::from_u128(0x71));

pub fn round(n: u128) -> RoundId {
    RoundId::from_uuid(Uuid::from_u128(0x70 + n))
}

pub fn person(n: u128) -> PersonId {
    PersonId::from_uuid(Uuid::from_u128(0xA0 + n))
}

pub fn exam(n: u128) -> ExamId {
    ExamId::from_uuid(Uuid::from_u128(0xE0 + n))
}

pub fn court() -> PlaceDetails {
    PlaceDetails {
        name: "Saltmarsh Court".into(),
        units: vec![
            unit("Harbour floor", &["21", "22"]),
            unit("Garden floor", &["3", "11"]),
        ],
        ..PlaceDetails::default()
    }
}

pub fn unit(name: &str, rooms: &[&str]) -> Unit {
    Unit {
        name: name.into(),
        rooms: rooms.iter().map(|room| (*room).to_owned()).collect(),
    }
}

pub fn in_room(family: &str, room: &str) -> PersonDetails {
    PersonDetails {
        name: Name {
            given: "A.".into(),
            family: family.into(),
        },
        place: "Saltmarsh Court".into(),
        room: room.into(),
        ..PersonDetails::default()
    }
}

/// A place, five people in its rooms, and a round of all of them on 4 March 2026 in the order in which they were put down.
pub fn desk() -> Desk {
    let mut desk = Desk::new(1);
    desk.write(desk.story.put_place(PLACE, court()));
    for (n, family, room) in [
        (1, "Wrenfold", "22"),
        (2, "Ellingsea", "11"),
        (3, "Castlemere", ""),
        (4, "Quillane", "3"),
        (5, "Tidewell", "21"),
    ] {
        desk.write(desk.story.put_person(person(n), in_room(family, room)));
    }
    put_round(&mut desk, ROUND, day(2026, 3, 4), &[1, 2, 3, 4, 5]);
    desk
}

pub fn put_round(desk: &mut Desk, id: RoundId, date: chrono::NaiveDate, people: &[u128]) {
    let mut details = RoundDetails::new(date, Some(PLACE));
    details.add(people.iter().copied().map(person));
    desk.write(desk.story.put_round(id, details));
}

pub fn at(hour: u32, minute: u32) -> NaiveDateTime {
    day(2026, 3, 4).and_hms_opt(hour, minute, 0).unwrap()
}

pub fn mark(desk: &mut Desk, who: u128, state: VisitState) {
    let visit = Visit {
        state,
        word: String::new(),
        at: at(10, 20),
    };
    let planned = desk.story.mark_visit(&ROUND, person(who), visit);
    desk.write(planned.unwrap());
}
