//! Who is to be seen again, and from when on: what was decided last time.

use chrono::{Months, NaiveDate};

use crate::ids::{ExamId, PersonId, PlaceId};
use crate::story::Story;

/// When a person is to be seen again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Due {
    /// Who.
    pub person: PersonId,
    /// From which day on: so many months after the exam as were decided. A month without that day gives its last.
    pub on: NaiveDate,
    /// Why then, in the examiner's words.
    pub reason: String,
    /// The exam in which that was decided.
    pub exam: ExamId,
}

impl Story {
    /// When a person is to be seen again by what the newest decision says. Nothing where none was ever made, or where the newest
    /// names no recall.
    pub fn due(&self, person: &PersonId) -> Option<Due> {
        let mut exams = self.exams_of(person).into_iter();
        let (exam, decision) = exams.find_map(|exam| Some((exam, exam.decision().latest()?)))?;
        let recall = decision.value.recall.as_ref()?;
        let months = Months::new(recall.months.into());
        Some(Due {
            person: *person,
            on: exam.opened_on().checked_add_months(months)?,
            reason: recall.reason.clone(),
            exam: exam.id(),
        })
    }

    /// Who of a place is due on a day or was before, longest overdue first.
    pub fn due_at(&self, place: &PlaceId, by: NaiveDate) -> Vec<Due> {
        let people = self.people_at(place).into_iter();
        let mut due: Vec<Due> = people
            .filter_map(|person| self.due(&person.id()))
            .filter(|due| due.on <= by)
            .collect();
        due.sort_by_key(|due| (due.on, due.person));
        due
    }
}
