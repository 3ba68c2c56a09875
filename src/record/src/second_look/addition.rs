//! The addition: not there, or not what age and distance lead to expect.
//!
//! ```text
//! expected:  from 1/d − share × mean amplitude (Hofstetter)  or the table's weaker end, whichever is weaker
//!            to   1/d − share × least amplitude              or the table's stronger end, whichever is stronger
//! ```
//!
//! d is the distance that it is meant for; the share and the table by age are those of [`optics::near`]. The table is taken
//! to be for 40 cm (common practice, no source) and is moved with the distance. An addition of 0 that was accepted is
//! an answer: none is needed.

use ::words::record::second_look as say;
use optics::format::{plain, power};
use optics::near::{AddRange, Share, by_age, hofstetter, tentative};

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::{Eye, Eyes};
use crate::sections::SectionKind;

pub(super) const ADDITION_MISSING: About = About {
    slug: "addition-missing",
    name: say::addition_missing,
    reason: say::addition_missing_reason,
    source: say::millodot,
    section: SectionKind::Subjective,
    speaks_of: FOR_NEAR,
};

pub(super) const ADDITION_OUT_OF_RANGE: About = About {
    slug: "addition-out-of-range",
    name: say::addition_out,
    reason: say::addition_out_reason,
    source: say::millodot_and_hofstetter,
    section: SectionKind::Subjective,
    speaks_of: FOR_NEAR,
};

const FOR_NEAR: &[SectionKind] = &[SectionKind::Subjective, SectionKind::Near];

/// A difference in floating arithmetic is no difference.
const DUST: f64 = 1e-9;

/// The distance that a table by age is for, in dioptres: 40 cm. Common practice, no source.
const TABLE_DEMAND: f64 = 2.5;

pub(super) const ADDITION_UNEQUAL: About = About {
    slug: "addition-unequal",
    name: say::addition_unequal,
    reason: say::addition_unequal_reason,
    source: say::practice,
    section: SectionKind::Near,
    speaks_of: FOR_NEAR,
};

/// Asks for an addition where lenses are prescribed without one, and about one that stands out or differs.
pub(super) fn addition(case: &Case<'_>) -> Vec<Raised> {
    let asked = match additions(case).as_slice() {
        [] => [missing(case), None],
        [one, rest @ ..] => {
            let other = rest.first().and_then(|other| unequal(*one, *other));
            [other, out_of_range(case, *one)]
        }
    };
    asked.into_iter().flatten().collect()
}

/// The additions in use, in dioptres, right first: as each eye accepted them near by, else the one that both have.
fn additions(case: &Case<'_>) -> Vec<f64> {
    let accepted = case.near.map(|near| &near.accepted_d);
    let accepted = accepted.into_iter().flat_map(Eyes::each);
    let accepted: Vec<f64> = accepted
        .filter_map(|(_, add)| add.done().copied())
        .collect();
    if !accepted.is_empty() {
        return accepted;
    }
    let chosen = case.subjective.and_then(|subjective| subjective.add);
    chosen.map(|add| add.power).into_iter().collect()
}

/// The distance that they are for, in centimetres.
fn at_cm(case: &Case<'_>) -> Option<f64> {
    let measured = case.near.and_then(|near| near.distance_cm.done().copied());
    measured.or_else(|| Some(case.subjective?.add?.at_cm))
}

/// Why there is none, where somebody said why.
fn is_explained(case: &Case<'_>) -> bool {
    let accepted = case.near.map(|near| &near.accepted_d);
    let each = accepted.into_iter().flat_map(Eyes::each);
    each.into_iter().any(|(_, add)| add.why_not().is_some())
}

fn missing(case: &Case<'_>) -> Option<Raised> {
    let from = &case.thresholds.addition_from_years;
    let age = case.age?;
    let has_lens = Eye::BOTH.iter().any(|eye| case.lens(*eye).is_some());
    let wanted = case.prescribes() && has_lens && f64::from(age.years) >= from.value();
    (wanted && !is_explained(case)).then(|| {
        let sentence = say::ask_addition_missing(&case.somebody());
        Rule::AdditionMissing
            .asks(None, sentence)
            .on_word_of(from.source())
    })
}

fn unequal(right: f64, left: f64) -> Option<Raised> {
    ((right - left).abs() > DUST).then(|| {
        let sentence = say::ask_addition_unequal(&power(right), &power(left));
        Rule::AdditionUnequal.asks(None, sentence)
    })
}

fn out_of_range(case: &Case<'_>, add: f64) -> Option<Raised> {
    let within = &case.thresholds.addition_within;
    let at_cm = at_cm(case)?;
    let expected = expected(case, at_cm)?;
    let (least, most) = (
        (expected.least - within.value()).max(0.0),
        expected.most + within.value(),
    );
    let ordinary = add >= least - DUST && add <= most + DUST;
    (!ordinary).then(|| {
        let (at, to) = (plain(at_cm, 1), power(most));
        let sentence =
            say::ask_addition_out(&power(add), &at, &power(least), &to, &case.somebody());
        Rule::AdditionOutOfRange
            .asks(None, sentence)
            .on_word_of(within.source())
    })
}

/// What to expect at this distance. Of an unknown age nothing but that the distance itself is the most.
fn expected(case: &Case<'_>, at_cm: f64) -> Option<AddRange> {
    let demand = 100.0 / at_cm;
    let Some(age) = case.age.map(|age| f64::from(age.years)) else {
        return Some(AddRange {
            least: 0.0,
            most: demand,
        });
    };
    let (amplitude, share) = (hofstetter(age).ok()?, Share::for_age(age).ok()?);
    let by_formula = |amplitude| Some(tentative(at_cm, amplitude, share).ok()?.dioptres());
    let (least, most) = (by_formula(amplitude.mean)?, by_formula(amplitude.least)?);
    let table = by_age(age).ok()?.map(|table| {
        let moved = demand - TABLE_DEMAND;
        (table.least + moved, table.most + moved)
    });
    Some(match table {
        Some((weaker, stronger)) => AddRange {
            least: least.min(weaker),
            most: most.max(stronger),
        },
        None => AddRange { least, most },
    })
}
