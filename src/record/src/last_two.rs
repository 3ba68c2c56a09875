//! A person's last two exams beside one another, section by section.

use crate::differences::{Change, Difference, differences};
use crate::exam::Exam;
use crate::ids::PersonId;
use crate::manner::FarUnit;
use crate::sections::SectionKind;
use crate::story::Story;

/// The last two exams.
#[derive(Clone, Debug, PartialEq)]
pub struct LastTwo<'a> {
    /// The one before.
    pub before: &'a Exam,
    /// The newest.
    pub now: &'a Exam,
    /// Every section that either has, in the order in which an exam goes.
    pub sections: Vec<Together>,
}

/// One section of both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Together {
    /// Which section.
    pub kind: SectionKind,
    /// Each line, as it stood and as it stands.
    pub lines: Vec<Difference>,
}

impl Together {
    /// How many lines differ.
    pub fn differing(&self) -> usize {
        let lines = self.lines.iter();
        lines.filter(|line| line.change() != Change::Same).count()
    }
}

impl Story {
    /// A person's two newest exams; nothing where there are not two. Of a section with two unsettled versions the one
    /// written last is shown.
    pub fn last_two(&self, person: &PersonId, far: FarUnit) -> Option<LastTwo<'_>> {
        let exams = self.exams_of(person);
        let [now, before, ..] = exams.as_slice() else {
            return None;
        };
        let sections = SectionKind::ALL.into_iter().map(|kind| {
            let lines = |exam: &Exam| {
                let latest = exam.section(kind).latest();
                latest.map_or_else(Vec::new, |version| version.value.lines_in(far))
            };
            let lines = differences(&lines(before), &lines(now));
            Together { kind, lines }
        });
        Some(LastTwo {
            before,
            now,
            sections: sections
                .filter(|section| !section.lines.is_empty())
                .collect(),
        })
    }
}
