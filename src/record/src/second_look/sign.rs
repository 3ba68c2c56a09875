//! A sphere whose sign flipped since last time. Both are compared in one form of cylinder.

use ::words::record::second_look as say;
use optics::format::power;

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES, Rule};
use crate::finding::Eye;
use crate::sections::SectionKind;

pub(super) const SIGN_FLIPPED: About = About {
    slug: "sign-flipped",
    name: say::sign,
    reason: say::sign_reason,
    source: say::practice,
    section: SectionKind::Subjective,
    speaks_of: LENSES,
};

/// Asks of each eye whose sphere went from plus to minus or back, and not from nearly nothing.
pub(super) fn sign_flipped(case: &Case<'_>) -> Vec<Raised> {
    Eye::BOTH
        .into_iter()
        .filter_map(|eye| asked(case, eye))
        .collect()
}

fn asked(case: &Case<'_>, eye: Eye) -> Option<Raised> {
    let from = &case.thresholds.sign_from;
    let change = case.since_last(eye)?;
    let (was, is) = (change.from().sphere, change.to().sphere);
    let flipped = was * is < 0.0 && was.abs().min(is.abs()) >= from.value();
    flipped.then(|| {
        let sentence = say::ask_sign(&eye.said(), &power(was), &power(is));
        Rule::SignFlipped
            .asks(Some(eye), sentence)
            .on_word_of(from.source())
    })
}
