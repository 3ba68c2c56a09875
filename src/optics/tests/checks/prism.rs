//! Prism: its laws on many lenses, its written form, and what is refused.

use crate::{assert_near, lens};
use optics::prism::{Base, Decentration, Prism, ReadError, Reading, of_deviation, relative, split};
use optics::{Eye, Eyes, OpticsError, SphereCyl};
use proptest::prelude::*;
use words::{Language, in_language};

const DUST: f64 = 1e-9;

fn any_prism() -> impl Strategy<Value = Prism> {
    (-30.0..30.0_f64, -30.0..30.0_f64).prop_map(|(h, v)| Prism::new(h, v).unwrap())
}

fn any_lens() -> impl Strategy<Value = SphereCyl> {
    (-40.0..40.0_f64, -15.0..15.0_f64, 0.0..=180.0_f64).prop_map(|(s, c, a)| lens(s, c, a))
}

fn any_eye() -> impl Strategy<Value = Eye> {
    prop_oneof![Just(Eye::Right), Just(Eye::Left)]
}

fn any_move() -> impl Strategy<Value = Decentration> {
    (-20.0..20.0_f64, -20.0..20.0_f64).prop_map(|(x, y)| Decentration::new(x, y).unwrap())
}

fn apart(one: Prism, other: Prism) -> f64 {
    (one - other).amount()
}

