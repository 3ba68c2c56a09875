//! The fields as typed, and the details that they make.

use super::rows::Rows;
use crate::edge::clock::today;
use ::words::app::person_form as say;
use chrono::{Datelike, NaiveDate};
use leptos::prelude::*;
use record::{Born, Contact, Doctor, Identifier, LooksAt, Name, PersonDetails};

/// Which field can't be read, and why.
type Unread = (String, String);

/// The fields as typed.
#[derive(Clone, Copy)]
pub struct Typed {
    pub given: RwSignal<String>,
    pub family: RwSignal<String>,
    pub born: RwSignal<String>,
    pub age: RwSignal<String>,
    pub place: RwSignal<String>,
    pub room: RwSignal<String>,
    pub note: RwSignal<String>,
    pub hearing: RwSignal<String>,
    pub language: RwSignal<String>,
    pub doctor: RwSignal<String>,
    pub practice: RwSignal<String>,
    pub doctor_reach: RwSignal<String>,
    pub identifiers: Rows,
    pub contacts: Rows,
    pub looks_at: Rows,
    /// The birth as it was known, and the age that was shown for it: left alone, it stays as it was stated.
    before: StoredValue<(Option<Born>, String)>,
}

impl Typed {
    pub fn of(known: PersonDetails) -> Self {
        let identifiers = known.known_as().into_iter();
        let identifiers = Rows::of(identifiers.map(|known| vec![known.number, known.issuer]));
        let contacts = known.contacts.into_iter();
        let contacts =
            Rows::of(contacts.map(|contact| vec![contact.name, contact.relation, contact.reach]));
        let looks_at = known.looks_at.into_iter();
        let looks_at = Rows::of(looks_at.map(|seen| {
            let distance = seen.distance();
            vec![seen.what, distance]
        }));
        let (date, age) = match known.born {
            Some(Born::Date(date)) => (date.format("%Y-%m-%d").to_string(), String::new()),
            Some(stated) => {
                let age = stated.age_on(today());
                let years = age.map(|age| age.years.to_string());
                (String::new(), years.unwrap_or_default())
            }
            None => (String::new(), String::new()),
        };
        Self {
            given: RwSignal::new(known.name.given),
            family: RwSignal::new(known.name.family),
            born: RwSignal::new(date),
            age: RwSignal::new(age.clone()),
            place: RwSignal::new(known.place),
            room: RwSignal::new(known.room),
            note: RwSignal::new(known.note),
            hearing: RwSignal::new(known.hearing),
            language: RwSignal::new(known.language),
            doctor: RwSignal::new(known.doctor.name),
            practice: RwSignal::new(known.doctor.practice),
            doctor_reach: RwSignal::new(known.doctor.reach),
            identifiers,
            contacts,
            looks_at,
            before: StoredValue::new((known.born, age)),
        }
    }

    /// The details, or the field that can't be read and why.
    pub fn read(&self) -> Result<PersonDetails, Unread> {
        let text = |field: RwSignal<String>| field.get_untracked().trim().to_owned();
        Ok(PersonDetails {
            name: Name {
                given: text(self.given),
                family: text(self.family),
            },
            born: self.born()?,
            place: text(self.place),
            room: text(self.room),
            identifier: None,
            note: text(self.note),
            identifiers: read(self.identifiers, |[number, issuer]| {
                Ok(Identifier { number, issuer })
            })?,
            contacts: read(self.contacts, |[name, relation, reach]| {
                Ok(Contact {
                    name,
                    relation,
                    reach,
                })
            })?,
            doctor: Doctor {
                name: text(self.doctor),
                practice: text(self.practice),
                reach: text(self.doctor_reach),
            },
            hearing: text(self.hearing),
            language: text(self.language),
            looks_at: read(self.looks_at, |[what, distance]| {
                let at_cm = LooksAt::read_distance(&distance)
                    .map_err(|error| ("looks_at".to_owned(), error.to_string()))?;
                Ok(LooksAt { what, at_cm })
            })?,
        })
    }

    fn born(&self) -> Result<Option<Born>, Unread> {
        let unread = |sentence: String| ("born".to_owned(), sentence);
        let (date, age) = (self.born.get_untracked(), self.age.get_untracked());
        if !date.trim().is_empty() {
            let date = NaiveDate::parse_from_str(date.trim(), "%Y-%m-%d");
            return date
                .map(|date| Some(Born::Date(date)))
                .map_err(|_| unread(say::no_date_of_birth().into()));
        }
        if age.trim().is_empty() {
            return Ok(None);
        }
        let (known, shown) = self.before.get_value();
        if age.trim() == shown {
            return Ok(known);
        }
        let years = age
            .trim()
            .parse()
            .map_err(|_| unread(say::no_age(&age.trim())))?;
        Ok(Some(Born::Stated {
            years,
            in_year: today().year(),
        }))
    }
}

/// Each line of a list as what it stands for. A line that was added and left blank is none.
fn read<T, const N: usize>(
    rows: Rows,
    line: impl Fn([String; N]) -> Result<T, Unread>,
) -> Result<Vec<T>, Unread> {
    let lines = rows.lines().into_iter();
    let filled = lines.filter(|parts| parts.iter().any(|part| !part.is_empty()));
    // Every list is made with as many words a line as are read here.
    let parts = filled.filter_map(|parts| parts.try_into().ok());
    parts.map(line).collect()
}
