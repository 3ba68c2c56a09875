//! Somebody who fell, the glasses that they are used to, and what each eye accepted near by.

use record::{
    Eyes, Finding, Glasses, History, LensForm, Mobility, Near, Order, OrderedLens, OrderedPair,
    Part, Rule, Section, UsedFor, WornGlasses, WornLens, WornPair,
};

use super::visit::{
    NEITHER, ONCE, RIGHT, asks, asks_at, chosen, decided, lens, raised, subjective,
};
use crate::samples::both;

fn history(falls: u16, mobility: Option<Mobility>) -> Section {
    History {
        falls_in_12_months: Finding::Done(falls),
        mobility,
        ..History::default()
    }
    .into_section()
}

fn worn(form: LensForm, text: &str) -> Section {
    let glass = WornLens {
        lens: lens(text),
        add_d: None,
        prism: None,
    };
    WornGlasses {
        pairs: Finding::Done(vec![WornPair {
            used_for: UsedFor::Far,
            form,
            lenses: both(Finding::Done(glass)),
            ..WornPair::default()
        }]),
    }
    .into_section()
}

/// An earlier fall predicted the next (odds ratio 2.71 in a UK thesis); somebody in bed falls from nothing.
#[test]
fn a_fall_makes_a_change_large_at_any_age() {
    let then = [subjective("+1.00 DS", "+1.00 DS")];
    let asks_of = |age, falls, mobility| {
        let now = [history(falls, mobility), subjective("+2.00 DS", "+1.00 DS")];
        asks_at(Some(age), Rule::LargeChange, &then, &now)
    };
    assert_eq!(asks_of(60, 0, None), NEITHER);
    assert_eq!(asks_of(60, 1, None), RIGHT);
    assert_eq!(asks_of(60, 1, Some(Mobility::WithAid)), RIGHT);
    assert_eq!(asks_of(60, 1, Some(Mobility::Bed)), NEITHER);
    assert_eq!(asks_of(86, 0, Some(Mobility::Bed)), NEITHER);
    let now = [history(2, None), subjective("+2.00 DS", "+1.00 DS")];
    let asked = raised(&then, &now);
    let large = asked.iter().find(|asked| asked.rule == Rule::LargeChange);
    let said = &large.unwrap().sentence;
    assert!(
        said.contains("about 86 who fell 2 times in the last year"),
        "{said}"
    );
}

/// What a person is used to is what they wear, whatever was prescribed last time.
#[test]
fn a_change_is_from_the_glasses_that_are_worn() {
    let then = [subjective("+1.00 DS", "+1.00 DS")];
    let now = |text| {
        let single = worn(LensForm::SingleVision, text);
        [single, subjective("+2.00 DS", "+2.00 DS")]
    };
    assert_eq!(asks(Rule::LargeChange, &then, &now("+1.50 DS")), NEITHER);
    assert_eq!(asks(Rule::LargeChange, &[], &now("+1.00 DS")).len(), 2);
}

fn ordered(form: LensForm) -> Section {
    let glass = OrderedLens {
        add_d: Some(2.5),
        ..OrderedLens::new(lens("+1.00 DS"))
    };
    Order {
        pairs: vec![OrderedPair {
            form,
            lenses: both(Some(glass)),
            ..OrderedPair::default()
        }],
        ..Order::default()
    }
    .into_section()
}

/// Multifocal wearers fell more: Lord et al. 2002, J Am Geriatr Soc 50:1760-1766.
#[test]
fn a_first_multifocal_is_asked_about_where_somebody_may_fall() {
    let asks_of = |age, form, worn: Option<Section>| {
        let now: Vec<Section> = worn.into_iter().chain([ordered(form)]).collect();
        asks_at(Some(age), Rule::FirstMultifocal, &[], &now)
    };
    let single = || Some(worn(LensForm::SingleVision, "+1.00 DS"));
    let bifocal = || Some(worn(LensForm::Bifocal, "+1.00 DS"));
    assert_eq!(asks_of(86, LensForm::Progressive, single()), ONCE);
    assert_eq!(asks_of(86, LensForm::Progressive, bifocal()), NEITHER);
    assert_eq!(asks_of(86, LensForm::SingleVision, single()), NEITHER);
    assert_eq!(asks_of(60, LensForm::Progressive, single()), NEITHER);
    // Nobody looked at what is worn.
    assert_eq!(asks_of(86, LensForm::Progressive, None), NEITHER);
}

fn accepted(right: Finding<f64>, left: Finding<f64>, cm: Finding<f64>) -> Section {
    Near {
        accepted_d: Eyes { right, left },
        distance_cm: cm,
        ..Near::default()
    }
    .into_section()
}

#[test]
fn unequal_additions_are_asked_about() {
    let asks_of = |left| {
        let right = Finding::Done(2.5);
        let now = [accepted(right, Finding::Done(left), Finding::Done(40.0))];
        asks(Rule::AdditionUnequal, &[], &now)
    };
    assert_eq!(asks_of(2.5), NEITHER);
    assert_eq!(asks_of(2.75), ONCE);
}

/// Measured at 25 cm, 4.00 D: at 86 the table's 2.50 to 3.00 for 40 cm becomes 4.00 to 4.50, give or take 0.75.
#[test]
fn what_was_accepted_near_by_counts_at_the_distance_measured() {
    let asks_of = |add| {
        let both = || Finding::Done(add);
        let now = [
            subjective("+1.00 DS", "+1.00 DS"),
            accepted(both(), both(), Finding::Done(25.0)),
        ];
        asks(Rule::AdditionOutOfRange, &[], &now)
    };
    assert_eq!(asks_of(3.0), ONCE);
    assert_eq!(asks_of(3.25), NEITHER);
    assert_eq!(asks_of(5.25), NEITHER);
    assert_eq!(asks_of(5.5), ONCE);
}

#[test]
fn an_addition_accepted_or_explained_is_not_missing() {
    let asks_of = |near: Option<Section>| {
        let mut chosen = chosen("+1.00 DS", "+1.00 DS");
        chosen.add = None;
        let now = [Section::Subjective(chosen), decided(Glasses::Prescribe)];
        let now: Vec<Section> = now.into_iter().chain(near).collect();
        asks(Rule::AdditionMissing, &[], &now)
    };
    assert_eq!(asks_of(None), ONCE);
    assert_eq!(asks_of(Some(Near::default().into_section())), ONCE);
    let two = || Finding::Done(2.5);
    let both = accepted(two(), two(), Finding::Blank);
    assert_eq!(asks_of(Some(both)), NEITHER);
    let why = || Finding::NotDone {
        reason: "does not read".into(),
    };
    let explained = accepted(why(), why(), Finding::Blank);
    assert_eq!(asks_of(Some(explained)), NEITHER);
}