proptest! {
    #[test]
    fn combined_and_resolved_again(prism in any_prism()) {
        let again = Prism::at(prism.amount(), prism.base_degrees()).unwrap();
        prop_assert!(apart(prism, again) < DUST);
        prop_assert!((0.0..360.0).contains(&prism.base_degrees()));
    }

    #[test]
    fn parts_by_name_are_the_whole(prism in any_prism(), eye in any_eye()) {
        let parts = [prism.horizontal(eye), prism.vertical()];
        let again: Prism = parts.iter().map(|part| Prism::toward(part.amount, part.base, eye).unwrap()).sum();
        prop_assert!(apart(prism, again) < DUST);
    }

    #[test]
    fn a_name_lies_where_the_compass_says(amount in 0.0..50.0_f64, eye in any_eye()) {
        for base in Base::ALL {
            let named = Prism::toward(amount, base, eye).unwrap();
            prop_assert!(apart(named, Prism::at(amount, base.degrees(eye)).unwrap()) < DUST);
        }
    }

    #[test]
    fn prism_adds_as_movements_add(lens in any_lens(), one in any_move(), other in any_move()) {
        let both = Decentration::new(one.right_mm() + other.right_mm(), one.up_mm() + other.up_mm()).unwrap();
        let by_parts = Prism::of_decentred(&lens, one).unwrap() + Prism::of_decentred(&lens, other).unwrap();
        prop_assert!(apart(Prism::of_decentred(&lens, both).unwrap(), by_parts) < DUST);
    }

    #[test]
    fn prism_adds_as_lenses_add(one in any_lens(), other in any_lens(), by in any_move()) {
        let together = SphereCyl::from(one.vector() + other.vector());
        let by_parts = Prism::of_decentred(&one, by).unwrap() + Prism::of_decentred(&other, by).unwrap();
        prop_assert!(apart(Prism::of_decentred(&together, by).unwrap(), by_parts) < 1e-7);
    }

    #[test]
    fn the_form_of_a_lens_changes_no_prism(lens in any_lens(), by in any_move()) {
        let found = Prism::of_decentred(&lens, by).unwrap();
        prop_assert!(apart(found, Prism::of_decentred(&lens.transposed(), by).unwrap()) < DUST);
    }

    // A lens left in the middle of the frame stands to its pupil as its centre, half the frame from the bridge, does.
    #[test]
    fn distances_measured_either_way_agree(eye in any_eye(), frame in 50.0..80.0_f64, pupil in 25.0..40.0_f64) {
        let to_move = Decentration::to_pupil(eye, frame, pupil).unwrap();
        let stands = Decentration::of_centre(eye, frame / 2.0, pupil).unwrap();
        prop_assert!((stands.in_mm(eye) + to_move.in_mm(eye)).abs() < DUST);
        prop_assert!((stands.right_mm() - (-to_move).right_mm()).abs() < DUST);
    }

    // Two formulas for one quantity: along a movement P is the power there times the movement; across it lies the torsion.
    #[test]
    fn along_the_movement_it_is_the_power_there(lens in any_lens(), degrees in 0.0..360.0_f64, mm in 0.0..20.0_f64) {
        let (sine, cosine) = degrees.to_radians().sin_cos();
        let by = Decentration::new(mm * cosine, mm * sine).unwrap();
        let prism = Prism::of_decentred(&lens, by).unwrap();
        let along = prism.h() * cosine + prism.v() * sine;
        prop_assert!((along - lens.power_along(degrees) * mm / 10.0).abs() < 1e-8);
    }

    #[test]
    fn the_movement_wanted_gives_the_prism(lens in any_lens(), by in any_move()) {
        prop_assume!(lens.principal().iter().all(|principal| principal.power.abs() > 0.01));
        let prism = Prism::of_decentred(&lens, by).unwrap();
        let wanted = Decentration::wanted(&lens, prism).unwrap();
        prop_assert!((wanted.right_mm() - by.right_mm()).abs() < 1e-6);
        prop_assert!((wanted.up_mm() - by.up_mm()).abs() < 1e-6);
    }

    #[test]
    fn a_mirrored_pair_has_mirrored_prism(lens in any_lens(), inward in -10.0..10.0_f64, up in -10.0..10.0_f64) {
        let mirrored = lens.cylinder.map_or(lens, |c| {
            SphereCyl::new(lens.sphere, c.power(), 180.0 - c.axis().degrees()).unwrap()
        });
        let at = |lens, eye| Prism::of_decentred(lens, Decentration::inward(eye, inward, up).unwrap()).unwrap();
        let (right, left) = (at(&lens, Eye::Right), at(&mirrored, Eye::Left));
        prop_assert!((right.h() + left.h()).abs() < 1e-8 && (right.v() - left.v()).abs() < 1e-8);
    }

    #[test]
    fn a_split_prism_is_the_whole_between_the_eyes(whole in any_prism(), share in 0.0..=1.0_f64) {
        let shared = split(whole, Eye::Right, share).unwrap();
        prop_assert!(apart(relative(shared.right, shared.left), whole) < DUST);
        let left = split(whole, Eye::Left, share).unwrap();
        prop_assert!(apart(relative(left.right, left.left), -whole) < DUST);
    }

    // An equal addition before both eyes changes no relative prism along the vertical.
    #[test]
    fn equal_additions_cancel(right in any_lens(), left in any_lens(), add in 0.25..4.0_f64, down in 0.0..30.0_f64) {
        let point = Reading::new(down, 0.0).unwrap();
        let far = point.through(&Eyes { right, left }).unwrap().relative();
        let added = Eyes { right: right.with_sphere_changed(add), left: left.with_sphere_changed(add) };
        prop_assert!(apart(far, point.through(&added).unwrap().relative()) < 1e-8);
    }

    #[test]
    fn angle_and_prism_are_one(degrees in 0.0..=26.0_f64) {
        let prism = Prism::new(0.0, of_deviation(degrees).unwrap()).unwrap();
        prop_assert!((prism.deviation_degrees() - degrees).abs() < DUST);
    }

    #[test]
    fn rounding_moves_by_at_most_half_a_step_and_stays(prism in any_prism()) {
        let rounded = prism.rounded();
        prop_assert_eq!(rounded.rounded(), rounded);
        prop_assert!((rounded.h() - prism.h()).abs() <= 0.125 && (rounded.v() - prism.v()).abs() <= 0.125);
    }

    #[test]
    fn what_is_written_can_be_read(h in -3000..3000_i32, v in -3000..3000_i32, eye in any_eye()) {
        let prism = Prism::new(f64::from(h) / 100.0, f64::from(v) / 100.0).unwrap();
        prop_assert!(apart(Prism::read(&prism.written(eye), eye).unwrap(), prism) < DUST);
        // The compass is written to 0.1 degree, half of which is 0.00087 of the amount.
        let again = Prism::read(&prism.to_string(), eye).unwrap();
        prop_assert!(apart(again, prism) < 0.0071 + prism.amount() * 0.00088);
    }

    #[test]
    fn no_text_makes_the_reader_fall_over(text in "\\PC{0,24}", dressed in "[0-9.@&° Δinoutpdwbase]{0,16}", eye in any_eye()) {
        for text in [text, dressed] {
            if let Ok(prism) = Prism::read(&text, eye) {
                prop_assert!(prism.amount().is_finite());
            }
        }
    }

    #[test]
    fn no_number_makes_anything_fall_over(x in any::<f64>(), y in any::<f64>(), s in any::<f64>(), c in any::<f64>(), eye in any_eye()) {
        let lens = SphereCyl { sphere: s, ..SphereCyl::new(0.0, if c.is_finite() { c } else { 1.0 }, 30.0).unwrap() };
        let prisms = [Prism::new(x, y), Prism::at(x, y), Prism::toward(x, Base::In, eye)];
        for prism in prisms.into_iter().flatten() {
            prop_assert!(prism.h().is_finite() && prism.v().is_finite());
            let _ = (prism.to_string(), prism.written(eye), prism.rounded(), prism.deviation_degrees());
            if let Ok(moved) = Decentration::wanted(&lens, prism) {
                prop_assert!(moved.right_mm().abs() <= 40.0 && moved.up_mm().abs() <= 40.0);
            }
            let _ = split(prism, eye, y);
        }
        let moves = [Decentration::new(x, y), Decentration::inward(eye, x, y), Decentration::of_centre(eye, x, y),
            Decentration::to_pupil(eye, x, y), Decentration::of_gaze(eye, x, y)];
        for moved in moves.into_iter().flatten() {
            if let Ok(prism) = Prism::of_decentred(&lens, moved) {
                prop_assert!(prism.h().is_finite() && prism.v().is_finite());
            }
        }
        if let Ok(point) = Reading::new(x, y) {
            let _ = point.through(&Eyes { right: lens, left: lens });
        }
        let _ = of_deviation(x);
    }
}

