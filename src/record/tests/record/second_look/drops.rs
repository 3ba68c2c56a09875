//! Drops: the angle before, and the bottle.

use chrono::NaiveDate;
use record::{
    Angle, Anterior, AnteriorEye, Drops, Drug, Eye, Eyes, Finding, Given, Part, Rule, Section,
    WhichEyes,
};

use super::visit::{BOTH, NEITHER, ONCE, RIGHT, asks, raised};
use crate::desk::day;

fn given(drug: Drug, into: WhichEyes) -> Given {
    Given {
        drug,
        strength_percent: Some(0.5),
        batch: "T123".into(),
        expires: Some(day(2026, 12, 31)),
        at: None,
        into,
        by: String::new(),
    }
}

fn drops(given: Given) -> Drops {
    Drops {
        given: Finding::Done(vec![given]),
        ..Drops::default()
    }
}

fn anterior(right: Angle) -> Section {
    Anterior {
        eyes: Eyes {
            right: AnteriorEye {
                angle: Finding::Done(right),
                ..AnteriorEye::default()
            },
            left: AnteriorEye::default(),
        },
        ..Anterior::default()
    }
    .into_section()
}

/// Judge the depth of the angle first: summary of product characteristics of tropicamide, UK.
#[test]
fn widening_wants_a_look_at_the_angle() {
    let asks_of = |drops: Drops| asks(Rule::DropsAngle, &[], &[drops.into_section()]);
    assert_eq!(
        asks_of(drops(given(Drug::Tropicamide, WhichEyes::Both))),
        BOTH
    );
    assert_eq!(
        asks_of(drops(given(Drug::Phenylephrine, WhichEyes::Right))),
        RIGHT
    );
    assert_eq!(
        asks_of(drops(given(Drug::Fluorescein, WhichEyes::Both))),
        NEITHER
    );
    let judged = Drops {
        angle_judged: true,
        ..drops(given(Drug::Tropicamide, WhichEyes::Both))
    };
    assert_eq!(asks_of(judged), NEITHER);
    let none = Drops {
        given: Finding::NotDone {
            reason: "angles narrow".into(),
        },
        ..Drops::default()
    };
    assert_eq!(asks_of(none), NEITHER);
}

/// Closure is possible at van Herick's grade 2 (teaching sheets); who judged it is asked all the same.
#[test]
fn widening_a_narrow_angle_asks_who_watches() {
    let judged = Drops {
        angle_judged: true,
        ..drops(given(Drug::Tropicamide, WhichEyes::Right))
    };
    let with = |angle| {
        let now = [anterior(angle), judged.clone().into_section()];
        asks(Rule::DropsAngle, &[], &now)
    };
    assert_eq!(with(Angle::VanHerick(3)), NEITHER);
    assert_eq!(with(Angle::VanHerick(2)), RIGHT);
    assert_eq!(with(Angle::TorchShallow), RIGHT);
    // The angle of the other eye was not widened.
    let left = drops(given(Drug::Tropicamide, WhichEyes::Left));
    let now = [anterior(Angle::VanHerick(1)), left.into_section()];
    assert_eq!(asks(Rule::DropsAngle, &[], &now), [Some(Eye::Left)]);
}

fn bottle(batch: &str, expires: Option<NaiveDate>) -> [Section; 1] {
    let drop = Given {
        batch: batch.into(),
        expires,
        ..given(Drug::Oxybuprocaine, WhichEyes::Both)
    };
    [drops(drop).into_section()]
}

#[test]
fn a_bottle_has_a_number_and_a_date() {
    let asks_of = |batch, expires| asks(Rule::DropsBottle, &[], &bottle(batch, expires));
    let good = Some(day(2026, 12, 31));
    assert_eq!(asks_of("T123", good), NEITHER);
    assert_eq!(asks_of(" ", good), ONCE);
    assert_eq!(asks_of("T123", None), ONCE);
    let asked = raised(&[], &bottle("", None));
    assert_eq!(
        asked[0].sentence,
        "oxybuprocaine: the batch number and date are not written down: what stands on the bottle?"
    );
}

/// Today is 4 March 2026; the last day counts.
#[test]
fn a_bottle_past_its_date_is_asked_about() {
    let asks_of = |on| asks(Rule::DropsExpired, &[], &bottle("T123", Some(on)));
    assert_eq!(asks_of(day(2026, 3, 4)), NEITHER);
    assert_eq!(asks_of(day(2026, 3, 3)), ONCE);
    let asked = raised(&[], &bottle("T123", Some(day(2026, 2, 28))));
    assert!(
        asked[0].sentence.contains("28 February 2026"),
        "{}",
        asked[0].sentence
    );
}
