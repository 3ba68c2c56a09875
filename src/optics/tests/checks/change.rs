//! The change from one prescription to another: figures, words and questions.

use crate::{assert_near, lens};
use ciborium::{Value, cbor};
use optics::change::{Caution, Change, CylinderChange, Threshold, Thresholds};
use optics::{Eyes, OpticsError, SphereCyl};
use proptest::prelude::*;
use words::{Language, in_language};

fn change(old: &str, new: &str) -> Change {
    Change::between(&old.parse().unwrap(), &new.parse().unwrap()).unwrap()
}

fn any_lens() -> impl Strategy<Value = SphereCyl> {
    (-20.0..=20.0_f64, -8.0..=8.0_f64, 0.0..=180.0_f64)
        .prop_map(|(sphere, cylinder, axis)| lens(sphere, cylinder, axis))
}

// The figures of each sentence: computed by hand; 0.26 is 1.50 sin 10°, 0.34 is √(0.75 × 1.00) sin 23°.
#[test]
fn a_change_in_words() {
    for (old, new, said) in [
        (
            "+1.00 / −1.50 × 80",
            "+1.75 / −1.50 × 90",
            "0.75 D more plus; axis 10 degrees round, which is 0.26 D at this cylinder",
        ),
        ("+2.00", "+1.25", "0.75 D less plus"),
        ("−1.00", "−1.75", "0.75 D more minus"),
        ("−1.75", "−1.00", "0.75 D less minus"),
        ("0.00", "+0.50", "0.50 D more plus"),
        ("0.00", "−0.50", "0.50 D more minus"),
        ("−0.50", "0.00", "0.50 D less minus"),
        ("+0.25", "−0.50", "0.75 D toward minus, from +0.25 to −0.50"),
        ("−0.50", "+0.25", "0.75 D toward plus, from −0.50 to +0.25"),
        ("+1.00", "+1.00 / −0.75 × 90", "new cylinder −0.75 × 90"),
        (
            "+1.00 / −0.75 × 90",
            "+1.00",
            "cylinder −0.75 × 90 taken out",
        ),
        (
            "+1.00 / −0.75 × 90",
            "+1.00 / −1.00 × 90",
            "cylinder 0.25 D stronger",
        ),
        (
            "+1.00 / −1.00 × 175",
            "+1.00 / −1.00 × 176",
            "axis 1 degree round, which is 0.02 D at this cylinder",
        ),
        (
            "+1.00 / −0.75 × 170",
            "+0.50 / −1.00 × 13",
            "0.50 D less plus; cylinder 0.25 D stronger; axis 23 degrees round, which is 0.34 D at this cylinder",
        ),
        ("+1.00 / −0.75 × 90", "+0.25 / +0.75 × 180", "no change"),
        ("+1.00", "+1.00", "no change"),
    ] {
        assert_eq!(change(old, new).sentence(), said, "{old} to {new}");
    }
}

// A cylinder too weak to be written has no axis to speak of.
#[test]
fn dust_is_not_said() {
    let dust = lens(1.0, -0.002, 30.0);
    for (old, new) in [
        (dust, SphereCyl::sphere(1.0)),
        (SphereCyl::sphere(1.0), dust),
        (dust, lens(1.0, -0.002, 77.0)),
        (lens(0.004, 0.0, 0.0), SphereCyl::sphere(0.0)),
    ] {
        assert_eq!(Change::between(&old, &new).unwrap().sentence(), "no change");
    }
    let crossing = Change::between(&lens(0.001, 0.0, 0.0), &lens(-1.0, 0.0, 0.0)).unwrap();
    assert_eq!(crossing.sentence(), "1.00 D more minus");
}

// Computed by hand: the mean sphere 0.75, no cylinder: the whole is 0.79 with the turn of 0.26.
#[test]
fn the_whole_in_words() {
    let found = change("+1.00 / −1.50 × 80", "+1.75 / −1.50 × 90");
    assert_eq!(found.blur_sentence(), "0.79 D of blur in all");
    assert_near(
        found.blur(),
        0.75_f64.hypot(1.5 * 10_f64.to_radians().sin()),
        1e-12,
    );
}

