//! What the notes for the person and for the care staff have in common: large print, the same frame, words that were added.

use chrono::NaiveDate;
use record::{Exam, Person};

use super::{foot, signed, standing};
use crate::document::{Block, Document, Fact, Print};
use crate::error::PaperError;

/// What is told beside the record.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NoteOptions {
    /// Whom to ask, and how to reach them.
    pub contact: String,
    /// Words to add, as they are.
    pub words: String,
}

impl NoteOptions {
    /// A note with this title about somebody, that says `told` before what was added to it.
    pub(super) fn note(
        &self,
        title: &str,
        who: Vec<Fact>,
        told: Vec<Block>,
        (person, exam): (&Person, &Exam),
        written_on: NaiveDate,
    ) -> Result<Document, PaperError> {
        let added = [&self.words, &self.contact].map(|words| words.trim());
        let added = added.into_iter().filter(|words| !words.is_empty());
        let mut blocks = told;
        blocks.extend(added.map(|words| Block::Paragraph(words.to_owned())));
        blocks.push(signed(exam, written_on));
        Ok(Document {
            title: title.to_owned(),
            standing: standing(person, exam)?,
            print: Print::Large,
            who,
            blocks,
            foot: foot(person, exam),
        })
    }
}
