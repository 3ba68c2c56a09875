//! Consent of somebody who was found unable to give it.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::sections::{Agreed, Capacity, SectionKind};

pub(super) const CONSENT: About = About {
    slug: "consent-capacity",
    name: "own consent without capacity",
    reason: "who can't decide can't consent: somebody with legal power does, or it is done in their best interests",
    source: "Mental Capacity Act 2005, England and Wales, from memory; follow local law",
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
        let sentence = "the person was found unable to decide, and the consent written down is their own: who decided, and on what ground?";
        Rule::ConsentWithoutCapacity.asks(None, sentence.to_owned())
    });
    asked.into_iter().collect()
}