proptest! {
    // The rule of cosines on two crossed cylinders: the three parts make up the whole.
    #[test]
    fn three_parts_make_the_whole(old in any_lens(), new in any_lens()) {
        let change = Change::between(&old, &new).unwrap();
        let parts = match change.cylinder() {
            CylinderChange::Both { .. } | CylinderChange::None => change.cylinder_stronger() / 2.0,
            CylinderChange::New(cylinder) | CylinderChange::Removed(cylinder) => cylinder.power() / 2.0,
        };
        let whole = change.mean_sphere().hypot(parts).hypot(change.axis_blur());
        prop_assert!((whole - change.blur()).abs() < 1e-9, "{whole} {}", change.blur());
    }

    // The same two lenses in the other form are the same change, save for the sphere, which is the form's.
    #[test]
    fn the_form_of_cylinder_changes_nothing(old in any_lens(), new in any_lens()) {
        let one = Change::between(&old, &new).unwrap();
        for other in [
            Change::between(&old.transposed(), &new).unwrap(),
            Change::between(&old, &new.transposed()).unwrap(),
        ] {
            prop_assert!((one.blur() - other.blur()).abs() < 1e-9);
            prop_assert!((one.mean_sphere() - other.mean_sphere()).abs() < 1e-9);
            prop_assert!((one.cylinder_stronger() - other.cylinder_stronger()).abs() < 1e-9);
            prop_assert!((one.axis_blur() - other.axis_blur()).abs() < 1e-9);
        }
        prop_assert!(one.axis_turned().abs() <= 90.0);
    }

    // There and back again is as far, with every sign turned about.
    #[test]
    fn the_way_back_is_as_long(old in any_lens(), new in any_lens()) {
        let there = Change::between(&old, &new).unwrap();
        let back = Change::between(&new, &old).unwrap();
        prop_assert!((there.blur() - back.blur()).abs() < 1e-9);
        prop_assert!((there.mean_sphere() + back.mean_sphere()).abs() < 1e-9);
        prop_assert!((there.axis_blur() - back.axis_blur()).abs() < 1e-9);
    }

    #[test]
    fn no_change_asks_nothing(old in any_lens()) {
        let change = Change::between(&old, &old).unwrap();
        prop_assert_eq!(change.sentence(), "no change");
        prop_assert!(change.cautions(&Thresholds::default()).is_empty());
    }

    // Any finite lens: a change with finite figures, or a refusal; never a panic.
    #[test]
    fn any_lens_is_taken_or_refused(s1 in any::<f64>(), c1 in any::<f64>(), s2 in any::<f64>(), c2 in any::<f64>(), a1 in 0.0..=180.0_f64, a2 in 0.0..=180.0_f64) {
        if let (Ok(old), Ok(new)) = (SphereCyl::new(s1, c1, a1), SphereCyl::new(s2, c2, a2))
            && let Ok(change) = Change::between(&old, &new)
        {
            let figures = [change.sphere(), change.mean_sphere(), change.cylinder_stronger(), change.axis_turned(), change.axis_blur(), change.blur()];
            prop_assert!(figures.into_iter().all(f64::is_finite), "{figures:?}");
            let _ = (change.sentence(), change.cautions(&Thresholds::default()));
        }
    }
}

#[test]
fn a_lens_that_is_none_is_refused() {
    for sphere in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let refused = Change::between(&SphereCyl::sphere(sphere), &SphereCyl::sphere(0.0));
        assert_eq!(refused, Err(OpticsError::NotANumber { what: "lens" }));
        assert!(Change::between(&SphereCyl::sphere(0.0), &SphereCyl::sphere(sphere)).is_err());
    }
}

fn asked(old: &str, new: &str) -> Vec<String> {
    let cautions = change(old, new).cautions(&Thresholds::default());
    cautions.iter().map(Caution::question).collect()
}

// Published: about 0.75 D at most in frail people (Elliott 2014, Optom Vis Sci 91:593-601). The rest: common practice.
#[test]
fn a_large_change_is_asked_about() {
    assert!(asked("+1.00", "+1.75").is_empty());
    assert_eq!(
        asked("+1.00", "+2.00"),
        [
            "the sphere changes by +1.00 D: what is the reason? (Elliott 2014, Optom Vis Sci 91:593-601: about 0.75 D at most in \
             frail people)"
        ]
    );
    // The sphere stays and the mean sphere does not: −2.00 of cylinder is −1.00 of mean sphere.
    let found = change("+1.00", "+1.00 / −2.00 × 90").cautions(&Thresholds::default());
    assert!(matches!(found[0], Caution::Sphere { by, .. } if (by + 1.0).abs() < 1e-12));
    assert!(matches!(found[1], Caution::NewCylinder { .. }));
}

// Published: more falls where 0.75 D or more of cylinder changed (Cumming et al. 2007, as Leat 2014 reports it).
#[test]
fn a_changed_cylinder_is_asked_about() {
    let stronger = asked("+1.00 / −0.50 × 90", "+1.25 / −1.25 × 90");
    assert_eq!(stronger.len(), 1);
    assert!(stronger[0].starts_with("the cylinder is 0.75 D stronger: what is the reason?"));
    let out = asked("+1.00 / −0.75 × 90", "+0.50");
    assert!(out[0].starts_with("the cylinder is 0.75 D weaker: what is the reason?"));
    assert!(asked("+1.00 / −0.50 × 90", "+1.00 / −1.00 × 90").is_empty());
}

