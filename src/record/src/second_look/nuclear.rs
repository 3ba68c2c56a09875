//! An eye that became more myopic while its nucleus clouded.

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES_AND_PUPILS, Rule};
use crate::finding::Eye;
use crate::sections::{LensState, SectionKind};

pub(super) const NUCLEAR_SHIFT: About = About {
    slug: "nuclear-shift",
    name: "myopic shift with a clouded nucleus",
    reason: "a nucleus that goes on hardening soon outgrows new lenses, and near may be read without any",
    source: "Fotedar et al. 2008, Ophthalmology 115:1273-1278: −0.96 D in ten years with nuclear cataract, +0.26 D without",
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
        let sentence = format!(
            "{} eye: {shift:.2} D more myopic than last time, and its nucleus is clouded: new lenses, surgery, or wait?",
            eye.word()
        );
        Rule::NuclearShift
            .asks(Some(eye), sentence)
            .on_word_of(from.source())
    })
}
