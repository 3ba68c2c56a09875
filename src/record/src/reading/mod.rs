//! A section as it reads: a few words for each thing that stands in it, and nothing for what is blank.

mod consent;
mod decision;
mod drops;
mod glasses;
mod health;
mod history;
mod near;
mod pressure;
mod pupils;
mod refraction;
mod sketches;
mod together;

use crate::finding::{Eyes, Finding};
use crate::manner::{FarUnit, Manner};
use crate::sections::Section;

/// One line: what it is, and what stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it is.
    pub label: String,
    /// What stands there.
    pub said: Said,
}

/// What stands on a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Said {
    /// Of each eye; `—` where it is blank.
    Eyes(Eyes<String>),
    /// Of the person.
    One(String),
}

impl Section {
    /// The section in lines; none where it is blank.
    pub fn lines(&self) -> Vec<Line> {
        self.lines_in(FarUnit::Metres)
    }

    /// The same, with a chart's distance in the reader's unit.
    pub fn lines_in(&self, far: FarUnit) -> Vec<Line> {
        let mut lines = Lines::within(far);
        self.reads().read(&mut lines);
        lines.done()
    }
}

/// What every section tells of itself.
pub(crate) trait Reads {
    /// Adds a line for each thing that stands in it.
    fn read(&self, lines: &mut Lines);
}

/// Where nothing stands of one eye.
const NOTHING: &str = "—";

/// Gathers lines, leaving out what is blank.
pub(crate) struct Lines {
    all: Vec<Line>,
    /// In what a chart's distance is said.
    far: FarUnit,
}

impl Lines {
    /// None yet.
    pub fn within(far: FarUnit) -> Self {
        let all = Vec::new();
        Self { all, far }
    }

    /// All of them.
    pub fn done(self) -> Vec<Line> {
        self.all
    }

    /// Words of the person.
    pub fn one(&mut self, label: impl Into<String>, words: impl Into<String>) {
        let words: String = words.into();
        if !words.trim().is_empty() {
            self.all.push(Line {
                label: label.into(),
                said: Said::One(words),
            });
        }
    }

    /// Something of the person that may be missing.
    pub fn some(&mut self, label: impl Into<String>, words: Option<String>) {
        self.one(label, words.unwrap_or_default());
    }

    /// A finding of the person.
    pub fn finding<T>(&mut self, label: &str, found: &Finding<T>, say: impl FnOnce(&T) -> String) {
        self.some(label, found.in_words(say));
    }

    /// Words of each eye, where there are any of either.
    pub fn eyes(&mut self, label: impl Into<String>, words: Eyes<Option<String>>) {
        if words.right.is_some() || words.left.is_some() {
            self.all.push(Line {
                label: label.into(),
                said: Said::Eyes(words.map(|said| said.clone().unwrap_or_else(|| NOTHING.into()))),
            });
        }
    }

    /// One finding of each eye.
    pub fn findings<E, T>(
        &mut self,
        label: &str,
        eyes: &Eyes<E>,
        of: impl Fn(&E) -> &Finding<T>,
        say: impl Fn(&T) -> String,
    ) {
        self.eyes(label, eyes.map(|eye| of(eye).in_words(&say)));
    }
}

/// Words, where there are any.
fn filled(words: &str) -> Option<String> {
    (!words.trim().is_empty()).then(|| words.trim().to_owned())
}

/// What there is of these, with commas between.
fn listed<const N: usize>(parts: [Option<String>; N]) -> String {
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// "2 Mar 2027".
fn day(date: chrono::NaiveDate) -> String {
    Manner::default().short_date(date)
}
