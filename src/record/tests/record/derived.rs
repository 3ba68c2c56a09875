//! What is derived from the sections and never stored in them, and how they go with signing.

use chrono::NaiveTime;
use optics::SphereCyl;
use optics::near::Tentative;
use optics::tolerance::Outcome;
use record::{
    Age, Amount, Angle, Anterior, Device, ExamState, Eye, Eyes, Finding, Fitted, Fitting, Glasses,
    Grade, LensForm, LensState, MadeLens, Near, Opacity, Order, OrderedLens, OrderedPair, Part,
    Pressure, PrintRead, PrintSize, Readings, RecordError, Taken, Tolerance, UsedFor, WornGlasses,
    WornLens, WornPair,
};

use crate::desk::{Desk, EXAM};
use crate::samples::{both, decision, subjective};

const fn age(years: u16) -> Age {
    Age { years, exact: true }
}

#[test]
fn a_mean_is_that_of_its_readings() {
    let readings = Readings {
        mmhg: vec![15.0, 16.0, 20.0],
    };
    assert_eq!(readings.mean_mmhg(), Some(17.0));
    assert_eq!(Readings::default().mean_mmhg(), None);
    let taken = Taken {
        device: Device::Applanation,
        at: NaiveTime::MIN,
        after_dilating: false,
        eyes: Eyes {
            right: Finding::Done(readings),
            left: Finding::Blank,
        },
        note: String::new(),
    };
    assert_eq!(taken.mean_mmhg(Eye::Right), Some(17.0));
    assert_eq!(taken.mean_mmhg(Eye::Left), None);
}

/// 1/0.40 − half of 2.00 is +1.50: computed from the formula that stands in Millodot's dictionary. At 86 Hofstetter's mean
/// is nothing, so 35 cm ask for all of 2.86.
#[test]
fn an_addition_to_begin_with_comes_from_amplitude_or_age() {
    let near = |cm, amplitude_d| Near {
        distance_cm: Finding::Done(cm),
        amplitude_d,
        ..Near::default()
    };
    let of = |near: &Near, age| near.tentative(age).map(Tentative::dioptres);
    let measured = near(40.0, Finding::Done(2.0));
    assert!((of(&measured, Some(age(60))).unwrap() - 1.5).abs() < 1e-9);
    assert!((of(&measured, None).unwrap() - 1.5).abs() < 1e-9);
    let by_age = near(35.0, Finding::Blank);
    assert!((of(&by_age, Some(age(86))).unwrap() - 2.857).abs() < 5e-4);
    assert_eq!(of(&by_age, None), None);
    assert_eq!(of(&Near::default(), Some(age(86))), None);
}

/// N8 at 40 cm is 0.40: computed from acuity = distance / size in M units, N8 being about 1 M.
#[test]
fn print_and_its_distance_are_an_acuity() {
    let read = PrintRead {
        print: PrintSize::N(8.0),
        at_cm: 40.0,
    };
    let acuity = read.acuity().unwrap();
    assert_eq!(acuity.to_string(), "N8 at 40 cm");
    assert!((acuity.acuity().unwrap().decimal() - 0.4).abs() < 1e-9);
    let nowhere = PrintRead {
        print: PrintSize::M(26.0),
        at_cm: 40.0,
    };
    assert!(nowhere.acuity().is_err());
}

/// Closure is possible at grade 2, a quarter of the cornea, and likely below: teaching sheets of van Herick's grades.
#[test]
fn an_angle_may_close_from_grade_2_down() {
    for (angle, may_close) in [
        (Angle::VanHerick(3), false),
        (Angle::VanHerick(2), true),
        (Angle::Shaffer(3), false),
        (Angle::Shaffer(2), true),
        (Angle::LimbalPercent(40.0), false),
        (Angle::LimbalPercent(25.0), true),
        (Angle::TorchDeep, false),
        (Angle::TorchShallow, true),
    ] {
        assert_eq!(angle.may_close(), may_close, "{angle:?}");
    }
}

#[test]
fn only_an_own_lens_has_a_nucleus() {
    let own = |nuclear| {
        LensState::Own(Opacity {
            nuclear,
            ..Opacity::default()
        })
    };
    assert!(own(Some(Grade::Plain(Amount::Mild))).is_nuclear());
    assert!(!own(Some(Grade::Plain(Amount::Clear))).is_nuclear());
    assert!(own(Some(Grade::LocsIii(2.0))).is_nuclear());
    assert!(!own(Some(Grade::LocsIii(1.9))).is_nuclear());
    assert!(!own(None).is_nuclear());
    let implant = LensState::Implant {
        capsule: Some(Amount::Dense),
    };
    assert!(!implant.is_nuclear());
}

