//! A sphere whose sign flipped since last time. Both are compared in one form of cylinder.

use optics::format::power;

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES, PRACTICE, Rule};
use crate::finding::Eye;
use crate::sections::SectionKind;

pub(super) const SIGN_FLIPPED: About = About {
    slug: "sign-flipped",
    name: "sign of the sphere flipped since last time",
    reason: "a wrong sign doubles the error that the lens was to take away",
    source: PRACTICE,
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
        let sentence = format!(
            "{} eye: the sphere was {} last time and is {} now: is the sign right?",
            eye.word(),
            power(was),
            power(is)
        );
        Rule::SignFlipped
            .asks(Some(eye), sentence)
            .on_word_of(from.source())
    })
}
