//! People and places as they can be found, in one index.

use super::Findable;
use crate::ids::{PersonId, PlaceId};
use crate::rounds::Place;
use crate::story::Story;

/// What can be found on record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Found {
    /// Somebody.
    Person(PersonId),
    /// A home or an address, by its name, its units, its address, and what it was called before.
    Place(PlaceId),
}

impl From<&Place> for Findable<Found> {
    /// Its name is its name; whatever else it goes by weighs what a place weighs. Rooms are left out: a number means
    /// somebody.
    fn from(place: &Place) -> Self {
        let details = place.details();
        let units = details.units.iter().map(|unit| unit.name.as_str());
        let words = place.names().chain(units).chain([details.address.as_str()]);
        Self {
            name: details.name.clone(),
            place: words.collect::<Vec<_>>().join(" "),
            ..Self::new(Found::Place(place.id()))
        }
    }
}

impl Story {
    /// Everybody and every place on record, as they can be found: give it to [`Index::follow`](super::Index::follow).
    pub fn findable(&self) -> impl Iterator<Item = Findable<Found>> {
        let people = self
            .findable_people()
            .map(|one| one.known_as(Found::Person));
        people.chain(self.places().into_iter().map(Findable::from))
    }
}
