//! Findings that were written down elsewhere and taken over: an exam of that day, unsigned, at no place of ours.
//!
//! It stands among the person's exams, so that it is last time's finding to whoever examines next. It is no visit: no round counts
//! it, no log lists it, and nobody is asked to go on with it.

use ::words::record::exam as say;
use chrono::NaiveDate;

use crate::body::Body;
use crate::error::RecordError;
use crate::exam::Exam;
use crate::home_list::ToWrite;
use crate::ids::{ExamId, PersonId};
use crate::manner::Manner;
use crate::person::{Born, Person};
use crate::plan::Planned;
use crate::sections::Section;
use crate::story::Story;

/// What stands in place of a place.
const ELSEWHERE: &str = "taken from elsewhere";

impl Exam {
    /// Whether its findings were written down elsewhere and taken over.
    pub fn is_from_elsewhere(&self) -> bool {
        self.place() == ELSEWHERE
    }
}

impl Story {
    /// Plans findings of a day as an exam that was taken over; all of it is to be written together.
    ///
    /// # Errors
    /// [`RecordError::NoSuchPerson`].
    pub fn take_over(
        &self,
        person: PersonId,
        exam: ExamId,
        on: NaiveDate,
        sections: Vec<Section>,
    ) -> Result<Vec<ToWrite>, RecordError> {
        let opened = self.open_exam(exam, person, ELSEWHERE.to_owned(), on)?;
        let written = sections.into_iter().map(|section| Planned {
            body: Body::Section {
                exam,
                section,
                reason: None,
            },
            parents: Vec::new(),
        });
        let about = Some(person);
        let planned = std::iter::once(opened).chain(written);
        Ok(planned.map(|planned| ToWrite { planned, about }).collect())
    }

    /// Whether just these findings of that day were taken over before.
    pub fn has_taken_over(&self, person: &PersonId, on: NaiveDate, sections: &[Section]) -> bool {
        let exams = self.exams_of(person).into_iter();
        let mut taken = exams.filter(|exam| exam.is_from_elsewhere() && exam.opened_on() == on);
        taken.any(|exam| {
            sections.iter().all(|section| {
                let there = exam.section(section.kind()).latest();
                there.is_some_and(|version| version.value == section)
            })
        })
    }
}

impl Person {
    /// Asks where a file names somebody else than this person: another name, or another day of birth. Nothing where it names
    /// nobody.
    pub fn is_this(&self, name: Option<&str>, born: Option<NaiveDate>) -> Option<String> {
        let here = self.details();
        let plain = |words: &str| {
            let mut words: Vec<String> = words.split_whitespace().map(str::to_lowercase).collect();
            words.sort_unstable();
            words
        };
        let named = name.filter(|name| plain(name) != plain(&here.name.to_string()));
        if let Some(named) = named {
            return Some(say::file_about(&named, &here.name));
        }
        let same = |born: &NaiveDate| match here.born {
            Some(Born::Date(known)) => known == *born,
            _ => true,
        };
        let other = born.filter(|born| !same(born));
        other.map(|born| say::file_born(&Manner::default().date(born)))
    }
}
