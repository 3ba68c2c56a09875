//! By whom a person is known, and who is to be asked: numbers, contacts, the family doctor.

use ::words::record::person as say;
use serde::{Deserialize, Serialize};

use crate::check::{FieldError, blank};

/// A number by which others know the person. A number says nothing without whoever gave it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Identifier {
    /// The number.
    pub number: String,
    /// Who gave it: a health service, a home, an insurer.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub issuer: String,
}

impl Identifier {
    pub(super) fn check(&self) -> Option<FieldError> {
        if blank(&self.number) {
            return Some(FieldError::new("identifiers", say::ask_number()));
        }
        blank(&self.issuer).then(|| {
            let sentence = say::ask_issuer(&self.number.trim());
            FieldError::new("identifiers", sentence)
        })
    }
}

impl std::fmt::Display for Identifier {
    /// `H-0014 (Tern House)`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.number.trim())?;
        match self.issuer.trim() {
            "" => Ok(()),
            issuer => write!(f, " ({issuer})"),
        }
    }
}

/// Somebody to ask or to tell.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Contact {
    /// What they are called.
    pub name: String,
    /// What they are to the person: daughter, key worker, attorney for health.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub relation: String,
    /// How they are reached: telephone, letter, through the home.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reach: String,
}

impl Contact {
    pub(super) fn check(&self) -> Option<FieldError> {
        let nameless = blank(&self.name) && blank(&self.relation);
        nameless.then(|| FieldError::new("contacts", say::ask_contact()))
    }
}

impl std::fmt::Display for Contact {
    /// `Ada Pennyquick, daughter: 555 0142`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let who = [self.name.trim(), self.relation.trim()];
        let who: Vec<&str> = who.into_iter().filter(|part| !part.is_empty()).collect();
        f.write_str(&who.join(", "))?;
        match self.reach.trim() {
            "" => Ok(()),
            reach => write!(f, ": {reach}"),
        }
    }
}

/// The family doctor.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Doctor {
    /// The doctor.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// The practice, with its address.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub practice: String,
    /// How letters and calls reach them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub reach: String,
}

impl Doctor {
    /// Whether nothing is known.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}

impl std::fmt::Display for Doctor {
    /// `Dr Brinecote, Quayside Surgery, 555 0100`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let parts = [&self.name, &self.practice, &self.reach].map(|part| part.trim());
        let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        f.write_str(&said.join(", "))
    }
}
