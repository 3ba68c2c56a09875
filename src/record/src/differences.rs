//! What differs between two readings of a section, line by line.

use crate::finding::Eye;
use crate::reading::{Line, Said};
use ::words::record::exam as say;

/// One line, as it stood and as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// What it is.
    pub label: String,
    /// What stood there; nothing where the line is new.
    pub before: Option<Said>,
    /// What stands there; nothing where the line is gone.
    pub now: Option<Said>,
}

/// What became of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// Nothing.
    Same,
    /// It is new.
    Added,
    /// Something else stands there.
    Changed,
    /// It is gone.
    Gone,
}

impl Change {
    /// The word for it; empty where nothing changed.
    pub fn word(self) -> &'static str {
        match self {
            Self::Same => "",
            Self::Added => say::added(),
            Self::Changed => say::changed(),
            Self::Gone => say::gone(),
        }
    }

    /// A sign for it, so that it can be found at a glance; empty where nothing changed.
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Same => "",
            Self::Added => "+",
            Self::Changed => "≠",
            Self::Gone => "−",
        }
    }
}

impl Difference {
    /// What became of the line.
    pub fn change(&self) -> Change {
        match (&self.before, &self.now) {
            (None, _) => Change::Added,
            (_, None) => Change::Gone,
            (before, now) if before == now => Change::Same,
            _ => Change::Changed,
        }
    }

    /// Whether what is said of one eye differs. A line of the person differs for both.
    pub fn differs_for(&self, eye: Eye) -> bool {
        match (&self.before, &self.now) {
            (Some(Said::Eyes(before)), Some(Said::Eyes(now))) => before.of(eye) != now.of(eye),
            (before, now) => before != now,
        }
    }
}

/// Every line of either reading, in the order of the later one; a line that is gone stands where it stood. Lines are known
/// by their label; of several with one label the first goes with the first.
///
/// ```
/// use record::{Change, Line, Said, differences};
/// let line = |label: &str, words: &str| Line { label: label.into(), said: Said::One(words.into()) };
///
/// let before = [line("health", "diabetes"), line("told by", "staff")];
/// let now = [line("health", "diabetes, stroke"), line("uses", "knitting")];
/// let found: Vec<_> = differences(&before, &now).iter().map(|line| (line.label.clone(), line.change())).collect();
/// assert_eq!(found, [
///     ("health".into(), Change::Changed),
///     ("told by".into(), Change::Gone),
///     ("uses".into(), Change::Added),
/// ]);
/// ```
pub fn differences(before: &[Line], now: &[Line]) -> Vec<Difference> {
    let mut old: Vec<Option<&Line>> = before.iter().map(Some).collect();
    let mut told: Vec<(Difference, Option<usize>)> = Vec::new();
    for line in now {
        let place = (0..old.len()).find(|at| old[*at].is_some_and(|old| old.label == line.label));
        let stood = place.and_then(|at| old[at].take());
        let difference = Difference {
            label: line.label.clone(),
            before: stood.map(|line| line.said.clone()),
            now: Some(line.said.clone()),
        };
        told.push((difference, place));
    }
    for (at, line) in old.into_iter().enumerate() {
        let Some(line) = line else { continue };
        let gone = Difference {
            label: line.label.clone(),
            before: Some(line.said.clone()),
            now: None,
        };
        // Behind the last line that stood before it.
        let behind = told
            .iter()
            .rposition(|(_, place)| place.is_some_and(|place| place < at));
        told.insert(behind.map_or(0, |behind| behind + 1), (gone, Some(at)));
    }
    told.into_iter().map(|(difference, _)| difference).collect()
}
