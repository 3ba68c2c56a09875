//! The prescription as a document.

use crate::document::{
    Block, Document, Fact, LensCells, LensRow, LensTable, Print, Sign, Standing,
};
use crate::documents::mind;
use crate::prescription::{EyeLine, Prescription};
use ::words::papers::documents as say;

impl Prescription {
    /// The paper that it makes.
    pub fn document(&self) -> Document {
        let more = [
            (say::vertex_distance(), &self.vertex),
            (say::addition_for(), &self.near),
            (say::holds_until(), &self.valid_until),
        ];
        let more: Vec<Fact> = more
            .into_iter()
            .filter_map(|(label, value)| Some(Fact::new(label, value.clone()?)))
            .collect();
        let lenses = LensTable {
            head: [
                say::sphere(),
                say::cylinder(),
                say::axis(),
                say::addition(),
                say::reads(),
            ]
            .map(str::to_owned)
            .to_vec(),
            rows: self.eyes.iter().map(row).collect(),
        };
        let mut blocks = vec![Block::Lenses(lenses)];
        if !more.is_empty() {
            blocks.push(Block::Facts(more));
        }
        if !self.amendments.is_empty() {
            blocks.push(mind(say::changed_after_signing(), self.amendments.clone()));
        }
        blocks.push(mind(say::for_makers(), self.cautions.clone()));
        blocks.push(Block::Sign(Sign::Signed {
            by: self.signer.clone(),
            on: say::written_on(&self.written_on),
        }));
        Document {
            title: say::prescription().to_owned(),
            standing: if self.amendments.is_empty() {
                Standing::Signed
            } else {
                Standing::Amended
            },
            print: Print::Ordinary,
            who: vec![
                Fact::new(say::name(), &*self.name),
                Fact::new(self.born.label, &*self.born.value),
                Fact::new(say::examined(), &*self.examined_on),
            ],
            blocks,
            foot: say::foot_examined(&self.name, &self.examined_on),
        }
    }
}

fn row(line: &EyeLine) -> LensRow {
    let figures = [
        &line.sphere,
        &line.cylinder,
        &line.axis,
        &line.add,
        &line.acuity,
    ];
    LensRow {
        eye: line.eye.to_owned(),
        lens: if line.sphere.is_empty() {
            LensCells::Note(line.note.clone())
        } else {
            LensCells::Figures(figures.map(Clone::clone).to_vec())
        },
    }
}
