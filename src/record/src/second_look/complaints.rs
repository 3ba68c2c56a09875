//! A complaint that is for today or tomorrow, and nobody referred.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::sections::{SectionKind, Symptom};
use ::words::record::second_look as say;

pub(super) const ALARMING: About = About {
    slug: "alarming-complaint",
    name: say::alarming,
    reason: say::alarming_reason,
    source: say::alarming_source,
    section: SectionKind::Decision,
    speaks_of: &[SectionKind::History, SectionKind::Decision],
};

/// Complaints that the annex puts within hours or a day.
const ALARMING_ONES: [Symptom; 3] = [Symptom::SuddenLoss, Symptom::Curtain, Symptom::JawOrScalp];

/// Asks once something is decided and nobody is referred; each complaint once.
pub(super) fn alarming(case: &Case<'_>) -> Vec<Raised> {
    if !case.is_decided() || case.referral().is_some() {
        return Vec::new();
    }
    let told = case.history.and_then(|history| history.complaints.done());
    let told = told.into_iter().flatten();
    let alarming = told.filter(|complaint| ALARMING_ONES.contains(&complaint.what));
    alarming
        .map(|complaint| {
            let sentence = say::ask_alarming(&complaint.what.words());
            Rule::AlarmingComplaint.asks(complaint.eye, sentence)
        })
        .collect()
}