#[test]
fn prisms_are_written_by_name_and_by_the_compass() {
    for (h, v, eye, named, compass) in [
        (2.0, 0.0, Eye::Right, "2.00 in", "2.00 @ 0"),
        (2.0, 0.0, Eye::Left, "2.00 out", "2.00 @ 0"),
        (2.0, 1.5, Eye::Right, "1.50 up & 2.00 in", "2.50 @ 36.9"),
        (1.0, -2.0, Eye::Right, "2.00 down & 1.00 in", "2.24 @ 296.6"),
        (0.0, -0.5, Eye::Left, "0.50 down", "0.50 @ 270"),
        (0.0, 0.0, Eye::Left, "0.00", "0.00"),
        (2.0, -0.0001, Eye::Right, "2.00 in", "2.00 @ 0"),
        (0.004, 0.001, Eye::Right, "0.00", "0.00"),
    ] {
        let prism = Prism::new(h, v).unwrap();
        assert_eq!(prism.written(eye), named);
        assert_eq!(prism.to_string(), compass);
    }
}

// The trade's own abbreviations and dress: common practice, no source.
#[test]
fn many_dresses_are_read() {
    let expected = Prism::new(2.0, 1.5).unwrap();
    for text in [
        "1.50 up & 2.00 in",
        "2 in and 1.5 up",
        "1,50Δ base up & 2,00Δ base in",
        "1.5 BU & 2 BI",
    ] {
        assert_eq!(Prism::read(text, Eye::Right), Ok(expected), "{text}");
    }
    let compass = Prism::read(" 2.50 Δ @ 36.87° ", Eye::Left).unwrap();
    assert_near((compass - expected).amount(), 0.0, 0.001);
    assert_eq!(Prism::read("0.00", Eye::Left), Ok(Prism::NONE));
}

