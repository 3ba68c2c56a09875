//! How the lenses were found: working distance and lens, vertex distance, the chart's distance.

use ::words::record::second_look as say;
use optics::retinoscopy::{Caution, Media, Reflex};
use optics::{far, format, vertex};

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES, Rule};
use crate::finding::Eye;
use crate::sections::SectionKind;

pub(super) const LENS_MISMATCH: About = About {
    slug: "working-lens-mismatch",
    name: say::mismatch,
    reason: say::mismatch_reason,
    source: say::mismatch_source,
    section: SectionKind::Retinoscopy,
    speaks_of: &[SectionKind::Retinoscopy],
};

pub(super) const UNUSUAL_DISTANCE: About = About {
    slug: "unusual-distance",
    name: say::unusual_distance,
    reason: say::unusual_distance_reason,
    source: say::practice,
    section: SectionKind::Retinoscopy,
    speaks_of: &[SectionKind::Retinoscopy],
};

pub(super) const NO_VERTEX_DISTANCE: About = About {
    slug: "no-vertex-distance",
    name: say::no_vertex,
    reason: say::no_vertex_reason,
    source: say::no_vertex_source,
    section: SectionKind::Subjective,
    speaks_of: LENSES,
};

pub(super) const NEAR_CHART: About = About {
    slug: "near-chart",
    name: say::near_chart,
    reason: say::near_chart_reason,
    source: say::near_chart_source,
    section: SectionKind::Subjective,
    speaks_of: &[SectionKind::Subjective],
};

/// Asks where the working lens and the distance do not belong together. The set-up is common to both eyes.
pub(super) fn lens_mismatch(case: &Case<'_>) -> Vec<Raised> {
    let mismatch = |caution: &Caution| matches!(caution, Caution::Mismatch { .. });
    let said = caution(case, mismatch).map(|(_, caution)| {
        let sentence = say::ask_measured(&caution.sentence());
        Rule::LensMismatch.asks(None, sentence)
    });
    said.into_iter().collect()
}

/// Asks where the distance is out of the ordinary and no dim reflex is written down that would call for it.
pub(super) fn unusual_distance(case: &Case<'_>) -> Vec<Raised> {
    let unusual = |caution: &Caution| matches!(caution, Caution::UnusualDistance { .. });
    let said = caution(case, unusual).filter(|_| !is_dim(case));
    let asked = said.map(|(_, caution)| Rule::UnusualDistance.asks(None, caution.sentence()));
    asked.into_iter().collect()
}

fn caution(case: &Case<'_>, is: impl Fn(&Caution) -> bool) -> Option<(Eye, Caution)> {
    Eye::BOTH.into_iter().find_map(|eye| {
        let cautions = case.retinoscopy?.net(eye)?.cautions;
        Some((eye, cautions.into_iter().find(&is)?))
    })
}

/// Whether either eye gave a reason to come nearer.
fn is_dim(case: &Case<'_>) -> bool {
    case.retinoscopy.is_some_and(|found| {
        found.swept.each().into_iter().any(|(_, swept)| {
            let eye = &swept.sweeping.circumstances;
            matches!(eye.media, Some(Media::Moderate | Media::Dense))
                || matches!(
                    eye.reflex,
                    Some(Reflex::Dull | Reflex::Patchy | Reflex::None)
                )
        })
    })
}

/// Asks what whoever makes the lenses would have to ask, where they are to be made.
pub(super) fn to_be_given(case: &Case<'_>) -> Vec<Raised> {
    if case.leaves_alone() {
        return Vec::new();
    }
    [no_vertex_distance(case), near_chart(case)]
        .into_iter()
        .flatten()
        .collect()
}

fn no_vertex_distance(case: &Case<'_>) -> Option<Raised> {
    let measured = case.subjective.and_then(|chosen| chosen.vertex_mm);
    let strongest = Eye::BOTH
        .into_iter()
        .filter_map(|eye| Some(case.lens(eye)?.lens))
        .filter(vertex::matters)
        .map(|lens| lens.strongest())
        .reduce(f64::max)?;
    measured.is_none().then(|| {
        let sentence = say::ask_vertex(&format::plain(strongest, 2));
        Rule::NoVertexDistance.asks(None, sentence)
    })
}

fn near_chart(case: &Case<'_>) -> Option<Raised> {
    let subjective = case.subjective?;
    let far_from = &case.thresholds.far_from_m;
    let chart_m = subjective.chart.used_at_m;
    let chosen = Eye::BOTH.iter().any(|eye| case.chosen(*eye).is_some());
    if !chosen || subjective.for_the_room || chart_m >= far_from.value() {
        return None;
    }
    let allowance = far::allowance(chart_m).ok()?;
    let sentence = say::ask_near_chart(&format::plain(chart_m, 2), &format::signed(-allowance, 2));
    Some(Rule::NearChart.asks(None, sentence))
}
