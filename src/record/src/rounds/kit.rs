//! What is in the bag: the examiner's own list.

use serde::{Deserialize, Serialize};

use super::place::same;
use crate::check::blank;

/// The kit list, whole, in the order in which the bag is packed. It is one list for all rounds; what is ticked belongs to a round.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kit {
    /// The items, in the examiner's words.
    pub items: Vec<String>,
}

impl Kit {
    /// Puts an item at the end; says whether it was new and had a word.
    pub fn add(&mut self, item: &str) -> bool {
        let new = !blank(item) && !self.items.iter().any(|known| same(known, item));
        if new {
            self.items.push(item.trim().to_owned());
        }
        new
    }

    /// What is not ticked, in the order of the list.
    pub fn missing<'a>(&'a self, packed: &[String]) -> Vec<&'a str> {
        let items = self.items.iter().filter(|item| !packed.contains(item));
        items.map(String::as_str).collect()
    }
}
