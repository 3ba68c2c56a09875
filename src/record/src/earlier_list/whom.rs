//! Whose findings a row tells: somebody on record for certain, or nobody.

use ::words::record::lists as say;
use std::collections::BTreeMap;

use chrono::NaiveDate;

use crate::home_list::key;
use crate::person::{Born, Name, Person};
use crate::story::Story;

/// What a row says of a person.
pub(super) struct Said<'a> {
    pub name: Option<Name>,
    pub born: Option<NaiveDate>,
    pub number: &'a str,
}

/// Everybody on record, by number and by name.
pub(super) struct Whom<'a> {
    by_number: BTreeMap<String, Vec<&'a Person>>,
    by_name: BTreeMap<(String, String), Vec<&'a Person>>,
}

impl<'a> Whom<'a> {
    pub fn of(story: &'a Story) -> Self {
        let (mut by_number, mut by_name): (BTreeMap<_, Vec<_>>, BTreeMap<_, Vec<_>>) =
            Default::default();
        for person in story.people() {
            for number in person.details().numbers() {
                by_number.entry(bare(number)).or_default().push(person);
            }
            let name = key(&person.details().name);
            by_name.entry(name).or_default().push(person);
        }
        Self { by_number, by_name }
    }

    /// The person of this number, if what else is said is theirs as well; without a number the one of this name and date of
    /// birth.
    ///
    /// # Errors
    /// One plain sentence.
    pub fn find(&self, said: &Said<'_>) -> Result<&'a Person, String> {
        let number = bare(said.number);
        let found = if number.is_empty() {
            self.named(said)?
        } else {
            let of_number = self.by_number.get(&number);
            of_number.cloned().unwrap_or_default()
        };
        match found.as_slice() {
            [] => Err(say::nobody_is_this().to_owned()),
            [person] => agrees(person, said).map(|()| *person),
            _ => Err(say::several_may_be().to_owned()),
        }
    }

    fn named(&self, said: &Said<'_>) -> Result<Vec<&'a Person>, String> {
        let (Some(name), Some(born)) = (&said.name, said.born) else {
            return Err(say::needs_number().to_owned());
        };
        let namesakes = self.by_name.get(&key(name)).cloned().unwrap_or_default();
        let theirs = namesakes.into_iter();
        Ok(theirs
            .filter(|person| born_on(person) == Some(born))
            .collect())
    }
}

/// Whether everything that is said is this person's.
fn agrees(person: &Person, said: &Said<'_>) -> Result<(), String> {
    let theirs = &person.details().name;
    if said
        .name
        .as_ref()
        .is_some_and(|name| key(name) != key(theirs))
    {
        return Err(say::number_is_theirs(&theirs));
    }
    match (said.born, born_on(person)) {
        (Some(said), Some(known)) if said != known => Err(say::born_otherwise(&theirs)),
        _ => Ok(()),
    }
}

/// A number without what people put between its parts.
fn bare(number: &str) -> String {
    let signs = number.chars().filter(|sign| sign.is_alphanumeric());
    signs.flat_map(char::to_lowercase).collect()
}

fn born_on(person: &Person) -> Option<NaiveDate> {
    match person.details().born {
        Some(Born::Date(date)) => Some(date),
        _ => None,
    }
}
