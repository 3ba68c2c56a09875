//! What was told or judged of a person at a visit, as it was last: it stands in that day's exam and is only shown elsewhere.

use ::words::{Language, in_language, record::reading as say};
use chrono::NaiveDate;

use crate::exam::Exam;
use crate::ids::{ExamId, PersonId};
use crate::reading::Said;
use crate::sections::SectionKind;
use crate::story::Story;

/// Something that is told or judged anew at every visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Told {
    /// The section that it stands in.
    pub section: SectionKind,
    /// The line of that section, by its English label, whatever language is spoken.
    pub label: &'static str,
}

/// The same as it was last, and on which day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToldOn {
    /// What it is of.
    pub told: Told,
    /// In its words.
    pub words: String,
    /// The day.
    pub on: NaiveDate,
    /// The exam.
    pub exam: ExamId,
}

impl Told {
    /// What to know of a person before an exam begins, in the order in which it is read.
    pub const ALL: [Self; 7] = [
        Self::new(SectionKind::History, "allergies"),
        Self::new(SectionKind::History, "medicines"),
        Self::new(SectionKind::History, "falls in twelve months"),
        Self::new(SectionKind::History, "gets about"),
        Self::new(SectionKind::Consent, "helps to follow"),
        Self::new(SectionKind::Consent, "capacity"),
        Self::new(SectionKind::Consent, "agreed"),
    ];

    const fn new(section: SectionKind, label: &'static str) -> Self {
        Self { section, label }
    }

    /// The same line's label in the language spoken.
    pub fn said(self) -> &'static str {
        match self.label {
            "allergies" => say::allergies(),
            "medicines" => say::medicines(),
            "falls in twelve months" => say::falls_in_twelve_months(),
            "gets about" => say::gets_about(),
            "helps to follow" => say::helps_to_follow(),
            "capacity" => say::capacity(),
            _ => say::agreed(),
        }
    }

    /// What an exam says of it; nothing where it says nothing, or where two versions stand unsettled.
    fn in_exam(self, exam: &Exam) -> Option<String> {
        let section = exam.section(self.section).settled()?.value;
        let english = in_language(Language::English, || section.lines());
        let at = english.iter().position(|line| line.label == self.label)?;
        let line = section.lines().into_iter().nth(at)?;
        match line.said {
            Said::One(words) => Some(words),
            Said::Eyes(_) => None,
        }
    }
}

impl Story {
    /// What was told or judged last of a person, each with its day; what was never said is left out.
    pub fn told_of(&self, person: &PersonId) -> Vec<ToldOn> {
        let exams = self.exams_of(person);
        let latest = |told: Told| {
            exams.iter().find_map(|exam| {
                Some(ToldOn {
                    told,
                    words: told.in_exam(exam)?,
                    on: exam.opened_on(),
                    exam: exam.id(),
                })
            })
        };
        Told::ALL.into_iter().filter_map(latest).collect()
    }
}
