//! How the reflex runs and what of the pupil is lit.

use crate::assert_near;
use optics::retinoscopy::reflex::{Light, Lit, Pace, Run, run};
use optics::retinoscopy::{Beam, Brightness, Motion, WorkingDistance};
use proptest::prelude::*;

fn at(cm: f64) -> WorkingDistance {
    WorkingDistance::from_cm(cm).unwrap()
}

fn seen(light_cm: Option<f64>, cm: f64, refraction: f64, in_path: f64) -> Run {
    let light = light_cm.map_or(Light::PARALLEL, |point| Light::at_cm(point).unwrap());
    run(light, at(cm), refraction, in_path).unwrap()
}

// Common practice, no source: reversed is the beam that crosses on its way, and one that crosses behind the eye is not.
#[test]
fn which_beam_it_is() {
    let beam = |cm: f64| Light::at_cm(cm).unwrap().beam(at(67.0));
    assert_eq!(Light::PARALLEL.beam(at(67.0)), Some(Beam::Normal));
    assert_eq!(beam(100.0), Some(Beam::Normal));
    assert_eq!(beam(-20.0), Some(Beam::Normal));
    assert_eq!(beam(33.0), Some(Beam::Reversed));
    assert_eq!(beam(67.0), None);
}

// At neutrality the far point is at the retinoscope: the definition of it.
#[test]
fn neutral_is_endless_and_a_beam_from_the_scope_is_still() {
    let neutral = seen(None, 50.0, 1.0, 3.0);
    assert_eq!(
        (neutral.pace(), neutral.motion()),
        (Pace::Endless, Motion::Neutral)
    );
    assert_eq!(neutral.middle_mm(1.0).unwrap(), None);
    assert_near(neutral.width(4.0).unwrap(), 1.0, 0.0);
    assert_eq!(neutral.lit(0.2, 4.0).unwrap(), Lit::Whole);
    assert_eq!(neutral.lit(2.0, 4.0).unwrap(), Lit::Dark);
    assert_eq!(neutral.called(), Brightness::Bright);

    let still = seen(Some(50.0), 50.0, 1.0, 0.0);
    assert_eq!(
        (still.pace(), still.motion()),
        (Pace::Still, Motion::CannotTell)
    );
    assert_eq!(still.middle_mm(2.0).unwrap(), Some(0.0));
    assert_eq!(still.lit(-1.0, 4.0), still.lit(1.0, 4.0));
}

// Teaching pages, in words: near neutrality fast, wide and bright; far from it slow, narrow and dull; against duller than with.
#[test]
fn near_neutral_it_is_fast_wide_and_bright() {
    let (near, far) = (seen(None, 67.0, 0.0, 1.0), seen(None, 67.0, 5.0, 0.0));
    let speed = |run: Run| match run.pace() {
        Pace::Times(times) => times,
        other => panic!("{other:?}"),
    };
    assert!(speed(near) > speed(far));
    assert!(near.width(4.0).unwrap() > far.width(4.0).unwrap());
    assert!(near.brightness() > far.brightness());
    assert_eq!(far.called(), Brightness::Dim);
    let against = seen(None, 67.0, 0.0, 2.0 * 100.0 / 67.0 - 1.0);
    assert_near(against.from_neutral(), -near.from_neutral(), 1e-12);
    assert!(against.brightness() < near.brightness());
}

#[test]
fn what_is_no_number_or_no_eye_is_refused() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert!(Light::at_cm(bad).is_err());
        assert!(run(Light::PARALLEL, at(67.0), bad, 0.0).is_err());
        assert!(run(Light::PARALLEL, at(67.0), 0.0, bad).is_err());
        let good = seen(None, 67.0, 0.0, 0.0);
        assert!(good.middle_mm(bad).is_err());
        assert!(good.width(bad).is_err());
        assert!(good.lit(bad, 4.0).is_err());
        assert!(good.lit(0.0, bad).is_err());
    }
    assert!(Light::at_cm(0.0).is_err());
}

proptest! {
    // Derived in the module: the sign of the motion is that of a parallel beam but where 0 < s < w.
    #[test]
    fn the_motion_turns_exactly_where_the_beam_crosses_on_its_way(
        point in prop_oneof![-500.0..-1.0_f64, 1.0..500.0_f64], cm in 10.0..120.0_f64, refraction in -20.0..20.0_f64, lens in -20.0..20.0_f64,
    ) {
        prop_assume!((point - cm).abs() > 1e-6 && (refraction + 100.0 / cm - lens).abs() > 1e-6);
        let parallel = seen(None, cm, refraction, lens).motion();
        let crosses = 0.0 < point && point < cm;
        let turned = match parallel {
            Motion::With => Motion::Against,
            _ => Motion::With,
        };
        let expected = if crosses { turned } else { parallel };
        prop_assert_eq!(seen(Some(point), cm, refraction, lens).motion(), expected);
    }

    // With a normal beam with means that more plus is needed: the trade's rule, and the definition of with.
    #[test]
    fn with_asks_for_plus(cm in 10.0..120.0_f64, refraction in -20.0..20.0_f64, lens in -20.0..20.0_f64) {
        let more = refraction + 100.0 / cm - lens;
        prop_assume!(more.abs() > 1e-6);
        let expected = if more > 0.0 { Motion::With } else { Motion::Against };
        prop_assert_eq!(seen(None, cm, refraction, lens).motion(), expected);
    }

    // The band's middle is at the streak's place times the speed, wherever no edge is cut off.
    #[test]
    fn the_band_is_about_its_middle(
        cm in 20.0..100.0_f64, refraction in -10.0..10.0_f64, lens in -10.0..10.0_f64, streak in -5.0..5.0_f64, pupil in 1.0..9.0_f64,
    ) {
        let run = seen(None, cm, refraction, lens);
        if let Lit::Band { from, to } = run.lit(streak, pupil).unwrap() {
            prop_assert!(-1.0 <= from && from < to && to <= 1.0);
            if -1.0 < from && to < 1.0 {
                let middle = run.middle_mm(streak).unwrap().unwrap();
                prop_assert!((f64::midpoint(from, to) * pupil / 2.0 - middle).abs() < 1e-9);
                prop_assert!(((to - from) / 2.0 - run.width(pupil).unwrap()).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn no_finite_number_fells_it(point in any::<f64>(), lens in any::<f64>(), streak in any::<f64>(), pupil in 0.5..10.0_f64) {
        let light = Light::at_cm(point).unwrap_or(Light::PARALLEL);
        if let Ok(run) = run(light, at(67.0), 1.0, lens) {
            let streak = if streak.is_finite() { streak.clamp(-100.0, 100.0) } else { 0.0 };
            prop_assert!(run.middle_mm(streak).unwrap().is_none_or(f64::is_finite));
            prop_assert!((0.0..=1.0).contains(&run.width(pupil).unwrap()));
            if let Lit::Band { from, to } = run.lit(streak, pupil).unwrap() {
                prop_assert!(from >= -1.0 && to <= 1.0);
            }
            prop_assert!((0.0..=1.0).contains(&run.brightness()));
        }
    }
}
