//! The working distance taken off twice, or not at all.
//!
//! Retinoscopy's net against the chosen lenses, or, where nobody could choose, against last time's. In both eyes the mean
//! spheres differ by what [`Slip`] says that the slip leaves. A chosen lens is brought from the chart to far first.

use ::words::record::second_look as say;
use optics::retinoscopy::WorkingDistance;
use optics::retinoscopy::slips::Slip;
use optics::{SphereCyl, far, format};

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES, Rule};
use crate::finding::{Eye, Eyes};
use crate::sections::SectionKind;

pub(super) const DISTANCE_SLIP: About = About {
    slug: "distance-slip",
    name: say::distance_slip,
    reason: say::distance_slip_reason,
    source: say::practice,
    section: SectionKind::Retinoscopy,
    speaks_of: LENSES,
};

/// Asks where both eyes are off by the working distance, the same way.
pub(super) fn distance_slip(case: &Case<'_>) -> Vec<Raised> {
    asked(case).into_iter().collect()
}

fn asked(case: &Case<'_>) -> Option<Raised> {
    let found = case.both(Case::net)?;
    let distance = case.retinoscopy?.setup.distance;
    let (against, whose) = if let Some(chosen) = case.both(for_far) {
        (chosen, say::whose_chosen())
    } else if Eye::BOTH.iter().all(|eye| case.chosen(*eye).is_none()) {
        (case.both(Case::last_lens)?, say::whose_last_lenses())
    } else {
        return None;
    };
    let (way, question) = SLIPS.iter().find_map(|(slip, way, question)| {
        is_off_by(case, slip(distance).too_plus(), &found, &against).then_some((way, question))
    })?;
    let sentence = say::ask_distance_slip(
        &way(),
        &whose,
        &format::plain(distance.dioptres(), 2),
        &format::plain(distance.cm(), 1),
        &question(),
    );
    Some(Rule::DistanceSlip.asks(None, sentence))
}

type Kind = (
    fn(WorkingDistance) -> Slip,
    fn() -> &'static str,
    fn() -> &'static str,
);

const SLIPS: [Kind; 2] = [
    (Slip::Forgotten, say::slip_more_plus, say::slip_forgotten),
    (Slip::Doubled, say::slip_less_plus, say::slip_doubled),
];

/// The chosen lens as it would be for far. From the distance that counts as far the rest is left out, as in a prescription.
fn for_far(case: &Case<'_>, eye: Eye) -> Option<SphereCyl> {
    let chosen = case.chosen(eye)?;
    let chart_m = case.subjective?.chart.used_at_m;
    if chart_m >= case.thresholds.far_from_m.value() {
        return Some(chosen);
    }
    far::for_far(&chosen, chart_m).ok()
}

fn is_off_by(
    case: &Case<'_>,
    slip: f64,
    found: &Eyes<SphereCyl>,
    against: &Eyes<SphereCyl>,
) -> bool {
    let within = case.thresholds.distance_within.value();
    let beyond = case.thresholds.distance_beyond.value();
    Eye::BOTH.into_iter().all(|eye| {
        let off = found.of(eye).mean_sphere() - against.of(eye).mean_sphere();
        (off - slip).abs() <= within && off.abs() > beyond
    })
}
