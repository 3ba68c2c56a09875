//! A section while it is being filled in.

use ::words::record::exam as say;
use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::cbor;
use crate::check::{Checks, FieldError, check};
use crate::error::{ReadError, RecordError};
use crate::finding::Eye;
use crate::half::Half;
use crate::ids::{EntryId, ExamId};
use crate::sections::{Section, SectionKind};
use crate::stamp::Stamp;

/// A section while it is being filled in, kept on every change so that a flat battery costs nothing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Draft {
    /// The exam.
    pub exam: ExamId,
    /// The section as far as it goes.
    pub section: Section,
    /// What is no value yet, by the names that [`crate::check`] uses: of a finding, its [`Half`].
    #[serde(default)]
    pub typing: BTreeMap<String, String>,
    /// The versions that were there when the draft was begun: [`crate::Exam::head_ids`].
    pub based_on: Vec<EntryId>,
    /// When it was kept.
    pub saved: Stamp,
}

impl Draft {
    /// Which section it is of.
    pub const fn kind(&self) -> SectionKind {
        self.section.kind()
    }

    /// Takes the section as it now stands. A finding that is answered is no longer half entered.
    pub fn put(&mut self, section: Section) {
        for (eye, part, blank) in section.filled().halves() {
            if !blank {
                self.put_half(eye, &part, None);
            }
        }
        self.section = section;
    }

    /// What is entered of one eye's finding before it is one; the part is `unaided`, `retinoscopy`, `lens` ….
    pub fn half(&self, eye: Eye, part: &str) -> Option<Half> {
        Half::read(self.typing.get(&Checks::name(eye, part))?)
    }

    /// Keeps half of a finding, or drops it.
    pub fn put_half(&mut self, eye: Eye, part: &str, half: Option<Half>) {
        let name = Checks::name(eye, part);
        match half {
            Some(half) => self.typing.insert(name, half.to_string()),
            None => self.typing.remove(&name),
        };
    }

    /// Checks the section's fields, and asks for the other half of what is half entered. Empty when the draft can be
    /// written down.
    pub fn check(&self) -> Vec<FieldError> {
        let mut errors = check(&self.section);
        for (eye, part, _) in self.section.filled().halves() {
            if self.half(eye, &part).is_some() {
                let what = part.replace('_', " ");
                let sentence = say::half_entered(&eye.said(), &what);
                errors.push(FieldError::new(Checks::name(eye, &part), sentence));
            }
        }
        errors
    }

    /// The draft's bytes.
    pub fn to_cbor(&self) -> Vec<u8> {
        cbor::write(self)
    }

    /// Reads a draft.
    ///
    /// # Errors
    /// [`RecordError::Read`] when the bytes are no draft.
    pub fn from_cbor(bytes: &[u8]) -> Result<Self, RecordError> {
        // By way of a value, as entries go too: one way of reading every section, not two, keeps the app small.
        let value: ciborium::Value = cbor::read(bytes)?;
        let read = value.deserialized();
        Ok(read.map_err(|error| ReadError::Envelope {
            why: error.to_string(),
        })?)
    }
}
