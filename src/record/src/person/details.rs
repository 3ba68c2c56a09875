//! Everything written down about who a person is, whatever was found in their eyes.

use ::words::{Language, in_language, record::person as say};
use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::{Born, Contact, Doctor, Identifier, LooksAt, Name};
use crate::check::{FieldError, blank};
use crate::reading::{Line, Lines};
use crate::summary::Age;

/// Everything written down about who a person is. A change writes a whole new version.
///
/// What is told or judged anew at every visit (allergies, medicines, falls, capacity, consent) stands in the exam of that
/// day and nowhere else; [`crate::Story::told_of`] gives the latest.
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
    /// A number by which others know the person, from before numbers had an issuer. It is read, and moves to
    /// [`PersonDetails::identifiers`] when the details are written anew.
    #[serde(default)]
    pub identifier: Option<String>,
    /// Anything to remember before knocking.
    #[serde(default)]
    pub note: String,
    /// Numbers by which others know the person.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub identifiers: Vec<Identifier>,
    /// Whom to ask or to tell.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub contacts: Vec<Contact>,
    /// The family doctor.
    #[serde(default, skip_serializing_if = "Doctor::is_blank")]
    pub doctor: Doctor,
    /// How the person hears, and by which ear to speak to them.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub hearing: String,
    /// The language that the person follows best, and who puts it into others.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub language: String,
    /// What the person looks at all day.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub looks_at: Vec<LooksAt>,
}

impl PersonDetails {
    /// The age on a day, where it can be told.
    pub fn age_on(&self, on: NaiveDate) -> Option<Age> {
        self.born?.age_on(on)
    }

    /// Every number by which others know the person, the one from before issuers among them.
    pub fn known_as(&self) -> Vec<Identifier> {
        let earlier = self.identifier.iter().map(|number| Identifier {
            number: number.clone(),
            issuer: String::new(),
        });
        earlier.chain(self.identifiers.iter().cloned()).collect()
    }

    /// Those numbers in words, each with whoever gave it: `12; H-0014 (Tern House)`.
    pub fn numbers_in_words(&self) -> String {
        let mut known = self.known_as();
        known.retain(|known| !blank(&known.number));
        joined(&known)
    }

    /// The bare numbers.
    pub(crate) fn numbers(&self) -> impl Iterator<Item = &str> {
        let earlier = self.identifier.iter().map(String::as_str);
        earlier.chain(self.identifiers.iter().map(|known| known.number.as_str()))
    }

    /// What is known beside name, birth and place, in lines; none where nothing is.
    pub fn lines(&self) -> Vec<Line> {
        let mut lines = Lines::within(crate::manner::FarUnit::Metres);
        lines.one(say::hearing(), &*self.hearing);
        lines.one(say::language(), &*self.language);
        lines.one(say::looks_at(), joined(&self.looks_at));
        lines.one(say::family_doctor(), self.doctor.to_string());
        lines.one(say::ask_or_tell(), joined(&self.contacts));
        lines.one(say::known_as(), self.numbers_in_words());
        lines.done()
    }

    /// The same lines, each behind its English label: a word that stays, whatever language is spoken.
    pub fn keyed_lines(&self) -> Vec<(String, Line)> {
        let english = in_language(Language::English, || self.lines());
        let keys = english.into_iter().map(|line| line.label);
        keys.zip(self.lines()).collect()
    }

    /// One plain sentence for each field that can't be kept as it is, given today's date.
    pub fn check(&self, today: NaiveDate) -> Vec<FieldError> {
        let mut found = Vec::new();
        if blank(&self.name.given) && blank(&self.name.family) {
            found.push(FieldError::new("name", say::ask_name()));
        }
        found.extend(self.born.iter().flat_map(|born| born.check(today)));
        found.extend(self.identifiers.iter().filter_map(Identifier::check));
        found.extend(self.contacts.iter().filter_map(Contact::check));
        found.extend(self.looks_at.iter().filter_map(LooksAt::check));
        found
    }
}

fn joined<T: ToString>(all: &[T]) -> String {
    let each: Vec<String> = all.iter().map(ToString::to_string).collect();
    each.join("; ")
}
