//! Finding people and places among all that are on record; the index follows the record.

use super::Door;
use leptos::prelude::*;
use record::PersonId;
use record::find::{Found, Index};

/// An index, and how many entries it has followed. Entries only ever come.
#[derive(Clone, Copy)]
pub struct Finder(StoredValue<(usize, Index<Found>)>);

impl Finder {
    pub fn new() -> Self {
        Self(StoredValue::new((0, Index::default())))
    }

    /// Forgets everybody.
    pub fn clear(self) {
        self.0.set_value((0, Index::default()));
    }
}

impl Door {
    /// Who and what goes with what is asked, the best first; follows every change on record.
    pub fn find(self, asked: &str) -> Vec<Found> {
        self.story().with(|story| {
            self.finder.0.update_value(|(followed, index)| {
                if *followed != story.len() {
                    index.follow(story.findable());
                    *followed = story.len();
                }
            });
        });
        self.finder.0.with_value(|(_, index)| index.find(asked))
    }

    /// The people among them.
    pub fn find_people(self, asked: &str) -> Vec<PersonId> {
        let found = self.find(asked).into_iter();
        found
            .filter_map(|found| match found {
                Found::Person(person) => Some(person),
                Found::Place(_) => None,
            })
            .collect()
    }
}
