//! Part of a story, told to somebody who makes something of it: a worker that writes a bundle.

use std::collections::BTreeSet;

use crate::body::Body;
use crate::entry::Entry;
use crate::exam::Exam;
use crate::ids::{DeviceId, ExamId, PersonId};
use crate::lane::Lane;
use crate::person::Person;
use crate::story::Story;

impl Story {
    /// The entries that fold into these exams and into whom they are about. Exams that are not here are passed over.
    ///
    /// They are to be read, not kept: an exam's opening comes without its author and parents, and names the person who is shown
    /// where two records are one.
    pub fn excerpt(&self, exams: &[ExamId]) -> Vec<Entry> {
        let mut told = BTreeSet::new();
        let mut entries = Vec::new();
        for exam in exams.iter().filter_map(|exam| self.exam(exam)) {
            let Some(person) = self.person(&exam.person()) else {
                continue;
            };
            if told.insert(person.id()) {
                entries.extend(of_person(person));
            }
            entries.push(opening(exam, person.id()));
            entries.extend(of_exam(exam));
        }
        entries
    }
}

impl Story {
    /// The entries that fold into a person and all exams of theirs, for reading as those of [`Story::excerpt`] are; none of
    /// somebody who is not on record.
    pub fn excerpt_of(&self, person: &PersonId) -> Vec<Entry> {
        let exams: Vec<ExamId> = self.exams_of(person).into_iter().map(Exam::id).collect();
        if exams.is_empty() {
            let known = self.person(person).into_iter();
            return known.flat_map(of_person).collect();
        }
        self.excerpt(&exams)
    }
}

fn of_person(person: &Person) -> impl Iterator<Item = Entry> {
    person.lane.all().cloned()
}

fn of_exam(exam: &Exam) -> impl Iterator<Item = Entry> {
    let lanes = exam
        .sections
        .values()
        .chain([&exam.signatures, &exam.answers, &exam.sent]);
    lanes.flat_map(Lane::all).cloned()
}

fn opening(exam: &Exam, person: PersonId) -> Entry {
    let opening = &exam.opening;
    let body = Body::ExamOpened {
        exam: exam.id(),
        person,
        place: opening.place.clone(),
        opened_on: opening.opened_on,
    };
    let nobody = DeviceId([0; 16]);
    Entry::new(
        opening.entry,
        Vec::new(),
        String::new(),
        nobody,
        opening.stamp,
        body,
    )
}
