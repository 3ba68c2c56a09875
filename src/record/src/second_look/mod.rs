//! The second look: rules over an exam that ask about what a tired person may have slipped on.
//!
//! Each rule is a small function over today's sections, the same person's earlier ones and their age. It never blocks and
//! never corrects: it puts one question, with a reason and who says so. Figures that local rules may change are
//! [`Thresholds`]. A question that was answered ([`Story::answer`]) is not put again until a section that it speaks of
//! has a later version.
//!
//! A cylinder without an axis can't be written down at all ([`optics::SphereCyl`]), so no rule asks for it.
//!
//! ```
//! # use chrono::NaiveDate;
//! # use record::{ExamId, Story};
//! # use uuid::Uuid;
//! use record::{Thresholds, second_look};
//!
//! # let story = Story::default();
//! # let exam = ExamId::from_uuid(Uuid::nil());
//! # let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
//! for asked in second_look(&story, &exam, &Thresholds::default(), today) {
//!     println!("{} ({})", asked.sentence, asked.source);
//! }
//! ```

mod acuity;
mod addition;
mod answers;
mod case;
mod complaints;
mod consent;
mod crossed;
mod cups;
mod distance;
mod drops;
mod grid;
mod large_change;
mod multifocal;
mod nuclear;
mod one_slip;
mod pressure;
mod rule;
mod scissoring;
mod sign;
mod swapped;
mod thresholds;
mod trial_frame;

pub use answers::Answer;
pub use rule::Rule;
pub use thresholds::Thresholds;

use chrono::NaiveDate;

use crate::finding::Eye;
use crate::ids::ExamId;
use crate::sections::{Section, SectionKind};
use crate::story::Story;
use case::Case;

/// Something that is worth a second thought.
#[derive(Clone, Debug, PartialEq)]
pub struct Raised {
    /// Which rule asks.
    pub rule: Rule,
    /// Of which eye; none where it is about both or neither.
    pub eye: Option<Eye>,
    /// The question, in plain words.
    pub sentence: String,
    /// Why it is asked.
    pub reason: &'static str,
    /// Who says so: a publication, "common practice, no source", or whoever set the threshold.
    pub source: String,
    /// Where it can be put right.
    pub section: SectionKind,
}

/// What is worth a second thought in an exam as it is written down, the gravest slips first. Nothing for an exam that is not
/// on record.
///
/// `today` is the day of the examination: it tells the age. Of a section with two unsettled versions nothing is asked.
pub fn second_look(
    story: &Story,
    exam: &ExamId,
    thresholds: &Thresholds,
    today: NaiveDate,
) -> Vec<Raised> {
    second_look_with(story, exam, &[], thresholds, today)
}

/// The same while somebody writes: sections that are not written down yet stand in place of those that are.
///
/// An answer does not cover a section that differs from what was answered.
pub fn second_look_with(
    story: &Story,
    exam: &ExamId,
    unsaved: &[Section],
    thresholds: &Thresholds,
    today: NaiveDate,
) -> Vec<Raised> {
    let Some(known) = story.exam(exam) else {
        return Vec::new();
    };
    let case = Case::new(story, known, unsaved, thresholds, today);
    let raised = RULES.iter().flat_map(|rule| rule(&case));
    let open = raised.filter(|asked| !known.is_answered(asked, unsaved));
    one_slip::one_question_a_slip(open.collect())
}

/// Every rule, in the order in which questions are put.
const RULES: [fn(&Case<'_>) -> Vec<Raised>; 23] = [
    complaints::alarming,
    drops::angle,
    pressure::pressure_high,
    grid::grid_bent,
    swapped::eyes_swapped,
    distance::distance_slip,
    sign::sign_flipped,
    crossed::axis_crossed,
    trial_frame::lens_mismatch,
    trial_frame::unusual_distance,
    scissoring::scissoring,
    pressure::pressure_unequal,
    cups::cups_unequal,
    acuity::much_worse,
    acuity::worse_through_pinhole,
    nuclear::nuclear_shift,
    large_change::large_change,
    large_change::new_anisometropia,
    addition::addition,
    trial_frame::to_be_given,
    multifocal::first_multifocal,
    drops::bottles,
    consent::consent,
];
