//! For how many years records are kept here. Laws differ, so there is no usual figure: somebody says it, and who says so.
//!
//! It stands among the figures, under a word that no figure of the second look has: a version of the app that doesn't know
//! it carries it on unharmed.

use optics::change::Threshold;

use super::Settings;

/// The word.
const SLUG: &str = "kept-for-years";

impl Settings {
    /// For how many years after the last entry a record is kept, with who says so; nothing where nobody has said.
    pub fn kept_for(&self) -> Option<&Threshold> {
        self.figures.get(SLUG)
    }

    /// Says for how many years.
    pub fn keep_for(&mut self, years: Threshold) {
        self.figures.insert(SLUG.to_owned(), years);
    }

    /// Nobody is to be reminded any more.
    pub fn keep_without_end(&mut self) {
        self.figures.remove(SLUG);
    }
}
