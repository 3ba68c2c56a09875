//! The final lens as a vector: what adds, and so can be followed.

use ::words::record::story as say;
use optics::{PowerVector, SphereCyl};

use super::{Measure, Noted, settled};
use crate::exam::Exam;
use crate::finding::Eye;
use crate::ids::PersonId;
use crate::story::Story;
use crate::summary::Source;

/// One component of the final lens.
pub(super) fn lens(exam: &Exam, eye: Eye, measure: &Measure, of: fn(&PowerVector) -> f64) -> Noted {
    let Some(found) = exam.final_lens(eye) else {
        let unsettled = settled(&exam.subjective()).err();
        let unsettled = unsettled.or_else(|| settled(&exam.retinoscopy()).err());
        return Noted::missing(unsettled.or_else(|| exam.why_no_lens(eye)));
    };
    let value = of(&found.lens.vector());
    let by = match found.source {
        Source::Subjective => say::chosen_by_person(),
        Source::Retinoscopy => say::by_retinoscopy(),
    };
    Noted::found(
        value,
        measure.with_unit(value),
        format!("{}, {by}", found.lens),
    )
}

/// As many exams are laid on one plane: more would hide one another.
const RECENT: usize = 4;

impl Story {
    /// An eye's final lens in each of a person's newest exams, the newest first, with how many exams ago it was. An exam
    /// without a lens counts, and is left out.
    pub fn recent_lenses(&self, person: &PersonId, eye: Eye) -> Vec<(usize, SphereCyl)> {
        let exams = self.exams_of(person).into_iter().take(RECENT).enumerate();
        exams
            .filter_map(|(ago, exam)| Some((ago, exam.final_lens(eye)?.lens)))
            .collect()
    }
}
