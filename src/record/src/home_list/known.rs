//! Who of a list is on record already.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use crate::person::{Born, Name, Person};
use crate::rounds::{Place, plain};
use crate::story::Story;

/// Everybody on record by name, so that a long list is matched in one go.
pub struct Known<'a> {
    by_name: BTreeMap<(String, String), Vec<&'a Person>>,
    place: Option<&'a Place>,
    place_name: String,
}

impl<'a> Known<'a> {
    pub fn of(story: &'a Story, place_name: &str) -> Self {
        let mut by_name: BTreeMap<_, Vec<_>> = BTreeMap::new();
        for person in story.people() {
            by_name
                .entry(key(&person.details().name))
                .or_default()
                .push(person);
        }
        Self {
            by_name,
            place: story.place_called(place_name),
            place_name: plain(place_name),
        }
    }

    /// The person of the same name and date of birth. Where one of the two dates is not known, the same name at the same place will
    /// do: the home sends it of somebody who lives there.
    pub fn find(&self, name: &Name, born: Option<NaiveDate>) -> Option<&'a Person> {
        let namesakes = self.by_name.get(&key(name))?;
        let dated = namesakes
            .iter()
            .find(|person| born.is_some() && born_on(person) == born);
        let here = || {
            let mut undated = namesakes.iter();
            undated.find(|person| {
                (born.is_none() || born_on(person).is_none()) && self.is_here(person)
            })
        };
        dated.or_else(here).copied()
    }

    fn is_here(&self, person: &Person) -> bool {
        let theirs = &person.details().place;
        plain(theirs) == self.place_name || self.place.is_some_and(|place| place.goes_by(theirs))
    }
}

pub fn key(name: &Name) -> (String, String) {
    (plain(&name.family), plain(&name.given))
}

fn born_on(person: &Person) -> Option<NaiveDate> {
    match person.details().born {
        Some(Born::Date(date)) => Some(date),
        _ => None,
    }
}
