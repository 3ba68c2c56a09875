//! The visit as it was written down, section by section, for whoever takes over.

use ::words::papers::documents as say;
use chrono::NaiveDate;
use record::{Exam, Line, Person, Said, SectionKind};

use super::{amendments, foot, signed, standing, who};
use crate::document::{Block, Document, Fact, Print, Table};
use crate::error::PaperError;

/// Everything that stands in an exam, as written on a day. Before it is signed every page says so.
///
/// # Errors
/// [`PaperError`], one sentence for each reason.
pub fn visit_summary(
    person: &Person,
    exam: &Exam,
    written_on: NaiveDate,
) -> Result<Document, PaperError> {
    let standing = standing(person, exam)?;
    let mut blocks: Vec<Block> = Vec::new();
    blocks.extend(amendments(exam));
    for kind in SectionKind::ALL {
        let Some(version) = exam.section(kind).settled() else {
            continue;
        };
        let lines = version.value.lines();
        if !lines.is_empty() {
            blocks.push(Block::Heading(kind.title().to_owned()));
            blocks.extend(set(lines));
        }
    }
    blocks.push(signed(exam, written_on));
    Ok(Document {
        title: say::summary().to_owned(),
        standing,
        print: Print::Ordinary,
        who: who(person, exam),
        blocks,
        foot: foot(person, exam),
    })
}

/// Lines of one section: neighbours of each eye in one table, neighbours of the person as facts.
pub(super) fn set(lines: Vec<Line>) -> Vec<Block> {
    let mut blocks: Vec<Block> = Vec::new();
    for Line { label, said } in lines {
        match (said, blocks.last_mut()) {
            (Said::One(words), Some(Block::Facts(facts))) => facts.push(Fact::new(label, words)),
            (Said::One(words), _) => blocks.push(Block::Facts(vec![Fact::new(label, words)])),
            (Said::Eyes(eyes), Some(Block::Table(table))) => {
                table.rows.push(vec![label, eyes.right, eyes.left]);
            }
            (Said::Eyes(eyes), _) => blocks.push(Block::Table(Table {
                head: ["", say::right(), say::left()].map(str::to_owned).to_vec(),
                rows: vec![vec![label, eyes.right, eyes.left]],
            })),
        }
    }
    blocks
}
