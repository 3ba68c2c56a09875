//! Eyes that look swapped.
//!
//! ```text
//! as written:  |R − R'| + |L − L'|        the other way round:  |R − L'| + |L − R'|
//! ```
//!
//! in dioptres of blur strength ([`optics::PowerVector::distance`]); R' and L' are last time's lenses, or what retinoscopy
//! found today. Each eye must be nearer to the other one, and both together by a margin that chance does not make.

use ::words::record::second_look as say;
use optics::SphereCyl;

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES, Rule};
use crate::finding::Eyes;
use crate::sections::SectionKind;

pub(super) const EYES_SWAPPED: About = About {
    slug: "eyes-swapped",
    name: say::swapped,
    reason: say::swapped_reason,
    source: say::practice,
    section: SectionKind::Subjective,
    speaks_of: LENSES,
};

/// Asks where the lenses go better with the other eyes' of last time, or of today's retinoscopy.
pub(super) fn eyes_swapped(case: &Case<'_>) -> Vec<Raised> {
    let by = &case.thresholds.swapped_by;
    let sentence = swapped_since(case, by.value()).or_else(|| swapped_today(case, by.value()));
    let asked = sentence.map(|sentence| Rule::EyesSwapped.asks(None, sentence));
    asked
        .map(|asked| asked.on_word_of(by.source()))
        .into_iter()
        .collect()
}

fn swapped_since(case: &Case<'_>, by: f64) -> Option<String> {
    let now = case.both(|case, eye| Some(case.lens(eye)?.lens))?;
    let last = case.both(Case::last_lens)?;
    are_swapped(&now, &last, by).then(|| say::ask_swapped_last().to_owned())
}

fn swapped_today(case: &Case<'_>, by: f64) -> Option<String> {
    let chosen = case.both(Case::chosen)?;
    let found = case.both(Case::net)?;
    are_swapped(&chosen, &found, by).then(|| say::ask_swapped_retinoscopy().to_owned())
}

fn are_swapped(now: &Eyes<SphereCyl>, then: &Eyes<SphereCyl>, by: f64) -> bool {
    let apart = |one: &SphereCyl, other: &SphereCyl| one.vector().distance(&other.vector());
    let right = apart(&now.right, &then.right) - apart(&now.right, &then.left);
    let left = apart(&now.left, &then.left) - apart(&now.left, &then.right);
    right > 0.0 && left > 0.0 && right + left >= by
}
