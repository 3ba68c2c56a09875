//! A log that is too long to be put in order in memory.

use std::cmp::Ordering;
use std::collections::BTreeSet;

use super::Visit;

/// A visit at its place in the log.
struct Row(Visit);

impl Ord for Row {
    fn cmp(&self, other: &Self) -> Ordering {
        self.0.order().cmp(&other.0.order())
    }
}

impl PartialOrd for Row {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Row {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Row {}

/// Gives every visit to `row` in the order of the log, with no more than `most` of them in memory. `all` gives them in any
/// order, and is asked again for each so many: it has to give the same ones.
///
/// # Errors
/// Whatever `all` or `row` says.
pub fn in_order<E>(
    most: usize,
    mut all: impl FnMut(&mut dyn FnMut(Visit)) -> Result<(), E>,
    mut row: impl FnMut(&Visit) -> Result<(), E>,
) -> Result<(), E> {
    let mut last: Option<Row> = None;
    loop {
        let mut next = BTreeSet::new();
        all(&mut |visit| {
            let visit = Row(visit);
            if last.as_ref().is_none_or(|last| *last < visit) {
                next.insert(visit);
            }
            if next.len() > most {
                next.pop_last();
            }
        })?;
        next.iter().try_for_each(|visit| row(&visit.0))?;
        if next.len() < most.max(1) {
            return Ok(());
        }
        last = next.pop_last();
    }
}