#[test]
fn the_lens_worn_for_far_is_that_of_the_first_measured_pair_for_far() {
    let pair = |used_for, sphere: Option<f64>| WornPair {
        used_for,
        lenses: both(sphere.map_or(Finding::Blank, |sphere| {
            Finding::Done(WornLens {
                lens: SphereCyl::sphere(sphere),
                add_d: None,
                prism: None,
            })
        })),
        ..WornPair::default()
    };
    let worn = WornGlasses {
        pairs: Finding::Done(vec![
            pair(UsedFor::Near, Some(4.0)),
            pair(UsedFor::Far, None),
            pair(UsedFor::FarAndNear, Some(1.5)),
        ]),
    };
    let far = worn.far_lens(Eye::Right);
    assert_eq!(far, Some(&SphereCyl::sphere(1.5)));
    assert!(!worn.has_multifocals());
    assert_eq!(WornGlasses::default().far_lens(Eye::Left), None);
}

fn order(form: LensForm) -> Order {
    let lens = OrderedLens {
        add_d: Some(2.5),
        ..OrderedLens::new(SphereCyl::sphere(-2.0))
    };
    Order {
        pairs: vec![OrderedPair {
            form,
            lenses: both(Some(lens)),
            ..OrderedPair::default()
        }],
        ..Order::default()
    }
}

fn came(pair: u16, sphere: f64) -> Fitting {
    let made = MadeLens {
        lens: SphereCyl::sphere(sphere),
        add_d: Some(2.5),
        prism: None,
        height_mm: None,
    };
    Fitting {
        pairs: vec![Fitted {
            pair,
            lenses: both(Finding::Done(made)),
            judged_by: Tolerance::AnsiZ801,
            ..Fitted::default()
        }],
    }
}

/// Published: ANSI Z80.1-2015, as its quick guide has it: ±0.13 D in each meridian within 6.50 D.
#[test]
fn what_came_is_judged_against_what_was_ordered() {
    let order = order(LensForm::Bifocal);
    let outcome = |fitting: &Fitting| Some(fitting.report(0, &order)?.outcome());
    assert_eq!(outcome(&came(0, -2.0)), Some(Outcome::Within));
    assert_eq!(outcome(&came(0, -2.12)), Some(Outcome::Borderline));
    assert_eq!(outcome(&came(0, -2.14)), Some(Outcome::Outside));
    assert_eq!(outcome(&came(1, -2.0)), None); // no such pair was ordered
    assert_eq!(came(0, -2.0).report(1, &order), None); // no second pair came
    let mut half = came(0, -2.0);
    half.pairs[0].lenses.left = Finding::Blank;
    assert_eq!(outcome(&half), None);
}

/// Glasses are ordered from a signed prescription and come weeks later.
#[test]
fn order_and_fitting_follow_a_signature_without_a_reason() {
    let mut desk = Desk::with_exam(1);
    desk.put(subjective(3.0), None);
    desk.put(decision(Glasses::Prescribe), None);
    desk.sign();
    desk.put(order(LensForm::Bifocal).into_section(), None);
    desk.put(came(0, -2.0).into_section(), None);
    let exam = desk.story.exam(&EXAM).unwrap();
    assert_eq!(exam.state(), ExamState::Signed);
    assert!(exam.uncovered().is_empty() && exam.amendments().is_empty());
    assert_eq!(
        exam.part::<Fitting>().settled().unwrap().value,
        &came(0, -2.0)
    );
    let again = desk.story.sign(&EXAM, "M. Farrow".into());
    assert_eq!(again, Err(RecordError::NothingToSign));
    // Anything else still wants one.
    let pressure = Pressure::default().into_section();
    let refused = desk.story.put_section(&EXAM, pressure, None);
    assert!(matches!(refused, Err(RecordError::ReasonNeeded(_))));
}

#[test]
fn what_was_begun_and_left_blank_is_named_before_signing() {
    let mut desk = Desk::with_exam(1);
    desk.put(decision(Glasses::LeaveAlone), None);
    desk.put(Pressure::default().into_section(), None);
    let mut anterior = Anterior::normal();
    anterior.eyes.left = record::AnteriorEye::default();
    desk.put(anterior.into_section(), None);
    assert_eq!(
        desk.story.exam(&EXAM).unwrap().ready_to_sign(),
        [
            "pressure: the right eye is blank: enter it, or say why it was not done",
            "pressure: the left eye is blank: enter it, or say why it was not done",
            "anterior: the left eye is blank: enter it, or say why it was not done",
        ]
    );
}
