//! An axis that stands 90 degrees off: half of a transposition, or a meridian written for an axis.
//!
//! Transposing changes the sphere, the sign of the cylinder and the axis. Whoever does one or two of the three writes
//! another lens:
//!
//! ```text
//! sign and axis, not the sphere:   S / C × A  becomes  S / −C × A±90
//! the axis alone, or the rest without it:  in one form of cylinder the axis stands 90 degrees from where it was
//! ```
//!
//! Compared with what retinoscopy found today where the person chose, else with last time.

use ::words::record::second_look as say;
use optics::change::{Change, CylinderChange};
use optics::{Cylinder, SphereCyl};

use super::Raised;
use super::case::Case;
use super::rule::{About, LENSES, Rule};
use crate::finding::Eye;
use crate::sections::SectionKind;

pub(super) const AXIS_CROSSED: About = About {
    slug: "axis-crossed",
    name: say::crossed,
    reason: say::crossed_reason,
    source: say::practice,
    section: SectionKind::Subjective,
    speaks_of: LENSES,
};

/// Asks of each eye whose cylinder looks half transposed.
pub(super) fn axis_crossed(case: &Case<'_>) -> Vec<Raised> {
    Eye::BOTH
        .into_iter()
        .filter_map(|eye| asked(case, eye))
        .collect()
}

fn asked(case: &Case<'_>, eye: Eye) -> Option<Raised> {
    let now = case.lens(eye)?.lens;
    let today = case.chosen(eye).and(case.net(eye));
    let others = [
        (today, say::whose_retinoscopy()),
        (case.last_lens(eye), say::whose_last_time()),
    ];
    others.into_iter().find_map(|(other, whose)| {
        let question = slip(case, &other?, &now)?;
        let sentence = say::ask_crossed(&eye.said(), &whose, &question);
        Some(Rule::AxisCrossed.asks(Some(eye), sentence))
    })
}

fn slip(case: &Case<'_>, other: &SphereCyl, now: &SphereCyl) -> Option<&'static str> {
    if is_half_transposed(case, other, now) {
        return Some(say::ask_transposed());
    }
    let change = Change::between(other, now).ok()?;
    let CylinderChange::Both { from, to } = change.cylinder() else {
        return None;
    };
    (are_crossed(case, from, to)).then_some(say::ask_meridian_for_axis())
}

/// As they are written: signs that differ, axes that cross, and a sphere that stayed.
fn is_half_transposed(case: &Case<'_>, other: &SphereCyl, now: &SphereCyl) -> bool {
    let (Some(from), Some(to)) = (other.cylinder, now.cylinder) else {
        return false;
    };
    let transposed = other.transposed().sphere;
    from.power() * to.power() < 0.0
        && are_crossed(case, from, to)
        && (now.sphere - other.sphere).abs() < (now.sphere - transposed).abs()
}

fn are_crossed(case: &Case<'_>, from: Cylinder, to: Cylinder) -> bool {
    let apart = from
        .axis()
        .power_meridian()
        .apart(to.axis().power_meridian());
    let weaker = from.power().abs().min(to.power().abs());
    apart >= 90.0 - case.thresholds.crossed_within.value()
        && weaker >= case.thresholds.crossed_cylinder.value()
}
