//! A grid that is bent or has a gap, and nothing urgent that follows.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::sections::{Grid, SectionKind, Urgency};

pub(super) const GRID_BENT: About = About {
    slug: "grid-bent",
    name: "bent grid without an urgent referral",
    reason: "fluid under the macula is treated within weeks or not at all with success",
    source: "NICE NG82: suspected late wet macular degeneration is referred within one working day; follow local rules",
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
        let sentence = format!(
            "{} eye: the grid is bent or has a gap, and nobody says that it was so before: is it urgent by your local rules?",
            eye.word()
        );
        Rule::GridBent.asks(Some(eye), sentence)
    })
    .collect()
}

fn is_new(grid: &Grid) -> bool {
    !grid.is_whole() && grid.known != Some(true)
}
