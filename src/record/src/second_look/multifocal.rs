//! A first multifocal for somebody at risk of falling.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::sections::SectionKind;

pub(super) const FIRST_MULTIFOCAL: About = About {
    slug: "first-multifocal",
    name: "first multifocal for somebody at risk of falling",
    reason: "through the lower part of a multifocal lens the ground is blurred and stands elsewhere",
    source: "Lord et al. 2002, J Am Geriatr Soc 50:1760-1766: wearers fell more, odds ratio 2.29 (1.06 to 4.92)",
    section: SectionKind::Order,
    speaks_of: &[SectionKind::Order, SectionKind::WornGlasses],
};

/// Asks where a multifocal pair is ordered, none is worn, and the person is old or fell, and gets about.
pub(super) fn first_multifocal(case: &Case<'_>) -> Vec<Raised> {
    let pairs = case.order.into_iter().flat_map(|order| &order.pairs);
    let ordered = pairs.into_iter().find(|pair| pair.form.is_multifocal());
    let worn = case.worn.filter(|worn| worn.pairs.done().is_some());
    let first = worn.is_some_and(|worn| !worn.has_multifocals());
    let asked = ordered.filter(|_| first && case.may_fall()).map(|pair| {
        let sentence = format!(
            "a {} pair is ordered for {}, who wears none: would two single pairs be safer on the stairs?",
            pair.form.word(),
            case.somebody()
        );
        Rule::FirstMultifocal.asks(None, sentence)
    });
    asked.into_iter().collect()
}