#[test]
fn what_could_become_a_wrong_prism_is_refused_with_a_sentence() {
    for (text, sentence) in [
        ("2.00", "“2.00” has no base: in, out, up or down?"),
        (
            "2.00 in & 1.00 out",
            "“2.00 in & 1.00 out” has two bases along one line: which one is meant?",
        ),
        (
            "-2.00 in",
            "“-2.00 in” cannot be read as prism: write it like 1.50 up & 2.00 in, or 2.50 @ 37",
        ),
        (
            "2.00 @ 400",
            "the base of the prism can be 0 to 360 degrees, and 400 is outside that",
        ),
        (
            "200 in",
            "the prism can be 0 to 50 Δ, and 200 is outside that",
        ),
    ] {
        let error = Prism::read(text, Eye::Right).unwrap_err();
        assert_eq!(error.to_string(), sentence);
    }
}

/// "Basis innen, außen, oben, unten" and their initials are common practice in German, no source.
#[test]
fn bases_are_named_in_the_language_spoken_and_read_in_any() {
    let prism = Prism::new(-2.0, 1.5).unwrap();
    let german = in_language(Language::German, || prism.written(Eye::Right));
    assert_eq!(german, "1.50 oben & 2.00 außen");
    for text in [
        "1.50 oben & 2.00 außen",
        "1,50 Basis oben und 2,00 Basis aussen",
        "1.50 up & 2.00 out",
        "2.00 base out and 1.50 oben",
    ] {
        for language in Language::ALL {
            let read = in_language(language, || Prism::read(text, Eye::Right));
            assert_eq!(read, Ok(prism), "{text}");
        }
    }
    for text in ["2.00 BI", "2.00 Basis innen"] {
        let read = in_language(Language::German, || Prism::read(text, Eye::Left));
        assert_eq!(read, Ok(Prism::new(-2.0, 0.0).unwrap()), "{text}");
    }
}

/// BO is base out in English and "Basis oben", up, in German: read the wrong way it is a wrong prism.
#[test]
fn initials_that_mean_another_base_elsewhere_are_refused() {
    in_language(Language::German, || {
        for text in ["2.00 BO", "2.00 bu", "1.00 BU & 2.00 BI"] {
            let read = Prism::read(text, Eye::Right);
            assert!(matches!(read, Err(ReadError::Initials { .. })), "{read:?}");
        }
        let out = Prism::toward(2.0, Base::Out, Eye::Right).unwrap();
        assert_eq!(Prism::read("2.00 BA", Eye::Right), Ok(out));
    });
    assert!(Prism::read("2.00 BA", Eye::Right).is_err());
}

#[test]
fn rubbish_is_unreadable() {
    for text in [
        "",
        " ",
        "in",
        "@",
        "2@",
        "@90",
        "&",
        "1 up &",
        "1 up & 1 in & 1 up",
        "2 sideways",
        "inf in",
        "nan",
        "1e1 in",
        "1..0 in",
        "+1 in",
        "2 in 1 up",
        "Δ",
        "1 up\u{0}",
    ] {
        let read = Prism::read(text, Eye::Left);
        assert!(
            matches!(read, Err(ReadError::Unreadable { .. })),
            "{text:?} gave {read:?}"
        );
    }
}

#[test]
fn endless_numbers_are_refused() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert!(Prism::new(bad, 0.0).is_err() && Prism::new(0.0, bad).is_err());
        assert!(Prism::at(bad, 0.0).is_err() && Prism::at(1.0, bad).is_err());
        assert!(Decentration::new(bad, 0.0).is_err() && Reading::new(bad, 0.0).is_err());
        assert!(of_deviation(bad).is_err() && split(Prism::NONE, Eye::Left, bad).is_err());
        let moved = Decentration::new(1.0, 1.0).unwrap();
        let endless = Prism::of_decentred(&SphereCyl::sphere(bad), moved);
        assert!(matches!(endless, Err(OpticsError::NotANumber { .. })));
        let one = Prism::new(1.0, 1.0).unwrap();
        assert!(Decentration::wanted(&SphereCyl::sphere(bad), one).is_err());
    }
}

