//! Settings: local figures with their source, phrases that are taught and forgotten, and two tablets that set.

use std::collections::BTreeSet;

use optics::change::{Threshold, ThresholdError};
use proptest::prelude::*;
use record::{
    Figure, Heads, Phrase, PhraseError, Rule, Settings, Thresholds, Usual, holds_phrase, own_words,
    second_look, turned_phrase,
};

use crate::desk::{Desk, EXAM, day};
use crate::samples::acuity;

fn local(value: f64) -> Threshold {
    Threshold::new(value, "harbour eye service, 2026").unwrap()
}

fn set(desk: &mut Desk, change: impl FnOnce(&mut Settings)) {
    let mut settings = desk.story.settings();
    change(&mut settings);
    desk.write(desk.story.put_settings(settings));
}

#[test]
fn with_nothing_set_the_usual_figures_hold() {
    let desk = Desk::new(1);
    assert_eq!(desk.story.settings(), Settings::default());
    assert_eq!(Settings::default().thresholds(), Thresholds::default());
}

#[test]
fn a_local_figure_holds_with_its_source_and_can_be_set_back() {
    let mut desk = Desk::new(1);
    set(&mut desk, |settings| {
        settings.set(Figure::AcuityWorse, local(0.1))
    });
    let thresholds = desk.story.settings().thresholds();
    assert_eq!(thresholds.acuity_worse, local(0.1));
    let others = Thresholds {
        acuity_worse: Thresholds::default().acuity_worse,
        ..thresholds
    };
    assert_eq!(others, Thresholds::default());
    set(&mut desk, |settings| settings.set_back(Figure::AcuityWorse));
    assert_eq!(desk.story.settings().thresholds(), Thresholds::default());
}

/// A figure without its local rule is refused: whoever reads the question must know who says so.
#[test]
fn a_local_figure_needs_the_rule_that_says_so() {
    assert_eq!(Threshold::new(21.0, " "), Err(ThresholdError::NoSource));
}

/// 6/12 after 6/9 is 0.12 logMAR worse (computed: log10(12/9)): less than the usual 0.2, more than a local 0.1.
#[test]
fn the_second_look_asks_by_the_local_figure_and_names_it() {
    let mut desk = Desk::with_exam(1);
    let earlier = record::ExamId::from_uuid(uuid::Uuid::from_u128(5));
    desk.open(earlier, crate::desk::PERSON, day(2025, 3, 4));
    let planned = desk.story.put_section(&earlier, acuity(9), None).unwrap();
    desk.write(planned);
    desk.put(acuity(12), None);
    let asked = |desk: &Desk| {
        let thresholds = desk.story.settings().thresholds();
        let all = second_look(&desk.story, &EXAM, &thresholds, day(2026, 3, 4));
        all.into_iter()
            .find(|asked| asked.rule == Rule::AcuityMuchWorse)
    };
    assert_eq!(asked(&desk), None);
    set(&mut desk, |settings| {
        settings.set(Figure::AcuityWorse, local(0.1))
    });
    assert_eq!(asked(&desk).unwrap().source, "harbour eye service, 2026");
}

#[test]
fn every_figure_is_one_of_its_own_and_every_name_is_used_once() {
    let usual = Thresholds::default();
    let mut changed = usual.clone();
    for figure in Figure::ALL {
        let mut settings = Settings::default();
        settings.set(*figure, local(7.25));
        let all = settings.thresholds();
        assert_eq!(figure.of(&all), &local(7.25), "{figure:?}");
        let untouched = Figure::ALL.iter().filter(|other| *other != figure);
        for other in untouched {
            assert_eq!(
                other.of(&all),
                other.of(&usual),
                "{figure:?} changes {other:?}"
            );
        }
        changed = all;
    }
    assert_ne!(changed, usual);
    let slugs: BTreeSet<&str> = Figure::ALL.iter().map(|figure| figure.slug()).collect();
    assert_eq!(slugs.len(), Figure::ALL.len());
    let fields: BTreeSet<&str> = Usual::ALL.iter().map(|field| field.slug()).collect();
    assert_eq!(fields.len(), Usual::ALL.len());
}

/// No figure that the rules use is left out: each field of `Thresholds` changes with one of them.
#[test]
fn no_figure_is_left_out() {
    let mut settings = Settings::default();
    for figure in Figure::ALL {
        settings.set(*figure, Threshold::new(7.25, "local").unwrap());
    }
    let shown = format!("{:?}", settings.thresholds());
    let figures = shown.matches("value: ").count();
    assert_eq!(shown.matches("value: 7.25").count(), figures);
    assert_eq!(Figure::ALL.len(), figures);
}

