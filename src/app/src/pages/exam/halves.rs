//! What is half entered of an eye's finding: it stands in the draft until it is whole or cleared.

use crate::session::Door;
use record::{ExamId, Eye, Half, SectionKind};
use widgets::half;

/// The half findings of one section.
#[derive(Clone, Copy)]
pub struct Halves {
    /// Where they are kept.
    pub door: Door,
    /// The exam.
    pub exam: ExamId,
    /// The section.
    pub kind: SectionKind,
}

impl Halves {
    /// What is entered of a finding so far; follows every change.
    pub fn of(self, eye: Eye, part: &str) -> Option<Half> {
        self.door.draft(self.exam, self.kind)?.half(eye, part)
    }

    /// Keeps half of a finding, or drops it. The blank finding beside it is kept first: it begins the draft.
    pub fn keep(self, eye: Eye, part: &str, half: Option<Half>) {
        self.door.keep_half((self.exam, self.kind), eye, part, half);
    }
}

/// The numbers of a lens, where they are only half of one.
pub fn of_lens(numbers: half::Half) -> Option<Half> {
    numbers.whole().is_err().then_some(Half::Lens {
        sphere: numbers.sphere,
        cylinder: numbers.cylinder,
        axis: numbers.axis,
    })
}

/// The numbers to go on from.
pub fn to_lens(half: Option<Half>) -> Option<half::Half> {
    match half? {
        Half::Lens {
            sphere,
            cylinder,
            axis,
        } => Some(half::Half {
            sphere,
            cylinder,
            axis,
        }),
        Half::Fingers | Half::Meridians { .. } | Half::OverLens { .. } => None,
    }
}
