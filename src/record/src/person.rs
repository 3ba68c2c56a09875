//! Who a person is: name, birth, where to find them.

use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Serialize};

use crate::body::Body;
use crate::check::{FieldError, blank};
use crate::entry::Entry;
use crate::ids::PersonId;
use crate::lane::{Heads, Lane, Version};
use crate::summary::Age;

/// A person's name, as two fields.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Name {
    /// The given name or names.
    pub given: String,
    /// The family name.
    pub family: String,
}

impl std::fmt::Display for Name {
    /// `Orla Pennyquick`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let both = format!("{} {}", self.given.trim(), self.family.trim());
        f.write_str(both.trim())
    }
}

/// What is known of a person's birth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Born {
    /// The date itself.
    Date(NaiveDate),
    /// Only an age, as somebody stated it.
    Stated {
        /// The age in whole years.
        years: u16,
        /// The year in which it was stated, so that the age can grow.
        in_year: i32,
    },
}

impl Born {
    /// The age on a day: exact from a date, about from a stated age. Nothing when `on` lies before the birth.
    pub fn age_on(&self, on: NaiveDate) -> Option<Age> {
        match *self {
            Self::Date(born) => Some(Age {
                years: u16::try_from(on.years_since(born)?).ok()?,
                exact: true,
            }),
            Self::Stated { years, in_year } => {
                let grown = i32::from(years).checked_add(on.year().checked_sub(in_year)?)?;
                Some(Age {
                    years: u16::try_from(grown).ok()?,
                    exact: false,
                })
            }
        }
    }
}

/// Everything written down about who a person is. A change writes a whole new version.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct PersonDetails {
    /// The name.
    pub name: Name,
    /// The birth, where anything is known of it.
    pub born: Option<Born>,
    /// The home or address where the person is visited.
    #[serde(default)]
    pub place: String,
    /// The room there.
    #[serde(default)]
    pub room: String,
    /// A number by which others know the person, where the clinic uses one.
    #[serde(default)]
    pub identifier: Option<String>,
    /// Anything to remember before knocking.
    #[serde(default)]
    pub note: String,
}

impl PersonDetails {
    /// The age on a day, where it can be told.
    pub fn age_on(&self, on: NaiveDate) -> Option<Age> {
        self.born?.age_on(on)
    }

    /// One plain sentence for each field that can't be kept as it is, given today's date.
    pub fn check(&self, today: NaiveDate) -> Vec<FieldError> {
        let mut found = Vec::new();
        if blank(&self.name.given) && blank(&self.name.family) {
            found.push(FieldError::new("name", "a person needs at least one name"));
        }
        match self.born {
            Some(Born::Date(date)) if date > today => {
                found.push(FieldError::new(
                    "born",
                    "the date of birth lies in the future",
                ));
            }
            Some(Born::Stated { in_year, .. }) if in_year > today.year() => {
                found.push(FieldError::new(
                    "born",
                    "the age was stated in a year that has not come yet",
                ));
            }
            _ => {}
        }
        if self.age_on(today).is_some_and(|age| age.years > OLDEST) {
            found.push(FieldError::new(
                "born",
                format!("that makes the person more than {OLDEST} years old"),
            ));
        }
        found
    }
}

/// Ages above this are taken for a slip of the year. Common practice, no source.
const OLDEST: u16 = 125;

/// A person as the entries tell it.
#[derive(Clone, Debug, PartialEq)]
pub struct Person {
    pub(crate) id: PersonId,
    pub(crate) lane: Lane,
}

impl Person {
    /// The person's name on the wire.
    pub const fn id(&self) -> PersonId {
        self.id
    }

    /// The versions of the details that nothing has replaced: one, or several that nobody has settled.
    pub fn versions(&self) -> Heads<'_, PersonDetails> {
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
    /// Never: the fold puts nobody on record without details, and a version is replaced only by another.
    pub fn details(&self) -> &PersonDetails {
        let latest = self.versions().latest();
        latest
            .expect("a person is on record from the first version of the details on")
            .value
    }
}

fn details(entry: &Entry) -> Option<&PersonDetails> {
    match &entry.body {
        Body::Person { details, .. } => Some(details),
        _ => None,
    }
}
