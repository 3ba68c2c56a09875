//! Consent of somebody who was found unable to give it.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::sections::{Agreed, Capacity, SectionKind};
use ::words::record::second_look as say;

pub(super) const CONSENT: About = About {
    slug: "consent-capacity",
    name: say::capacity,
    reason: say::capacity_reason,
    source: say::capacity_source,
    section: SectionKind::Consent,
    speaks_of: &[SectionKind::Consent],
};

/// Asks where capacity is lacking and the consent is the person's own.
pub(super) fn consent(case: &Case<'_>) -> Vec<Raised> {
    let lacks = |capacity: &Capacity| !capacity.can_decide();
    let contradicts = case.consent.is_some_and(|consent| {
        consent.capacity.done().is_some_and(lacks)
            && consent.agreed.done().is_some_and(Agreed::is_own)
    });
    let asked = contradicts.then(|| {
        let sentence = say::ask_capacity();
        Rule::ConsentWithoutCapacity.asks(None, sentence.to_owned())
    });
    asked.into_iter().collect()
}
