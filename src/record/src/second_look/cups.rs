//! Cups of the discs that differ.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::sections::SectionKind;
use ::words::record::second_look as say;

pub(super) const CUPS_UNEQUAL: About = About {
    slug: "cups-unequal",
    name: say::cups,
    reason: say::cups_reason,
    source: say::practice,
    section: SectionKind::Posterior,
    speaks_of: &[SectionKind::Posterior, SectionKind::Decision],
};

/// Ratios are written in hundredths; their difference is not exact in binary.
const DUST: f64 = 1e-9;

/// Asks where the ratios differ much, the discs are not said to differ in size, and nobody is referred.
pub(super) fn cups_unequal(case: &Case<'_>) -> Vec<Raised> {
    asked(case).into_iter().collect()
}

fn asked(case: &Case<'_>) -> Option<Raised> {
    let from = &case.thresholds.cups_apart;
    let eyes = &case.posterior?.eyes;
    let ratio = |eye| eyes.of(eye).cup_to_disc.done().copied();
    let (right, left) = (ratio(Eye::Right)?, ratio(Eye::Left)?);
    let same_size = eyes.right.disc_size == eyes.left.disc_size;
    let apart = (right - left).abs() >= from.value() - DUST;
    (apart && same_size && case.referral().is_none()).then(|| {
        let sentence = say::ask_cups(&format_args!("{right:.2}"), &format_args!("{left:.2}"));
        Rule::CupsUnequal
            .asks(None, sentence)
            .on_word_of(from.source())
    })
}
