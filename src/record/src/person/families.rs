//! Whose entries belong together: for whoever folds a long record person by person.

use std::collections::BTreeSet;

use super::Same;
use crate::body::Body;
use crate::entry::Entry;
use crate::ids::PersonId;

/// Who was ever said to be the same as whom. What was written of all of a family, folded together, shows its people and exams
/// as the fold of everything does; so none of the others has to be in memory.
#[derive(Clone, Debug, Default)]
pub struct Families(Vec<BTreeSet<PersonId>>);

impl Families {
    /// Takes note of an entry, whatever it says. What was taken back still counts: it has to be read to be known.
    pub fn take(&mut self, entry: &Entry) {
        if let Body::Same(same) = &entry.body {
            self.join(same);
        }
    }

    /// Everybody whose entries go with those of a person, themselves among them.
    pub fn of(&self, person: PersonId) -> BTreeSet<PersonId> {
        let family = self.0.iter().find(|family| family.contains(&person));
        family.cloned().unwrap_or_else(|| BTreeSet::from([person]))
    }

    pub(super) fn join(&mut self, same: &Same) {
        let two = BTreeSet::from([same.kept, same.other]);
        let all = std::mem::take(&mut self.0).into_iter();
        let (met, apart): (Vec<_>, Vec<_>) = all.partition(|family| !family.is_disjoint(&two));
        self.0 = apart;
        self.0
            .push(met.into_iter().fold(two, |all, family| &all | &family));
    }

    pub(super) fn all(&self) -> &[BTreeSet<PersonId>] {
        &self.0
    }
}

impl Entry {
    /// Whether it tells of a person or an exam, or can't be told; not of rounds and their places, the kit or settings, on which
    /// nobody's record rests.
    pub const fn is_of_people(&self) -> bool {
        match self.body {
            Body::Person { .. }
            | Body::ExamOpened { .. }
            | Body::Section { .. }
            | Body::Signed { .. }
            | Body::Answered(_)
            | Body::Sent(_)
            | Body::Same(_)
            | Body::Apart(_)
            | Body::Unread(_) => true,
            Body::Place(_)
            | Body::Round(_)
            | Body::Visit(_)
            | Body::Packed(_)
            | Body::Kit(_)
            | Body::Settings(_) => false,
        }
    }
}
