//! A section while it is being filled in.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::cbor;
use crate::error::RecordError;
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
    /// Fields whose text is not a value yet, as typed, by the names that [`crate::check`] uses.
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

    /// The draft's bytes.
    pub fn to_cbor(&self) -> Vec<u8> {
        cbor::write(self)
    }

    /// Reads a draft.
    ///
    /// # Errors
    /// [`RecordError::Read`] when the bytes are no draft.
    pub fn from_cbor(bytes: &[u8]) -> Result<Self, RecordError> {
        Ok(cbor::read(bytes)?)
    }
}
