//! Exams and events as one list, newest first.

use chrono::NaiveDate;

use super::{Event, StorySoFar};
use crate::ids::ExamId;

/// One item of the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Moment {
    /// An exam, with what happened on its day.
    Exam {
        /// The exam.
        exam: ExamId,
        /// The day.
        on: NaiveDate,
        /// What happened in it.
        events: Vec<Event>,
    },
    /// What came of an exam on a later day.
    Later(Event),
}

impl Moment {
    /// The day.
    pub const fn on(&self) -> NaiveDate {
        match self {
            Self::Exam { on, .. } => *on,
            Self::Later(event) => event.on,
        }
    }
}

impl StorySoFar {
    /// Exams and events, newest first. What happened on the day of its exam is told with it.
    pub fn timeline(&self) -> Vec<Moment> {
        let at_once = |event: &&Event| self.exams.contains(&(event.exam, event.on));
        let exams = self.exams.iter().map(|(exam, on)| Moment::Exam {
            exam: *exam,
            on: *on,
            events: self.events_of(*exam).filter(at_once).cloned().collect(),
        });
        let later = self.events.iter().filter(|event| !at_once(event));
        let mut told: Vec<Moment> = exams.chain(later.cloned().map(Moment::Later)).collect();
        // Stable, so that of one day the exam stands below what came of it, and exams keep their order.
        told.sort_by_key(Moment::on);
        told.reverse();
        told
    }

    fn events_of(&self, exam: ExamId) -> impl Iterator<Item = &Event> {
        self.events.iter().filter(move |event| event.exam == exam)
    }
}
