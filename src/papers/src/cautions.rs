//! What whoever makes and fits the glasses has to know, one sentence each, the gravest first.
//!
//! The wording is this project's own and defers to local rules. What each rests on stands beside it.

use ::words::papers::documents as say;
use optics::format::{plain, signed};
use optics::{far, vertex};
use record::{Exam, Eye, Source, Subjective};

/// In metres. From here on a chart counts as far; the 0.17 D that is left is below a trial-lens step (common practice,
/// no source).
const COUNTS_AS_FAR_M: f64 = 6.0;

/// Every caution that goes with an exam's lenses.
pub(crate) fn all(exam: &Exam, subjective: Option<&Subjective>) -> Vec<String> {
    [
        retinoscopy_only(exam),
        no_vertex(exam, subjective),
        near_chart(exam, subjective),
        Some(say::local_rules().to_owned()),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Goes with lenses whatever they are.
/// Where a person can't answer, retinoscopy agrees with a chosen lens to about ±0.65 D (computed from the spread in
/// Jorge et al. 2005, Optom Vis Sci 82:64-68), so whoever reads the paper should know. To say so in the record is
/// common practice, no source.
fn retinoscopy_only(exam: &Exam) -> Option<String> {
    let rests = |eye: &Eye| {
        let lens = exam.final_lens(*eye);
        lens.is_some_and(|lens| lens.source == Source::Retinoscopy)
    };
    let eyes: Vec<Eye> = Eye::BOTH.into_iter().filter(rests).collect();
    match eyes.as_slice() {
        [] => None,
        [one] => Some(say::retinoscopy_only_eye(&one.said())),
        _ => Some(say::retinoscopy_only_both().to_owned()),
    }
}

/// Strong lenses act differently nearer to the eye or farther from it; see [`optics::vertex`].
fn no_vertex(exam: &Exam, subjective: Option<&Subjective>) -> Option<String> {
    let measured = subjective.is_some_and(|subjective| subjective.vertex_mm.is_some());
    let lenses = exam.final_lenses();
    let strong = [lenses.right, lenses.left]
        .into_iter()
        .flatten()
        .any(|found| vertex::matters(&found.lens));
    (strong && !measured).then(|| {
        let from = plain(vertex::MATTERS_FROM, 2);
        say::ask_vertex(&from)
    })
}

/// A lens found with a near chart focuses the eye at the chart; see [`optics::far`].
fn near_chart(exam: &Exam, subjective: Option<&Subjective>) -> Option<String> {
    let chart_m = subjective?.chart.used_at_m;
    let chosen = |eye: &Eye| {
        let lens = exam.final_lens(*eye);
        lens.is_some_and(|lens| lens.source == Source::Subjective)
    };
    if chart_m >= COUNTS_AS_FAR_M || !Eye::BOTH.iter().any(chosen) {
        return None;
    }
    let allowance = far::allowance(chart_m).ok()?;
    Some(say::near_chart(
        &plain(chart_m, 2),
        &signed(-allowance.abs(), 2),
    ))
}
