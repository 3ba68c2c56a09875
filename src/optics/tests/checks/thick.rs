//! Laws of thick lenses and of vergence.

use crate::{any_lens, apart, assert_near, lens};
use optics::{OpticsError, SphereCyl, ThickLens, contact, vergence, vertex};
use proptest::prelude::*;

#[test]
fn what_no_lens_can_be_is_refused() {
    let plain = SphereCyl::sphere(4.0);
    for (front, thickness, index) in [
        (plain, -1.0, 1.5),
        (plain, 31.0, 1.5),
        (plain, 5.0, 1.0),
        (plain, 5.0, 2.5),
        (SphereCyl::sphere(61.0), 5.0, 1.5),
        (lens(55.0, 6.0, 90.0), 5.0, 1.5),
        (SphereCyl::sphere(f64::NAN), 5.0, 1.5),
        (plain, f64::NAN, 1.5),
        (plain, 5.0, f64::INFINITY),
    ] {
        let made = ThickLens::new(front, plain, thickness, index);
        assert!(matches!(made, Err(OpticsError::OutOfRange(_))), "{made:?}");
    }
    let inside = ThickLens::new(SphereCyl::sphere(59.0), plain, 29.0, 1.4);
    assert!(matches!(inside, Err(OpticsError::PastItsFocus { .. })));
    let index = ThickLens::new(plain, plain, 5.0, 1.0).unwrap_err();
    assert_eq!(
        index.to_string(),
        "the refractive index can be 1.3 to 2, and 1 is outside that"
    );
}

// Computed from the formula: 1 / 0.67 m is 1.49 D, and back.
#[test]
fn a_working_lens_and_its_distance() {
    let distance = vergence::working_distance(1.5).unwrap();
    assert_near(distance.cm(), 66.667, 0.0005);
    assert_near(distance.dioptres(), 1.5, 1e-12);
    for lens in [0.0, -1.5, 0.5, 20.0, f64::NAN, f64::INFINITY] {
        assert!(vergence::working_distance(lens).is_err(), "{lens}");
    }
}

proptest! {
    #[test]
    fn without_thickness_the_surfaces_are_in_contact(front in any_lens(), back in any_lens(), index in 1.3..=2.0_f64) {
        let lens = ThickLens::new(front, back, 0.0, index).unwrap();
        let thin = contact::together(&[front, back]).unwrap();
        prop_assert!(apart(&lens.back_vertex_power(), &thin) < 1e-9);
        prop_assert!(apart(&lens.front_vertex_power(), &thin) < 1e-9);
    }

    #[test]
    fn a_lens_turned_round_changes_its_vertex_powers(front in any_lens(), back in any_lens(), mm in 0.0..15.0_f64) {
        let lens = ThickLens::new(front, back, mm, 1.5).unwrap();
        let round = ThickLens::new(back, front, mm, 1.5).unwrap();
        prop_assert_eq!(lens.back_vertex_power(), round.front_vertex_power());
        prop_assert_eq!(lens.front_vertex_power(), round.back_vertex_power());
    }

    #[test]
    fn distance_and_vergence_are_one_another(metres in prop_oneof![-50.0..-0.01_f64, 0.01..50.0_f64]) {
        let there = vergence::of_distance(metres).unwrap();
        let back = vergence::distance(there).unwrap().unwrap();
        prop_assert!((back - metres).abs() < 1e-9);
    }

    // Light that runs on d metres meets its point so much nearer: 1/(l − d), which is the formula of effectivity.
    #[test]
    fn light_that_runs_on_is_a_lens_moved(metres in prop_oneof![-5.0..-0.1_f64, 0.1..5.0_f64], mm in 0.0..50.0_f64) {
        let light = vergence::of_distance(metres).unwrap();
        let nearer = vergence::of_distance(metres - mm / 1000.0).unwrap();
        prop_assert!((vertex::effective(light, mm, 0.0).unwrap() - nearer).abs() < 1e-9);
    }

    #[test]
    fn working_distances_come_back(cm in 10.0..=120.0_f64) {
        let lens = vergence::of_distance(cm / 100.0).unwrap();
        prop_assume!((10.001..119.999).contains(&cm));
        prop_assert!((vergence::working_distance(lens).unwrap().cm() - cm).abs() < 1e-9);
    }
}
