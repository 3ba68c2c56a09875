//! Papers as their reader writes days, figures and distances: each text goes through [`Manner::in_words`], and nothing else is
//! changed. Names, numbers and how somebody is reached stay as they are.

use ::words::record::person as of;
use record::Manner;

use crate::document::{Block, Document, Fact, LensCells, LensTable, Sign};
use crate::documents::{name, number};
use crate::prescription::{EyeLine, Prescription};

/// Facts that stay as they were written: names, numbers, and how somebody is reached.
const AS_WRITTEN: [fn() -> &'static str; 5] = [
    name,
    number,
    of::known_as,
    of::ask_or_tell,
    of::family_doctor,
];

impl Document {
    /// The same in a reader’s manner; in the usual one it is what it was.
    #[must_use]
    pub fn in_manner(mut self, manner: Manner) -> Self {
        facts(&mut self.who, manner);
        for block in &mut self.blocks {
            put_block(block, manner);
        }
        put(&mut self.foot, manner);
        self
    }
}

impl Prescription {
    /// The same in a reader’s manner; in the usual one it is what it was.
    #[must_use]
    pub fn in_manner(mut self, manner: Manner) -> Self {
        let days = [&mut self.examined_on, &mut self.written_on];
        let told = [&mut self.near, &mut self.vertex, &mut self.valid_until];
        let lines = self.cautions.iter_mut().chain(&mut self.amendments);
        let lenses = self.eyes.iter_mut().flat_map(EyeLine::texts);
        days.into_iter()
            .chain(told.into_iter().flatten())
            .chain(lines)
            .chain(lenses)
            .chain([&mut self.born.value])
            .for_each(|text| put(text, manner));
        self
    }
}

impl EyeLine {
    fn texts(&mut self) -> [&mut String; 6] {
        [
            &mut self.sphere,
            &mut self.cylinder,
            &mut self.axis,
            &mut self.add,
            &mut self.acuity,
            &mut self.note,
        ]
    }
}

fn put(text: &mut String, manner: Manner) {
    *text = manner.in_words(text);
}

fn facts(facts: &mut [Fact], manner: Manner) {
    let told = facts
        .iter_mut()
        .filter(|fact| !AS_WRITTEN.iter().any(|label| label() == fact.label));
    for fact in told {
        put(&mut fact.value, manner);
    }
}

fn put_all<'a>(texts: impl IntoIterator<Item = &'a mut String>, manner: Manner) {
    for text in texts {
        put(text, manner);
    }
}

fn put_block(block: &mut Block, manner: Manner) {
    match block {
        Block::Heading(text) | Block::Paragraph(text) => put(text, manner),
        Block::List(points) => put_all(points, manner),
        Block::Facts(each) => facts(each, manner),
        Block::Table(table) => {
            put_all(&mut table.head, manner);
            put_all(table.rows.iter_mut().flatten(), manner);
        }
        Block::Lenses(lenses) => put_lenses(lenses, manner),
        Block::Callout(callout) => {
            put(&mut callout.title, manner);
            put_all(&mut callout.lines, manner);
        }
        Block::Measure(measure) => {
            put_all([&mut measure.label, &mut measure.sentence], manner);
        }
        Block::Sign(Sign::Signed { on, .. }) => put(on, manner),
        Block::Sign(Sign::Open { .. }) => {}
    }
}

fn put_lenses(lenses: &mut LensTable, manner: Manner) {
    put_all(&mut lenses.head, manner);
    for row in &mut lenses.rows {
        match &mut row.lens {
            LensCells::Figures(cells) => put_all(cells, manner),
            LensCells::Note(note) => put(note, manner),
        }
    }
}
