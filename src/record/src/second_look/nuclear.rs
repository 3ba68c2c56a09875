//! An eye that became more myopic while its nucleus clouded.

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES_AND_PUPILS, Rule};
use crate::finding::Eye;
use crate::sections::{LensState, SectionKind};
use ::words::record::second_look as say;

pub(super) const NUCLEAR_SHIFT: About = About {
    slug: "nuclear-shift",
    name: say::nuclear,
    reason: say::nuclear_reason,
    source: say::nuclear_source,
    section: SectionKind::Decision,
    speaks_of: LENSES_AND_PUPILS,
};

/// Asks of each eye, unless it was decided to leave the lenses alone or to refer.
pub(super) fn nuclear_shift(case: &Case<'_>) -> Vec<Raised> {
    if case.leaves_alone() || case.referral().is_some() {
        return Vec::new();
    }
    Eye::BOTH
        .into_iter()
        .filter_map(|eye| asked(case, eye))
        .collect()
}

fn asked(case: &Case<'_>, eye: Eye) -> Option<Raised> {
    let from = &case.thresholds.myopic_shift;
    let lens = case.pupils?.eyes.of(eye).lens.done()?;
    let shift = -case.since_last(eye)?.mean_sphere();
    (LensState::is_nuclear(lens) && shift >= from.value()).then(|| {
        let sentence = say::ask_nuclear(&eye.said(), &format_args!("{shift:.2}"));
        Rule::NuclearShift
            .asks(Some(eye), sentence)
            .on_word_of(from.source())
    })
}
