//! People as they can be found.

use super::Findable;
use crate::ids::PersonId;
use crate::person::Person;
use crate::story::Story;

impl From<&Person> for Findable<PersonId> {
    fn from(person: &Person) -> Self {
        let details = person.details();
        Self {
            key: person.id(),
            name: details.name.to_string(),
            numbers: details.numbers().map(str::to_owned).collect(),
            room: details.room.clone(),
            place: details.place.clone(),
            born: details.born,
        }
    }
}

impl Story {
    /// Everybody on record, as they can be found: give it to [`Index::follow`](super::Index::follow).
    pub fn findable_people(&self) -> impl Iterator<Item = Findable<PersonId>> {
        self.people().into_iter().map(Findable::from)
    }
}