// A cylinder alone has no power along its axis: the definition of a cylinder.
#[test]
fn a_lens_gives_no_prism_where_it_has_no_power() {
    let cylinder = lens(0.0, -2.0, 180.0);
    let up = Prism::toward(1.0, Base::Up, Eye::Right).unwrap();
    let inward = Prism::toward(1.0, Base::In, Eye::Right).unwrap();
    assert_near(
        Decentration::wanted(&cylinder, up).unwrap().up_mm(),
        -5.0,
        DUST,
    );
    let refused = Decentration::wanted(&cylinder, inward).unwrap_err();
    assert!(matches!(refused, OpticsError::NoPowerThere { .. }));
    assert_eq!(
        refused.to_string(),
        "the lens has no power in the meridian 180, so moving it gives no prism there"
    );
    let weak = Decentration::wanted(&SphereCyl::sphere(0.12), up).unwrap_err();
    assert_eq!(
        weak.to_string(),
        "the decentration can be −40 to 40 mm, and 83.33 is outside that"
    );
    // No prism asked for is no movement, of whatever lens.
    assert_eq!(
        Decentration::wanted(&SphereCyl::sphere(0.0), Prism::NONE),
        Ok(Decentration::default())
    );
}

// A trial case holds quarters; what is under half a step is none: common practice, no source.
#[test]
fn rounding_to_the_trial_case() {
    for (h, v, rounded) in [
        (0.12, -0.12, (0.0, 0.0)),
        (0.13, -0.125, (0.25, -0.25)),
        (1.13, 0.8, (1.25, 0.75)),
    ] {
        let found = Prism::new(h, v).unwrap().rounded();
        assert_eq!(found, Prism::new(rounded.0, rounded.1).unwrap());
    }
}

// Common practice: between 1 and 1.5 Δ of vertical difference is worth asking about.
#[test]
fn a_large_vertical_difference_is_asked_about() {
    let point = Reading::new(10.0, 2.0).unwrap();
    let pair = |left| Eyes {
        right: SphereCyl::sphere(1.0),
        left: SphereCyl::sphere(left),
    };
    assert!(point.through(&pair(2.0)).unwrap().asks());
    assert!(!point.through(&pair(1.75)).unwrap().asks());
}

// Eyes that turn in meet plus lenses out of centre inward, which is base out before both: it adds.
#[test]
fn converging_eyes_meet_horizontal_prism_too() {
    let pair = Eyes {
        right: SphereCyl::sphere(4.0),
        left: SphereCyl::sphere(2.0),
    };
    let found = Reading::new(10.0, 2.0).unwrap().through(&pair).unwrap();
    assert_eq!(found.each.right.written(Eye::Right), "4.00 up & 0.80 out");
    assert_eq!(found.each.left.written(Eye::Left), "2.00 up & 0.40 out");
    assert_eq!(found.relative().written(Eye::Right), "2.00 up & 1.20 out");
}

#[test]
fn a_stored_prism_is_checked_when_it_is_read() {
    let prism = Prism::new(1.5, -2.0).unwrap();
    let mut bytes = Vec::new();
    ciborium::into_writer(&prism, &mut bytes).unwrap();
    assert_eq!(
        ciborium::from_reader::<Prism, _>(bytes.as_slice()).unwrap(),
        prism
    );
    let bad = std::collections::BTreeMap::from([("h", f64::NAN), ("v", 0.0)]);
    let mut bytes = Vec::new();
    ciborium::into_writer(&bad, &mut bytes).unwrap();
    assert!(ciborium::from_reader::<Prism, _>(bytes.as_slice()).is_err());
}

// 360 is 0 (ISO 8429:1986 counts from 0), also for what lies a hair below it.
#[test]
fn a_hair_below_the_horizontal_is_not_360() {
    let prism = Prism::new(1.0, -1e-20).unwrap();
    assert!(prism.base_degrees() < 360.0, "{}", prism.base_degrees());
    assert_eq!(prism.to_string(), "1.00 @ 0");
}

#[test]
fn axes_at_both_ends_are_one() {
    let by = Decentration::new(3.0, 4.0).unwrap();
    let at = |axis| Prism::of_decentred(&lens(1.0, -2.0, axis), by).unwrap();
    assert_near((at(0.0) - at(180.0)).amount(), 0.0, DUST);
}