#[test]
fn a_phrase_is_taught_and_forgotten() {
    let mut settings = Settings::default();
    settings.teach(Usual::Health, " gout ").unwrap();
    let taught = settings.phrases(Usual::Health).pop().unwrap();
    assert_eq!(
        taught,
        Phrase {
            words: "gout".into(),
            taught: true
        }
    );
    assert_eq!(
        settings.teach(Usual::Health, "gout"),
        Err(PhraseError::Known)
    );
    assert_eq!(
        settings.teach(Usual::Health, "stroke"),
        Err(PhraseError::Known)
    );
    assert_eq!(settings.teach(Usual::Health, "  "), Err(PhraseError::Blank));
    assert_eq!(
        settings.teach(Usual::Health, &"x".repeat(81)),
        Err(PhraseError::TooLong)
    );
    settings.forget(Usual::Health, "gout");
    assert_eq!(settings, Settings::default());
}

#[test]
fn no_more_phrases_than_a_thumb_can_find() {
    let mut settings = Settings::default();
    for at in 0..20 {
        settings.teach(Usual::Task, &format!("task {at}")).unwrap();
    }
    assert_eq!(
        settings.teach(Usual::Task, "one more"),
        Err(PhraseError::TooMany)
    );
}

#[test]
fn two_tablets_that_taught_offline_have_both_phrases_and_are_asked_about_figures() {
    let mut one = Desk::new(1);
    set(&mut one, |settings| {
        settings.teach(Usual::Health, "gout").unwrap()
    });
    let mut two = Desk::new(2);
    two.hear(&one);
    set(&mut one, |settings| {
        settings.teach(Usual::Health, "anaemia").unwrap();
        settings.set(Figure::CupsApart, local(0.3));
    });
    set(&mut two, |settings| {
        settings.teach(Usual::Health, "asthma").unwrap()
    });
    one.hear(&two);
    let taught = |desk: &Desk| {
        let all = desk.story.settings().phrases(Usual::Health).into_iter();
        all.filter(|phrase| phrase.taught)
            .map(|phrase| phrase.words)
            .collect::<Vec<_>>()
    };
    assert_eq!(
        taught(&one)
            .iter()
            .map(String::as_str)
            .collect::<BTreeSet<_>>(),
        BTreeSet::from(["gout", "anaemia", "asthma"])
    );
    assert_eq!(one.story.settings_differ(), [Figure::CupsApart]);
    set(&mut one, |settings| {
        settings.set(Figure::CupsApart, local(0.3))
    });
    assert_eq!(one.story.settings_differ(), []);
    assert!(matches!(one.story.settings_versions(), Heads::One(_)));
    two.hear(&one);
    assert_eq!(two.story.settings(), one.story.settings());
}

#[test]
fn a_phrase_with_a_comma_is_one_phrase() {
    let frail = "frail, does not go out unaided";
    let text = turned_phrase("stays in bed", frail);
    assert!(holds_phrase(&text, frail) && holds_phrase(&text, "stays in bed"));
    assert!(!holds_phrase("frailty", "frail") && !holds_phrase("not frail", "frail"));
    assert_eq!(turned_phrase(&text, frail), "stays in bed");
}

proptest! {
    /// Whatever stands there, a second tap undoes the first.
    #[test]
    fn a_tap_undoes_a_tap(text in "[a-c]{1,3}(, [a-c]{1,3}){0,4}", phrase in "[d-f]{1,3}(, [d-f]{1,3}){0,1}") {
        let once = turned_phrase(&text, &phrase);
        prop_assert!(holds_phrase(&once, &phrase));
        prop_assert_eq!(turned_phrase(&once, &phrase), text);
    }

    /// The writer's own words hold no phrase that is at hand.
    #[test]
    fn own_words_are_what_is_not_known(text in "[a-c]{1,2}(, [a-c]{1,2}){0,5}") {
        let known: Vec<Phrase> = ["a", "b, c", "ab"].iter().map(|words| Phrase { words: (*words).into(), taught: true }).collect();
        let own = own_words(&text, &known);
        for phrase in known {
            prop_assert!(!holds_phrase(&own, &phrase.words), "{} in {}", phrase.words, own);
        }
    }
}
