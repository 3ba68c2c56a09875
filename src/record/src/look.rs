//! Finding one's way in a story: people, their exams, and what was found last time.

use std::cmp::Reverse;

use crate::exam::Exam;
use crate::ids::{ExamId, PersonId};
use crate::lane::Version;
use crate::person::Person;
use crate::sections::{Section, SectionKind};
use crate::story::Story;
use crate::summary::LastNet;

/// What an earlier exam found, to stand beside today's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LastTime<'a> {
    /// The earlier exam: when, where, whether signed.
    pub exam: &'a Exam,
    /// What it found. Of several unsettled versions, the one written last.
    pub version: Version<'a, Section>,
}

impl Story {
    /// Everybody on record, by family name, then given name. Of two that are one person, the one that is kept.
    pub fn people(&self) -> Vec<&Person> {
        let mut people: Vec<_> = self
            .people
            .values()
            .filter(|person| self.shown_for(person.id()) == person.id())
            .map(|person| (&person.details().name, person))
            .collect();
        people.sort_by_key(|(name, person)| (&name.family, &name.given, person.id()));
        people.into_iter().map(|(_, person)| person).collect()
    }

    /// One person; of one that is the same as another, whoever is shown for them.
    pub fn person(&self, id: &PersonId) -> Option<&Person> {
        self.people.get(&self.shown_for(*id))
    }

    /// One exam.
    pub fn exam(&self, id: &ExamId) -> Option<&Exam> {
        self.exams.get(id)
    }

    /// A person's exams, newest first.
    pub fn exams_of(&self, person: &PersonId) -> Vec<&Exam> {
        let mut exams: Vec<_> = self
            .exam_ids_of(person)
            .filter_map(|id| self.exams.get(id))
            .collect();
        exams.sort_by_key(|exam| Reverse(order(exam)));
        exams
    }

    /// What was found last time in one section: the newest exam of the same person, opened before this one, that has it.
    pub fn last_before(&self, exam: &ExamId, kind: SectionKind) -> Option<LastTime<'_>> {
        self.before(exam).find_map(|exam| {
            let version = exam.section(kind).latest()?;
            Some(LastTime { exam, version })
        })
    }

    /// The same person's earlier exams, newest first.
    pub(crate) fn before(&self, exam: &ExamId) -> impl Iterator<Item = &Exam> + use<'_> {
        let this = self.exam(exam);
        let exams = this.map(|this| self.exams_of(&this.person()));
        let earlier = move |other: &&Exam| this.is_some_and(|this| order(other) < order(this));
        exams.into_iter().flatten().filter(earlier)
    }

    /// The lenses of a person's newest exam that has any, for a row in a list.
    pub fn last_net(&self, person: &PersonId) -> Option<LastNet> {
        self.exams_of(person).into_iter().find_map(|exam| {
            let eyes = exam.final_lenses();
            let on = exam.opened_on();
            (eyes.right.is_some() || eyes.left.is_some()).then_some(LastNet { on, eyes })
        })
    }
}

/// Exams go by the day they were opened, then by the stamp, then by name, so that no two stand equal.
fn order(exam: &Exam) -> impl Ord + use<> {
    (exam.opening.opened_on, exam.opening.stamp, exam.id())
}
