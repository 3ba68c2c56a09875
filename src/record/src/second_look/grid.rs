//! A grid that is bent or has a gap, and nothing urgent that follows.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::sections::{Grid, SectionKind, Urgency};
use ::words::record::second_look as say;

pub(super) const GRID_BENT: About = About {
    slug: "grid-bent",
    name: say::grid,
    reason: say::grid_reason,
    source: say::grid_source,
    section: SectionKind::Decision,
    speaks_of: &[SectionKind::Fields, SectionKind::Decision],
};

/// Asks of each eye once something is decided, unless the gap is known of old.
pub(super) fn grid_bent(case: &Case<'_>) -> Vec<Raised> {
    if !case.is_decided() || case.referral() >= Some(Urgency::Urgent) {
        return Vec::new();
    }
    let bent = |eye: &Eye| {
        let grid = case.fields.and_then(|fields| fields.grid.of(*eye).done());
        grid.is_some_and(is_new)
    };
    let eyes = Eye::BOTH.into_iter().filter(bent);
    eyes.map(|eye| {
        let sentence = say::ask_grid(&eye.said());
        Rule::GridBent.asks(Some(eye), sentence)
    })
    .collect()
}

fn is_new(grid: &Grid) -> bool {
    !grid.is_whole() && grid.known != Some(true)
}
