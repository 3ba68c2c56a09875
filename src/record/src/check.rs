//! One plain sentence for each field that can't stand as it is.
//!
//! The ranges themselves live in [`optics::limits`]; here they are applied to a whole section.

use std::fmt::Display;

use serde::{Deserialize, Serialize};

use crate::finding::{Eye, Finding};
use crate::sections::Section;

/// A field that can't stand as it is, and why.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FieldError {
    /// Which field, from the outside in: `right.sphere`, `used_at_m`.
    pub field: String,
    /// One plain sentence for the person who is filling it in.
    pub sentence: String,
}

impl FieldError {
    pub(crate) fn new(field: impl Into<String>, sentence: impl Into<String>) -> Self {
        Self {
            field: field.into(),
            sentence: sentence.into(),
        }
    }
}

/// Checks every field of a section. Empty when all of them can stand.
pub fn check(section: &Section) -> Vec<FieldError> {
    match section {
        Section::Acuity(acuity) => acuity.check(),
        Section::Retinoscopy(retinoscopy) => retinoscopy.check(),
        Section::Subjective(subjective) => subjective.check(),
        Section::Decision(decision) => decision.check(),
    }
}

/// Gathers errors while a section looks at its fields.
#[derive(Default)]
pub(crate) struct Checks(Vec<FieldError>);

impl Checks {
    /// Notes the sentence of a range that was not kept.
    pub fn range<T, E: Display>(&mut self, field: impl Into<String>, kept: Result<T, E>) {
        if let Err(error) = kept {
            self.say(field, error.to_string());
        }
    }

    pub fn say(&mut self, field: impl Into<String>, sentence: impl Into<String>) {
        self.0.push(FieldError::new(field, sentence));
    }

    /// `right.sphere`: a field of one eye.
    pub fn name(eye: Eye, part: &str) -> String {
        format!("{}.{part}", eye.word())
    }

    /// "Not done" and "unable" are answers only with a reason.
    pub fn reason<T>(&mut self, eye: Eye, part: &str, finding: &Finding<T>) {
        if let Finding::NotDone { reason } | Finding::Unable { reason } = finding
            && blank(reason)
        {
            let sentence = format!("say why this is missing for the {} eye", eye.word());
            self.say(Self::name(eye, part), sentence);
        }
    }

    pub fn done(self) -> Vec<FieldError> {
        self.0
    }
}

pub(crate) fn blank(text: &str) -> bool {
    text.trim().is_empty()
}
