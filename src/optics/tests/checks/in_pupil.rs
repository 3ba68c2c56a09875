//! The reflex across the whole pupil.

use crate::assert_near;
use optics::retinoscopy::reflex::{Bench, Light, Lit, STREAK, another_eye, run};
use optics::retinoscopy::{Beam, Media, Motion, WorkingDistance};
use optics::{Meridian, PowerMatrix, SphereCyl};
use proptest::prelude::*;

fn bench(eye: SphereCyl, tests: f64) -> Bench {
    Bench {
        eye,
        in_path: SphereCyl::sphere(0.0),
        distance: WorkingDistance::from_cm(50.0).unwrap(),
        light: Light::PARALLEL,
        tests: Meridian::new(tests).unwrap(),
        pupil_mm: 4.0,
        media: Media::Clear,
    }
}

// By hand from the formula: at 50 cm 0.00/−2.00×180 is 2 D from neutral along 180 and neutral along 90, so only how far a
// point lies to the side counts, and the band stands upright whatever the streak does.
#[test]
fn off_the_axis_the_band_is_skewed() {
    let eye = SphereCyl::new(0.0, -2.0, 180.0).unwrap();
    let look = bench(eye, 45.0).look().unwrap();
    assert_near(look.stands_at(), 90.0, 1e-9);
    assert_near(look.skew(), -45.0, 1e-9);
    let seen = look.sentence();
    assert!(
        seen.contains("it stands at 90 and the streak at 135"),
        "{seen}"
    );
    for tests in [180.0, 90.0] {
        let straight = bench(eye, tests).look().unwrap();
        assert_near(straight.skew(), 0.0, 1e-9);
        assert!(!straight.sentence().contains("skewed"));
    }
}

// A sphere has no axis to stand off: its reflex is never skewed, and is neutral in every meridian at once.
#[test]
fn a_sphere_is_never_skewed() {
    for tests in [10.0, 45.0, 137.0] {
        let far = bench(SphereCyl::sphere(1.0), tests).look().unwrap();
        assert_near(far.skew(), 0.0, 1e-9);
        assert_eq!(far.motion(), Motion::With);
        let neutral = bench(SphereCyl::sphere(-2.0), tests).look().unwrap();
        assert_eq!(neutral.motion(), Motion::Neutral);
        assert_eq!(neutral.lit(0.0).unwrap(), Lit::Whole);
        assert_eq!(neutral.speed(), None);
    }
}

// Common practice, no source: cataract dims the reflex, a reversed beam turns the motion round.
#[test]
fn media_dim_and_the_reversed_beam_turns() {
    let clear = bench(SphereCyl::sphere(0.0), 180.0);
    let dense = Bench {
        media: Media::Dense,
        ..clear
    };
    assert!(dense.look().unwrap().brightness() < clear.look().unwrap().brightness());
    assert!(dense.look().unwrap().sentence().contains("dim"));
    let reversed = Bench {
        light: Light::of(Beam::Reversed, clear.distance),
        ..clear
    };
    assert_eq!(clear.look().unwrap().motion(), Motion::With);
    assert_eq!(reversed.look().unwrap().motion(), Motion::Against);
}

#[test]
fn no_such_pupil_no_look() {
    for pupil_mm in [0.0, -4.0, f64::NAN, f64::INFINITY] {
        let none = Bench {
            pupil_mm,
            ..bench(SphereCyl::sphere(0.0), 180.0)
        };
        assert!(none.look().is_err(), "{pupil_mm}");
    }
}

proptest! {
    // The module's own inequality, point by point through the matrix: a point on an edge of the band lies on it.
    #[test]
    fn the_edges_lie_where_the_inequality_says(
        sphere in -8.0..8.0_f64, cylinder in -4.0..-0.25_f64, axis in 1.0..180.0_f64, tests in 1.0..180.0_f64, streak in -3.0..3.0_f64,
    ) {
        let eye = SphereCyl::new(sphere, cylinder, axis).unwrap();
        let bench = bench(eye, tests);
        let look = bench.look().unwrap();
        if let Lit::Band { from, to } = look.lit(streak).unwrap() {
            let (normal, sweep) = ((tests + look.skew()).to_radians(), tests.to_radians());
            let e = PowerMatrix::from(eye) + PowerMatrix::from(SphereCyl::sphere(2.0));
            for edge in [from, to].into_iter().filter(|edge| edge.abs() < 1.0) {
                let [x, y] = e.times([edge * 2.0 * normal.cos(), edge * 2.0 * normal.sin()]);
                let off = x * sweep.cos() + y * sweep.sin() - streak * 2.0;
                prop_assert!((off.abs() - STREAK).abs() < 1e-9, "{off}");
            }
        }
    }

    // Where the streak tests a principal meridian the band is that of the single meridian.
    #[test]
    fn on_the_axis_it_is_the_single_meridian(
        sphere in -8.0..8.0_f64, cylinder in -4.0..-0.25_f64, axis in 1.0..180.0_f64, streak in -5.0..5.0_f64,
    ) {
        let eye = SphereCyl::new(sphere, cylinder, axis).unwrap();
        prop_assume!((sphere + 2.0).abs() > 1e-3);
        let bench = bench(eye, axis);
        let single = run(bench.light, bench.distance, sphere, 0.0).unwrap();
        match (bench.look().unwrap().lit(streak).unwrap(), single.lit(streak, 4.0).unwrap()) {
            (Lit::Band { from, to }, Lit::Band { from: other, to: end }) => {
                prop_assert!((from - other).abs() < 1e-6 && (to - end).abs() < 1e-6);
            }
            (whole, other) => prop_assert_eq!(whole, other),
        }
    }

    #[test]
    fn every_draw_is_an_eye(draws in prop::array::uniform3(0.0..1.0_f64)) {
        let eye = another_eye(draws);
        prop_assert!((-6.0..=6.0).contains(&eye.sphere) && (-2.75..=0.0).contains(&eye.cylinder_power()));
        prop_assert!((eye.sphere * 4.0).fract() == 0.0);
        prop_assert!(bench(eye, 180.0).look().is_ok());
    }
}