// Common practice, no source: 10 degrees, 0.75 D, and oblique beyond 30 degrees from 90 and 180.
#[test]
fn an_oblique_axis_is_asked_about() {
    assert_eq!(asked("0.00 / −0.75 × 40", "0.00 / −0.75 × 50").len(), 1);
    assert!(asked("0.00 / −0.75 × 40", "0.00 / −0.75 × 49").is_empty());
    assert!(asked("0.00 / −0.50 × 40", "0.00 / −0.50 × 50").is_empty());
    assert!(asked("0.00 / −0.75 × 85", "0.00 / −0.75 × 95").is_empty());
    assert!(asked("0.00 / −0.75 × 175", "0.00 / −0.75 × 5").is_empty());
    assert!(asked("0.00 / −0.75 × 20", "0.00 / −0.75 × 30").is_empty());
    assert_eq!(asked("0.00 / −0.75 × 21", "0.00 / −0.75 × 31").len(), 1);
    assert_eq!(asked("0.00 / −0.75 × 149", "0.00 / −0.75 × 159").len(), 1);
}

#[test]
fn eye_by_eye_and_between_them() {
    let both = Eyes {
        right: change("+1.00", "+2.25"),
        left: change("+1.00", "+1.00"),
    };
    assert_eq!(
        both.sentences(),
        ["right eye: 1.25 D more plus", "left eye: no change"]
    );
    let caution = both.caution(&Thresholds::default()).unwrap();
    assert_eq!(
        caution.question(),
        "the eyes are set 1.25 D farther apart than before: what is the reason? (1.00 D is the usual definition, as in Haegerstrom-Portnoy et al. 2014, Optom Vis Sci 91:60-67)"
    );
    // Eyes long apart that stay so are nothing new; those that change sides are.
    let long = Eyes {
        right: change("+3.00", "+3.25"),
        left: change("0.00", "+0.25"),
    };
    assert_eq!(long.caution(&Thresholds::default()), None);
    let sides = Eyes {
        right: change("+0.50", "−0.50"),
        left: change("0.00", "0.00"),
    };
    assert_near(sides.new_anisometropia(), 1.0, 1e-12);
    assert!(sides.caution(&Thresholds::default()).is_some());
}

#[test]
fn a_setting_puts_another_threshold_with_its_source() {
    let ours = Thresholds {
        sphere: Threshold::new(0.5, "agreed at the harbour practice").unwrap(),
        ..Thresholds::default()
    };
    let found = change("+1.00", "+1.75").cautions(&ours);
    assert!(
        found[0]
            .question()
            .ends_with("(agreed at the harbour practice)")
    );

    let mut bytes = Vec::new();
    ciborium::into_writer(&ours, &mut bytes).unwrap();
    let back: Thresholds = ciborium::from_reader(bytes.as_slice()).unwrap();
    assert_eq!(back, ours);
}

#[test]
fn a_stored_setting_may_hold_one_and_may_hold_no_rubbish() {
    let read = |value: &Value| value.deserialized::<Thresholds>();
    let one = cbor!({ "sphere" => { "value" => 0.5, "source" => "ours" } }).unwrap();
    let found = read(&one).unwrap();
    assert_near(found.sphere.value(), 0.5, 0.0);
    assert_eq!(found.axis_degrees, Thresholds::default().axis_degrees);
    for rubbish in [
        cbor!({ "sphere" => { "value" => f64::NAN, "source" => "ours" } }),
        cbor!({ "sphere" => { "value" => -0.5, "source" => "ours" } }),
        cbor!({ "sphere" => { "value" => 0.5, "source" => " " } }),
        cbor!({ "sphere" => 0.5 }),
    ] {
        assert!(read(&rubbish.unwrap()).is_err());
    }
}

/// The sources that come with the project are said in the language spoken; one that somebody set stays in its words.
#[test]
fn a_source_is_said_in_the_language_spoken() {
    let ours = Thresholds {
        sphere: Threshold::new(0.5, "agreed at the harbour practice").unwrap(),
        ..Thresholds::default()
    };
    let (sphere, english) = (ours.sphere.source(), ours.new_cylinder.source());
    in_language(Language::German, || {
        assert_eq!(ours.sphere.source(), sphere);
        assert_ne!(ours.new_cylinder.source(), english);
        assert_eq!(ours.new_cylinder, Thresholds::default().new_cylinder);
    });
}
