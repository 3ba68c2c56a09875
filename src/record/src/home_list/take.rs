//! The good rows of a list as entries, to be written together or not at all.

use std::collections::BTreeMap;

use super::judge::Listed;
use crate::ids::{PersonId, PlaceId};
use crate::person::{Born, PersonDetails};
use crate::plan::Planned;
use crate::rounds::{PlaceDetails, plain, same};
use crate::story::Story;

/// One entry to write, and whom it is about.
#[derive(Clone, Debug, PartialEq)]
pub struct ToWrite {
    /// The entry.
    pub planned: Planned,
    /// Whom it is about, if anybody.
    pub about: Option<PersonId>,
}

/// What taking a list comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Taken {
    /// What is to be written, in this order: people first, the place last.
    pub writes: Vec<ToWrite>,
    /// Who was on the list, in its order, whether new or known.
    pub people: Vec<PersonId>,
}

impl Story {
    /// Plans the good rows of a list that a place sent. New people get the names on the wire that `new_id` makes. Of somebody known,
    /// place and room follow the list, and what was blank is filled in; nothing else is touched, and nothing at all where two
    /// versions of the details stand unsettled.
    pub fn take_list(
        &self,
        place: PlaceId,
        details: &PlaceDetails,
        rows: &[Listed],
        mut new_id: impl FnMut() -> PersonId,
    ) -> Taken {
        let doors = Doors::of(details, rows);
        let mut taken = Taken::default();
        for row in rows {
            let person = row.known.unwrap_or_else(&mut new_id);
            taken.people.push(person);
            let room = doors.room(row);
            if let Some(details) = self.details_of(row, &details.name, &room) {
                taken.writes.push(ToWrite {
                    planned: self.put_person(person, details),
                    about: Some(person),
                });
            }
        }
        let mut grown = details.clone();
        for row in rows.iter().filter(|row| !row.unit.is_empty()) {
            grown.add_room(&row.unit, &doors.room(row));
        }
        if self.may_follow(&place, &grown) {
            taken.writes.push(ToWrite {
                planned: self.put_place(place, grown),
                about: None,
            });
        }
        taken
    }

    /// Whether a place is new, or changes and nobody has to choose between two versions of it first.
    fn may_follow(&self, place: &PlaceId, details: &PlaceDetails) -> bool {
        let Some(known) = self.place(place) else {
            return true;
        };
        let settled = known.versions().settled();
        settled.is_some_and(|version| version.value != details)
    }

    /// The details that a row gives somebody; nothing where it tells nothing new.
    fn details_of(&self, row: &Listed, place: &str, room: &str) -> Option<PersonDetails> {
        let known = row.known.and_then(|known| self.person(&known));
        let before = match known {
            Some(person) => Some(person.versions().settled()?.value),
            None => None,
        };
        let mut after = before.cloned().unwrap_or_else(|| PersonDetails {
            name: row.name.clone(),
            ..PersonDetails::default()
        });
        after.born = row.born.map(Born::Date).or(after.born);
        place.clone_into(&mut after.place);
        if !room.is_empty() {
            room.clone_into(&mut after.room);
        }
        after.identifier = after.identifier.or_else(|| row.identifier.clone());
        if after.note.trim().is_empty() {
            after.note.clone_from(&row.note);
        }
        (before != Some(&after)).then_some(after)
    }
}

/// Which rooms stand in more than one unit: their number alone would not lead to a door.
struct Doors {
    units: BTreeMap<String, Vec<String>>,
}

impl Doors {
    fn of(place: &PlaceDetails, rows: &[Listed]) -> Self {
        let mut doors = Self {
            units: BTreeMap::new(),
        };
        for unit in &place.units {
            for room in &unit.rooms {
                doors.note(&unit.name, room);
            }
        }
        for row in rows {
            doors.note(&row.unit, &row.room);
        }
        doors
    }

    fn note(&mut self, unit: &str, room: &str) {
        if !unit.trim().is_empty() && !room.trim().is_empty() {
            let units = self.units.entry(plain(room)).or_default();
            if !units.iter().any(|known| same(known, unit)) {
                units.push(unit.to_owned());
            }
        }
    }

    /// `14`, or `West 14` where East has a 14 as well.
    fn room(&self, row: &Listed) -> String {
        let many = self
            .units
            .get(&plain(&row.room))
            .is_some_and(|units| units.len() > 1);
        if many && !row.unit.is_empty() {
            format!("{} {}", row.unit, row.room)
        } else {
            row.room.clone()
        }
    }
}
