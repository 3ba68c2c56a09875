//! One plain sentence for each field that can't stand as it is.
//!
//! The ranges themselves live in [`optics::limits`]; here they are applied to a whole section.

use ::words::record::exam as say;
use std::fmt::Display;

use optics::SphereCyl;
use optics::limits::{self, OutOfRange};
use optics::prism::Prism;
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
    section.filled().check()
}

/// What a field accepts.
type Limit = fn(f64) -> Result<f64, OutOfRange>;

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
        format!("{}.{part}", eye.said())
    }

    /// "Not done" and "unable" are answers only with a reason.
    pub fn reason<T>(&mut self, eye: Eye, part: &str, finding: &Finding<T>) {
        if let Finding::NotDone { reason } | Finding::Unable { reason } = finding
            && blank(reason)
        {
            let sentence = say::missing_eye(&eye.said());
            self.say(Self::name(eye, part), sentence);
        }
    }

    /// The same of something that is not one eye's.
    pub fn reason_of<T>(&mut self, field: &str, finding: &Finding<T>) {
        if let Finding::NotDone { reason } | Finding::Unable { reason } = finding
            && blank(reason)
        {
            self.say(field, say::missing());
        }
    }

    /// A number that may be left out.
    pub fn optional(&mut self, field: impl Into<String>, number: Option<f64>, limit: Limit) {
        if let Some(number) = number {
            self.range(field, limit(number));
        }
    }

    /// A number of one eye, or the reason why there is none.
    pub fn measured(&mut self, eye: Eye, part: &str, finding: &Finding<f64>, limit: Limit) {
        self.reason(eye, part, finding);
        self.optional(Self::name(eye, part), finding.done().copied(), limit);
    }

    /// A number that is not one eye's, or the reason why there is none.
    pub fn number(&mut self, field: &str, finding: &Finding<f64>, limit: Limit) {
        self.reason_of(field, finding);
        self.optional(field, finding.done().copied(), limit);
    }

    /// Words that can't be left out.
    pub fn text(&mut self, field: impl Into<String>, words: &str, sentence: &str) {
        if blank(words) {
            self.say(field, sentence);
        }
    }

    /// Sphere and cylinder of one eye's lens.
    pub fn lens(&mut self, eye: Eye, lens: &SphereCyl) {
        self.range(Self::name(eye, "sphere"), limits::sphere(lens.sphere));
        self.range(
            Self::name(eye, "cylinder"),
            limits::cylinder(lens.cylinder_power()),
        );
    }

    /// Both components of one eye's prism, where there is one.
    pub fn prism(&mut self, eye: Eye, prism: Option<Prism>) {
        for component in prism.into_iter().flat_map(|prism| [prism.h(), prism.v()]) {
            self.range(Self::name(eye, "prism"), limits::prism(component.abs()));
        }
    }

    pub fn done(self) -> Vec<FieldError> {
        self.0
    }
}

pub(crate) fn blank(text: &str) -> bool {
    text.trim().is_empty()
}
