//! Changes that may be too much: for somebody old, and between the two eyes. What is much lies in [`optics::change`].

use ::words::record::second_look as say;
use optics::Eyes;
use optics::change::{Caution, Change};
use optics::prism::Reading;

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES_AND_WORN, Rule};
use crate::finding::Eye;
use crate::sections::SectionKind;

pub(super) const LARGE_CHANGE: About = About {
    slug: "large-change",
    name: say::large_change,
    reason: say::large_change_reason,
    source: say::large_change_source,
    section: SectionKind::Subjective,
    speaks_of: LENSES_AND_WORN,
};

pub(super) const NEW_ANISOMETROPIA: About = About {
    slug: "new-anisometropia",
    name: say::anisometropia,
    reason: say::anisometropia_reason,
    source: say::anisometropia_source,
    section: SectionKind::Subjective,
    speaks_of: LENSES_AND_WORN,
};

/// Asks of each eye, where new lenses are not left alone and the person is old or fell.
pub(super) fn large_change(case: &Case<'_>) -> Vec<Raised> {
    if case.leaves_alone() || !case.may_fall() {
        return Vec::new();
    }
    Eye::BOTH
        .into_iter()
        .filter_map(|eye| asked(case, eye))
        .collect()
}

fn asked(case: &Case<'_>, eye: Eye) -> Option<Raised> {
    let change = case.change(eye)?;
    let cautions = change.cautions(&case.thresholds.change);
    let blur_from = case.thresholds.axis_blur_from.value();
    let much = |caution: &&Caution| match caution {
        Caution::Axis { blur, .. } => *blur >= blur_from,
        _ => true,
    };
    let source = cautions.iter().find(much)?.source();
    let sentence = say::ask_large_change(&eye.said(), &change.sentence(), &case.somebody());
    let asked = Rule::LargeChange.asks(Some(eye), sentence);
    Some(asked.on_word_of(source))
}

/// Asks where the change sets the eyes farther apart, with what that does at the reading point.
pub(super) fn new_anisometropia(case: &Case<'_>) -> Vec<Raised> {
    let asked = case
        .both(Case::change)
        .filter(|_| !case.leaves_alone())
        .and_then(|changes| set_apart(case, &changes));
    asked.into_iter().collect()
}

fn set_apart(case: &Case<'_>, changes: &Eyes<Change>) -> Option<Raised> {
    let caution = changes.caution(&case.thresholds.change)?;
    let sentence = say::ask_anisometropia(
        &format_args!("{:.2}", changes.new_anisometropia()),
        &at_reading(case, changes),
    );
    let asked = Rule::NewAnisometropia.asks(None, sentence);
    Some(asked.on_word_of(caution.source()))
}

/// ", and at the reading point the right eye has 1.25 more base down than the left".
fn at_reading(case: &Case<'_>, changes: &Eyes<Change>) -> String {
    let drop = case.thresholds.reading_drop_mm.value();
    let lenses = changes.map(|change| *change.to());
    let prism = Reading::new(drop, 0.0).and_then(|reading| reading.through(&lenses));
    prism.map_or_else(
        |_| String::new(),
        |prism| say::at_reading(&prism.sentence(), &drop),
    )
}
