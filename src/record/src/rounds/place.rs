//! A home or an address where people are visited.

use ::words::record::rounds as say;
use std::fmt;

use serde::{Deserialize, Serialize};

use super::room_order;
use crate::body::Body;
use crate::check::{Checks, FieldError};
use crate::entry::Entry;
use crate::ids::PlaceId;
use crate::lane::{Heads, Lane, Version};

/// Everything written down about a place. A change writes a whole new version.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct PlaceDetails {
    /// What it is called. People belong to it by this name.
    pub name: String,
    /// Street and town.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub address: String,
    /// Its units, in the order in which they are walked.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub units: Vec<Unit>,
    /// Whom to ask for, and how to reach them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub contact: String,
    /// What to know at the door.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub door: String,
    /// Whether nobody is visited there any more.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub past: bool,
}

/// A part of a place: a floor, a wing, a house.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Unit {
    /// What it is called.
    pub name: String,
    /// Its rooms, as they are marked on the doors.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub rooms: Vec<String>,
}

impl PlaceDetails {
    /// One plain sentence for each field that can't be kept as it is.
    pub fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.text("name", &self.name, say::ask_place_name());
        for (at, unit) in self.units.iter().enumerate() {
            let field = format!("units.{at}");
            checks.text(&*field, &unit.name, say::ask_unit_name());
            if self.units[..at]
                .iter()
                .any(|other| same(&other.name, &unit.name))
            {
                checks.say(field, say::two_units(&unit.name.trim()));
            }
        }
        checks.done()
    }

    /// Where a room lies in the order of units, counted from 0; nothing for a room of no unit.
    pub fn unit_of(&self, room: &str) -> Option<usize> {
        let has = |unit: &Unit| unit.rooms.iter().any(|known| same(known, room));
        self.units.iter().position(has)
    }

    /// Puts a room into a unit, and the unit into the place, where they are not there yet. The rooms stay in their order.
    pub fn add_room(&mut self, unit: &str, room: &str) {
        let (unit, room) = (unit.trim(), room.trim());
        let known = self.units.iter().position(|known| same(&known.name, unit));
        let at = known.unwrap_or_else(|| {
            self.units.push(Unit {
                name: unit.to_owned(),
                rooms: Vec::new(),
            });
            self.units.len() - 1
        });
        let rooms = &mut self.units[at].rooms;
        if !room.is_empty() && !rooms.iter().any(|known| same(known, room)) {
            rooms.push(room.to_owned());
            rooms.sort_by(|one, other| room_order(one, other));
        }
    }
}

impl Unit {
    /// Units as one writes them down, one to a line: `Ground floor: 3, 5, 10a`. A line without a colon is a unit of no rooms yet.
    pub fn read_lines(text: &str) -> Vec<Self> {
        let lines = text.lines().filter(|line| !line.trim().is_empty());
        lines.map(Self::read_line).collect()
    }

    fn read_line(line: &str) -> Self {
        let (name, rooms) = line.split_once(':').unwrap_or((line, ""));
        let rooms = rooms.split(',').map(str::trim);
        Self {
            name: name.trim().to_owned(),
            rooms: rooms
                .filter(|room| !room.is_empty())
                .map(str::to_owned)
                .collect(),
        }
    }
}

impl fmt::Display for Unit {
    /// As [`Unit::read_lines`] reads it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.name)?;
        if self.rooms.is_empty() {
            return Ok(());
        }
        write!(f, ": {}", self.rooms.join(", "))
    }
}

/// Whether two names are the same but for case and space.
pub(crate) fn same(one: &str, other: &str) -> bool {
    plain(one) == plain(other)
}

/// A name without what differs from hand to hand: case and space.
pub(crate) fn plain(name: &str) -> String {
    let words: Vec<_> = name.split_whitespace().map(str::to_lowercase).collect();
    words.join(" ")
}

/// A place as the entries tell it.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    pub(crate) id: PlaceId,
    pub(crate) lane: Lane,
}

impl Place {
    /// The place's name on the wire.
    pub const fn id(&self) -> PlaceId {
        self.id
    }

    /// The versions that nothing has replaced: one, or several that nobody has settled.
    pub fn versions(&self) -> Heads<'_, PlaceDetails> {
        let version = |entry| {
            Some(Version {
                entry,
                value: details(entry)?,
            })
        };
        Heads::from_versions(self.lane.heads().filter_map(version).collect())
    }

    /// The details to show: of several unsettled versions the one written last.
    ///
    /// # Panics
    /// Never: the fold knows no place without details, and a version is replaced only by another.
    pub fn details(&self) -> &PlaceDetails {
        let latest = self.versions().latest();
        latest
            .expect("a place is on record from the first version of its details on")
            .value
    }

    /// Whether it goes or ever went by this name: people who were put down under an old name still belong to it.
    pub fn goes_by(&self, name: &str) -> bool {
        !plain(name).is_empty() && self.names().any(|known| same(known, name))
    }

    /// Every name that it goes or ever went by, as often as it was written.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let written = self.lane.all().filter_map(details);
        written.map(|details| details.name.as_str())
    }
}

fn details(entry: &Entry) -> Option<&PlaceDetails> {
    match &entry.body {
        Body::Place(written) => Some(&written.details),
        _ => None,
    }
}
