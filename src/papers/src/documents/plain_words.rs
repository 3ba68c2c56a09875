//! Words for people who are not of the trade: short sentences, no terms.
//!
//! The tests hold every note that is made of them to an early-teen reading level (Flesch–Kincaid grade, Kincaid et al. 1975).
//! What the drops do: summary of product characteristics of tropicamide (UK), and two leaflets for people who were given
//! it; the four signs of a closing angle are those of the leaflets.

use ::words::papers::notes as say;
use record::{Drops, Drug, Exam, LensForm, Order, Urgency, UsedFor};

/// What a pair is for: `for things far away: faces, the TV, and walking about`.
pub(super) fn used_for(used_for: UsedFor) -> &'static str {
    match used_for {
        UsedFor::Far => say::used_far(),
        UsedFor::Near => say::used_near(),
        UsedFor::Between => say::used_between(),
        UsedFor::FarAndNear => say::used_far_and_near(),
    }
}

/// What to mind with a pair.
pub(super) fn mind_with(used: UsedFor, form: LensForm) -> Option<&'static str> {
    match (used, form.is_multifocal()) {
        (UsedFor::Near | UsedFor::Between, _) => Some(say::mind_near()),
        (_, true) => Some(say::mind_multifocal()),
        _ => None,
    }
}

/// The glasses that are ordered, each with what it is for and what to mind.
pub(super) fn pairs(exam: &Exam) -> Vec<(UsedFor, LensForm, Option<String>)> {
    let order = exam.part::<Order>().settled().map(|version| version.value);
    let pairs = order.into_iter().flat_map(|order| &order.pairs);
    pairs
        .map(|pair| (pair.used_for, pair.form, pair.engraved.clone()))
        .collect()
}

/// What drops do to a person for the rest of the day.
#[allow(
    clippy::struct_excessive_bools,
    reason = "each is an effect of its own, and any of them go together"
)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Effects {
    /// The pupils are wide for hours.
    pub wide: bool,
    /// Near is blurred for a day.
    pub for_a_day: bool,
    /// The eyes are numb for a while.
    pub numb: bool,
    /// The eyes or the skin about them may look yellow.
    pub yellow: bool,
    /// Something that is not known here.
    pub other: bool,
}

impl Effects {
    pub(super) fn of(drops: &Drops) -> Self {
        drops
            .each()
            .fold(Self::default(), |so_far, given| match given.drug {
                Drug::Tropicamide | Drug::Phenylephrine => Self {
                    wide: true,
                    ..so_far
                },
                Drug::Cyclopentolate => Self {
                    wide: true,
                    for_a_day: true,
                    ..so_far
                },
                Drug::Proxymetacaine | Drug::Oxybuprocaine => Self {
                    numb: true,
                    ..so_far
                },
                Drug::Fluorescein => Self {
                    yellow: true,
                    ..so_far
                },
                Drug::Other(_) => Self {
                    other: true,
                    ..so_far
                },
            })
    }

    /// How long wide pupils last.
    pub(super) fn how_long(self) -> &'static str {
        if self.for_a_day {
            say::a_day()
        } else {
            say::six_hours()
        }
    }
}

/// The signs of a closing angle, as the leaflets name them.
pub(super) const SIGNS: [fn() -> &'static str; 4] = [
    say::sign_hurts,
    say::sign_red,
    say::sign_rings,
    say::sign_sick,
];

/// How soon a referral is, in plain words.
pub(super) fn how_soon(urgency: Urgency) -> &'static str {
    match urgency {
        Urgency::Routine => say::soon_routine(),
        Urgency::Soon => say::soon_soon(),
        Urgency::Urgent => say::soon_urgent(),
        Urgency::Emergency => say::soon_emergency(),
    }
}
