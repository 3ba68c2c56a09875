//! How the lenses were found, and what follows from a scissoring reflex.

use optics::Cell;
use optics::retinoscopy::{Circumstances, Reflex, Setup, WorkingDistance, WorkingLens};
use record::{Decision, Eye, Glasses, Referral, Retinoscopy, Rule, Section, Urgency};

use super::visit::{NEITHER, ONCE, RIGHT, asks, chosen, decided, neutral_at, raised, subjective};

fn with_lens(cm: f64) -> Section {
    let distance = WorkingDistance::from_cm(cm).unwrap();
    let lens = WorkingLens::new(1.5, Cell::Back).unwrap();
    Section::Retinoscopy(Retinoscopy {
        setup: Setup::new(distance, Some(lens)),
        ..neutral_at(cm, "+2.00 DS", "+2.00 DS")
    })
}

/// Computed from 1/distance: 61.5 cm is 1.626 D and 62 cm is 1.613 D, so a +1.50 is 0.126 and 0.113 D off; half a
/// trial-lens step is 0.125.
#[test]
fn a_working_lens_that_does_not_match_the_distance_is_asked_about() {
    assert_eq!(asks(Rule::LensMismatch, &[], &[with_lens(61.5)]), ONCE);
    assert_eq!(asks(Rule::LensMismatch, &[], &[with_lens(62.0)]), NEITHER);
    assert_eq!(asks(Rule::LensMismatch, &[], &[with_lens(67.0)]), NEITHER);
}

fn described(cm: f64, reflex: Option<Reflex>) -> Retinoscopy {
    let mut found = neutral_at(cm, "+3.50 DS", "+3.50 DS");
    found.swept.right.sweeping.circumstances = Circumstances::new(None, None, reflex).unwrap();
    found
}

/// 40 to 80 cm are usual, shorter ones deliberate for a dull reflex: common practice, no source.
#[test]
fn an_unusual_distance_wants_a_dim_reflex_or_a_word() {
    let asks_at = |cm, reflex| {
        let now = [Section::Retinoscopy(described(cm, reflex))];
        asks(Rule::UnusualDistance, &[], &now)
    };
    assert_eq!(asks_at(40.0, None), NEITHER);
    assert_eq!(asks_at(39.0, None), ONCE);
    assert_eq!(asks_at(80.0, None), NEITHER);
    assert_eq!(asks_at(81.0, None), ONCE);
    assert_eq!(asks_at(39.0, Some(Reflex::Dull)), NEITHER);
    assert_eq!(asks_at(39.0, Some(Reflex::Bright)), ONCE);
}

#[test]
fn scissoring_wants_a_referral_once_something_is_decided() {
    let found = Section::Retinoscopy(described(67.0, Some(Reflex::Scissoring)));
    let asks_of = |decision: &[Section]| {
        let now: Vec<Section> = decision.iter().cloned().chain([found.clone()]).collect();
        asks(Rule::Scissoring, &[], &now)
    };
    assert_eq!(asks_of(&[]), NEITHER);
    assert_eq!(asks_of(&[Section::Decision(Decision::default())]), NEITHER);
    assert_eq!(asks_of(&[decided(Glasses::LeaveAlone)]), RIGHT);
    let referred = Decision {
        glasses: Some(Glasses::LeaveAlone),
        refer: Some(Referral {
            urgency: Urgency::Routine,
            to: "eye clinic".into(),
        }),
        ..Decision::default()
    };
    assert_eq!(asks_of(&[Section::Decision(referred)]), NEITHER);
    let dull = Section::Retinoscopy(described(67.0, Some(Reflex::Dull)));
    let now = [dull, decided(Glasses::LeaveAlone)];
    assert_eq!(asks(Rule::Scissoring, &[], &now), NEITHER);
}

/// About 4 D is the figure in textbook chapters on refraction.
#[test]
fn a_lens_of_four_dioptres_wants_a_vertex_distance() {
    let asks_of = |text, vertex_mm| {
        let mut chosen = chosen(text, "+1.00 DS");
        chosen.vertex_mm = vertex_mm;
        asks(Rule::NoVertexDistance, &[], &[Section::Subjective(chosen)])
    };
    assert_eq!(asks_of("−3.75 DS", None), NEITHER);
    assert_eq!(asks_of("−4.00 DS", None), ONCE);
    assert_eq!(asks_of("−2.00 / −2.00 × 90", None), ONCE);
    assert_eq!(asks_of("−4.00 DS", Some(12.0)), NEITHER);
    // 67 cm: +5.50 in the frame is +4.0075 net, and nobody could choose.
    let found = Section::Retinoscopy(neutral_at(67.0, "+5.50 DS", "+2.50 DS"));
    assert_eq!(
        asks(Rule::NoVertexDistance, &[], std::slice::from_ref(&found)),
        ONCE
    );
    let left_alone = [found, decided(Glasses::LeaveAlone)];
    assert_eq!(asks(Rule::NoVertexDistance, &[], &left_alone), NEITHER);
}

/// Nearer than 6 m the allowance is the reciprocal of the distance: 0.33 D at 3 m.
#[test]
fn a_near_chart_wants_its_allowance_or_a_room() {
    let at = |used_at_m, for_the_room| {
        let mut chosen = chosen("+1.00 DS", "+1.00 DS");
        chosen.chart.used_at_m = used_at_m;
        chosen.for_the_room = for_the_room;
        [Section::Subjective(chosen)]
    };
    assert_eq!(asks(Rule::NearChart, &[], &at(6.0, false)), NEITHER);
    assert_eq!(asks(Rule::NearChart, &[], &at(5.9, false)), ONCE);
    assert_eq!(asks(Rule::NearChart, &[], &at(3.0, true)), NEITHER);
    let asked = raised(&[], &at(3.0, false));
    assert_eq!(
        asked[0].sentence,
        "the lenses were chosen at a chart 3 m away: for far the sphere changes by −0.33 D, so are they meant for the room?"
    );
    let [near] = at(3.0, false);
    let left_alone = [near, decided(Glasses::LeaveAlone)];
    assert_eq!(asks(Rule::NearChart, &[], &left_alone), NEITHER);
}

#[test]
fn what_is_unsettled_is_not_asked_about() {
    let now = [subjective("−4.25 DS", "−4.25 DS")];
    let mut one = super::visit::desk(Some(super::visit::BORN), &[], &now);
    let mut two = crate::desk::Desk::new(2);
    two.hear(&one);
    one.put(subjective("−4.50 DS", "−4.50 DS"), None);
    two.put(subjective("−4.75 DS", "−4.75 DS"), None);
    one.hear(&two);
    assert_eq!(super::visit::look(&one), []);
    assert_eq!(
        one.story
            .exam(&crate::desk::EXAM)
            .unwrap()
            .final_lens(Eye::Right),
        None
    );
}
