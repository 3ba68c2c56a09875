//! A first multifocal for somebody at risk of falling.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::sections::SectionKind;
use ::words::record::second_look as say;

pub(super) const FIRST_MULTIFOCAL: About = About {
    slug: "first-multifocal",
    name: say::multifocal,
    reason: say::multifocal_reason,
    source: say::multifocal_source,
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
        let sentence = say::ask_multifocal(&pair.form.word(), &case.somebody());
        Rule::FirstMultifocal.asks(None, sentence)
    });
    asked.into_iter().collect()
}
