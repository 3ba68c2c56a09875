//! Large changes, new anisometropia, and what holds of any sections at all.

use optics::change::Threshold;
use proptest::prelude::*;
use record::{Born, Eye, Glasses, Rule, Thresholds, check, second_look};

use super::visit::{
    BORN, NEITHER, ONCE, RIGHT, asks, asks_at, decided, desk, look, raised, subjective,
};
use crate::any::section;
use crate::desk::{Desk, EXAM, day};

/// About 0.75 D at most in frail people: Elliott 2014, Optom Vis Sci 91:593-601.
#[test]
fn more_than_three_quarters_is_a_large_change_from_75_years_on() {
    let then = [subjective("+1.00 DS", "+1.00 DS")];
    let now = |text| [subjective(text, "+1.00 DS")];
    let asks_of = |age, text| asks_at(Some(age), Rule::LargeChange, &then, &now(text));
    assert_eq!(asks_of(75, "+1.75 DS"), NEITHER);
    assert_eq!(asks_of(75, "+2.00 DS"), RIGHT);
    assert_eq!(asks_of(74, "+2.00 DS"), NEITHER);
    assert_eq!(
        asks_at(None, Rule::LargeChange, &then, &now("+2.00 DS")),
        NEITHER
    );
    let [now] = now("+2.00 DS");
    let left_alone = [now, decided(Glasses::LeaveAlone)];
    assert_eq!(asks(Rule::LargeChange, &then, &left_alone), NEITHER);
}

/// Two refractions differ by 0.47 D of cylinder 19 times in 20: computed from components that scatter by 0.085 D
/// (`MacKenzie` 2008, Ophthalmic Physiol Opt 28:143-150), 2 × 1.96 × √2 × 0.085.
#[test]
fn a_new_cylinder_is_asked_about_from_half_a_dioptre() {
    let then = [subjective("+1.00 DS", "+1.00 DS")];
    let asks_of = |text| asks(Rule::LargeChange, &then, &[subjective(text, "+1.00 DS")]);
    assert_eq!(asks_of("+1.00 / −0.25 × 90"), NEITHER);
    assert_eq!(asks_of("+1.00 / −0.50 × 90"), RIGHT);
}

/// 10 degrees at 1.50 D are 0.26 D of blur, 10 at 1.25 are 0.22 D: computed from cylinder × sine of the turn.
#[test]
fn an_oblique_axis_is_asked_about_where_its_turn_blurs() {
    let asks_of = |then: &str, now: &str| {
        let then = [subjective(then, "+1.00 DS")];
        asks(Rule::LargeChange, &then, &[subjective(now, "+1.00 DS")])
    };
    assert_eq!(asks_of("+2.00 / −1.50 × 40", "+2.00 / −1.50 × 50"), RIGHT);
    assert_eq!(asks_of("+2.00 / −1.25 × 40", "+2.00 / −1.25 × 50"), NEITHER);
    assert_eq!(asks_of("+2.00 / −2.00 × 40", "+2.00 / −2.00 × 49"), NEITHER);
    assert_eq!(asks_of("+2.00 / −1.50 × 85", "+2.00 / −1.50 × 95"), NEITHER);
}

#[test]
fn a_large_change_is_told_in_the_words_of_the_trade() {
    let then = [subjective("+1.00 / −1.50 × 80", "+1.00 DS")];
    let now = [subjective("+2.00 / −1.50 × 80", "+1.00 DS")];
    let asked = raised(&then, &now);
    let large = asked.iter().find(|asked| asked.rule == Rule::LargeChange);
    let large = large.unwrap();
    assert_eq!(
        large.sentence,
        "right eye: 1.00 D more plus: for somebody of about 86, what is the reason, and would part of it do?"
    );
    assert!(large.source.starts_with("Elliott 2014"), "{}", large.source);
}

/// Prentice's rule: 10 mm below the centres, +2.00 and +1.00 have 2 and 1 prism dioptres base up.
#[test]
fn a_new_difference_of_one_dioptre_is_asked_about_with_its_prism() {
    let then = [subjective("+1.00 DS", "+1.00 DS")];
    let asks_of = |text| {
        asks(
            Rule::NewAnisometropia,
            &then,
            &[subjective(text, "+1.00 DS")],
        )
    };
    assert_eq!(asks_of("+1.75 DS"), NEITHER);
    assert_eq!(asks_of("+2.00 DS"), ONCE);
    let asked = raised(&then, &[subjective("+2.00 DS", "+1.00 DS")]);
    let apart = asked
        .iter()
        .find(|asked| asked.rule == Rule::NewAnisometropia);
    assert_eq!(
        apart.unwrap().sentence,
        "the eyes are set 1.00 D farther apart than before, and at the reading point the right eye has 1.00 more base up \
         than the left 10 mm down: is it tolerated?"
    );
    // A difference that was there before is left in peace: common practice, no source.
    let then = [subjective("+3.00 DS", "+1.00 DS")];
    let now = [subjective("+3.25 DS", "+1.00 DS")];
    assert_eq!(asks(Rule::NewAnisometropia, &then, &now), NEITHER);
}

#[test]
fn a_local_rule_asks_at_its_own_figure_and_in_its_own_name() {
    let then = [subjective("+1.00 DS", "+1.00 DS")];
    let desk = desk(Some(BORN), &then, &[subjective("+1.75 DS", "+1.00 DS")]);
    assert_eq!(look(&desk), []);
    let mut ours = Thresholds::default();
    ours.change.sphere = Threshold::new(0.5, "agreed in our practice").unwrap();
    let asked = second_look(&desk.story, &EXAM, &ours, day(2026, 3, 4));
    assert_eq!(asked.len(), 1);
    assert_eq!(
        (asked[0].rule, asked[0].eye),
        (Rule::LargeChange, Some(Eye::Right))
    );
    assert_eq!(asked[0].source, "agreed in our practice");
}

#[test]
fn every_rule_has_a_name_of_its_own_a_reason_and_a_source() {
    for rule in Rule::ALL {
        assert_eq!(Rule::from_slug(rule.slug()), Some(*rule));
        for said in [rule.name(), rule.reason(), rule.source()] {
            assert!(!said.is_empty(), "{}", rule.slug());
        }
        assert!(!rule.speaks_of().is_empty(), "{}", rule.slug());
    }
    assert_eq!(Rule::from_slug("no-such-rule"), None);
}

#[test]
fn an_exam_that_is_not_on_record_is_asked_nothing() {
    let desk = Desk::new(1);
    let asked = second_look(&desk.story, &EXAM, &Thresholds::default(), day(2026, 3, 4));
    assert_eq!(asked, []);
}

proptest! {
    /// Whatever passes the checks can be looked at, whatever the age; every question stands in one line and has its source.
    #[test]
    fn a_look_never_fails(
        then in prop::collection::vec(section(), 0..8),
        now in prop::collection::vec(section(), 0..8),
        years in 0_u16..130,
    ) {
        let kept = |sections: Vec<record::Section>| -> Vec<record::Section> {
            sections.into_iter().filter(|section| check(section).is_empty()).collect()
        };
        let born = Born::Stated { years, in_year: 2026 };
        for asked in look(&desk(Some(born), &kept(then), &kept(now))) {
            prop_assert!(!asked.sentence.contains('\n') && asked.sentence.contains(' '));
            prop_assert!(!asked.source.is_empty() && !asked.reason.is_empty());
        }
    }
}
