//! A reflex like scissors, and nothing that follows from it.

use ::words::record::second_look as say;
use optics::retinoscopy::Reflex;

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::sections::{Decision, SectionKind};

pub(super) const SCISSORING: About = About {
    slug: "scissoring",
    name: say::scissoring,
    reason: say::scissoring_reason,
    source: say::practice,
    section: SectionKind::Decision,
    speaks_of: &[SectionKind::Retinoscopy, SectionKind::Decision],
};

/// Asks once something is decided and nobody is referred.
pub(super) fn scissoring(case: &Case<'_>) -> Vec<Raised> {
    let decided = case.decision.filter(|decision| decision.is_made());
    if decided.is_none_or(is_referred) {
        return Vec::new();
    }
    let scissors = |eye: &Eye| {
        let found = case.retinoscopy.map(|found| &found.swept.of(*eye).sweeping);
        found.is_some_and(|found| found.circumstances.reflex == Some(Reflex::Scissoring))
    };
    let eyes = Eye::BOTH.into_iter().filter(scissors);
    eyes.map(|eye| {
        let sentence = say::ask_scissoring(&eye.said());
        Rule::Scissoring.asks(Some(eye), sentence)
    })
    .collect()
}

fn is_referred(decision: &Decision) -> bool {
    decision.refer.is_some()
}
