//! Laws that hold for every lens, tried on many.

use crate::{any_lens, apart, lens};
use optics::retinoscopy::{Neutral, Setup, WorkingDistance, WorkingLens, net};
use optics::{
    Axis, Cell, CrossedCylinders, PowerMatrix, PowerVector, SphereCyl, contact, off_axis, vertex,
};
use proptest::prelude::*;

const DUST: f64 = 1e-8;

/// A lens on the quarter step, as a trial frame holds it.
fn trial_lens() -> impl Strategy<Value = SphereCyl> {
    (-80..=80_i32, -24..=24_i32, 1..=180_i32)
        .prop_map(|(s, c, a)| lens(f64::from(s) / 4.0, f64::from(c) / 4.0, f64::from(a)))
}

proptest! {
    #[test]
    fn transposing_changes_no_power_and_twice_is_nothing(lens in any_lens(), degrees in 0.0..360.0_f64) {
        let other = lens.transposed();
        prop_assert!((lens.power_along(degrees) - other.power_along(degrees)).abs() < DUST);
        prop_assert!(apart(&lens, &other.transposed()) < DUST);
        prop_assert!(lens.minus_form().cylinder_power() <= 0.0);
        prop_assert!(lens.plus_form().cylinder_power() >= 0.0);
    }

    #[test]
    fn to_a_vector_and_back(lens in any_lens()) {
        let back = SphereCyl::from(lens.vector());
        prop_assert!(apart(&lens, &back) < DUST);
        prop_assert!((back.sphere - lens.minus_form().sphere).abs() < DUST);
    }

    #[test]
    fn a_lens_and_its_negative_are_nothing(lens in any_lens()) {
        let nothing: PowerVector = lens.vector() + -lens.vector();
        prop_assert!(nothing.blur_strength() < DUST);
        prop_assert_eq!(SphereCyl::from(nothing), SphereCyl::sphere(0.0));
    }

    // The laws of a group, and of a scale upon it.
    #[test]
    fn vectors_are_a_group(one in any_lens(), two in any_lens(), three in any_lens(), factor in -3.0..3.0_f64) {
        let (a, b, c) = (one.vector(), two.vector(), three.vector());
        prop_assert!(((a + b) + c).distance(&(a + (b + c))) < 1e-12);
        prop_assert_eq!(a + b, b + a);
        prop_assert_eq!(a + PowerVector::default(), a);
        prop_assert_eq!(a - a, PowerVector::default());
        prop_assert!(((a + b) * factor).distance(&(a * factor + b * factor)) < 1e-12);
        prop_assert!(a.distance(&c) <= a.distance(&b) + b.distance(&c) + 1e-12);
    }

    #[test]
    fn vector_and_matrix_are_one(one in any_lens(), two in any_lens()) {
        let matrix = PowerMatrix::from(one);
        prop_assert!(PowerVector::from(matrix).distance(&one.vector()) < 1e-12);
        let sum = PowerVector::from(matrix + PowerMatrix::from(two));
        prop_assert!(sum.distance(&(one.vector() + two.vector())) < 1e-12);
        let difference = PowerVector::from(matrix - PowerMatrix::from(two));
        prop_assert!(difference.distance(&(one.vector() - two.vector())) < 1e-12);
        let (along, across) = (one.sphere, one.sphere + one.cylinder_power());
        prop_assert!((matrix.trace() - along - across).abs() < 1e-12);
        prop_assert!((matrix.determinant() - along * across).abs() < 1e-10);
    }

    #[test]
    fn crossed_cylinders_are_the_lens_in_contact(lens in any_lens()) {
        let crossed = CrossedCylinders::from(lens);
        prop_assert!(apart(&SphereCyl::from(crossed), &lens) < 1e-12);
        let alone = crossed.cylinders().map(|(power, axis)| crate::lens(0.0, power, axis.degrees()));
        prop_assert!(apart(&contact::together(&alone).unwrap(), &lens) < 1e-12);
        let [(first, axis), (second, _)] = crossed.cylinders();
        prop_assert_eq!(CrossedCylinders::new(first, axis, second), Ok(crossed));
    }

    #[test]
    fn what_is_left_over_completes(want in any_lens(), have in any_lens()) {
        let left = contact::left_over(&want, &have).unwrap();
        prop_assert!(apart(&contact::together(&[have, left]).unwrap(), &want) < 1e-9);
    }

    // Over-refraction closes the circle: what the residual says is found, leads back to what was intended.
    #[test]
    fn a_turned_lens_and_its_residual_are_the_lens(lens in any_lens(), by in -400.0..400.0_f64) {
        let residual = off_axis::residual(&lens, by).unwrap();
        prop_assert!(residual.mean_sphere().abs() < 1e-9);
        let size = 2.0 * lens.cylinder_power() * by.to_radians().sin();
        prop_assert!((residual.cylinder_power().abs() - size.abs()).abs() < 1e-8);
        let refraction = off_axis::refraction(&lens, by, &residual).unwrap();
        prop_assert!(apart(&refraction, &lens) < 1e-9);
        let order = off_axis::to_order(&lens, by, &residual).unwrap();
        prop_assert!(apart(&off_axis::turned(&order, by).unwrap(), &lens) < 1e-8);
    }

    #[test]
    fn turning_turns_the_meridians(lens in any_lens(), by in -180.0..180.0_f64, degrees in 0.0..180.0_f64) {
        let turned = off_axis::turned(&lens, by).unwrap();
        prop_assert!((turned.power_along(degrees + by) - lens.power_along(degrees)).abs() < DUST);
        let axis = Axis::new(degrees).unwrap();
        let apart = (axis.turned(by).degrees() - axis.degrees() - by).rem_euclid(180.0);
        prop_assert!(apart.min(180.0 - apart) < 1e-9);
    }

    #[test]
    fn sums_of_powers_are_powers_of_sums(one in any_lens(), other in any_lens(), degrees in 0.0..180.0_f64) {
        let together = SphereCyl::from(one.vector() + other.vector());
        let added = one.power_along(degrees) + other.power_along(degrees);
        prop_assert!((together.power_along(degrees) - added).abs() < DUST);
    }

    // Two formulas for one quantity: S + C sin²(t − A) and M + J0 cos 2t + J45 sin 2t.
    #[test]
    fn sine_squared_and_vector_agree_along_a_meridian(lens in any_lens(), degrees in 0.0..180.0_f64) {
        let vector = lens.vector();
        let twice = (2.0 * degrees).to_radians();
        let by_vector = vector.m + vector.j0 * twice.cos() + vector.j45 * twice.sin();
        prop_assert!((lens.power_along(degrees) - by_vector).abs() < DUST);
    }

    // The length of the vector is √((S² + (S + C)²) / 2): Bennett's decomposition gives the same.
    #[test]
    fn blur_strength_from_the_principal_powers(lens in any_lens()) {
        let [along, across] = lens.principal();
        let by_powers = along.power.hypot(across.power) / 2.0_f64.sqrt();
        prop_assert!((lens.vector().blur_strength() - by_powers).abs() < DUST);
    }

    #[test]
    fn principal_powers_act_where_they_say(lens in any_lens()) {
        for principal in lens.principal() {
            let there = lens.power_along(principal.meridian.degrees());
            prop_assert!((there - principal.power).abs() < DUST);
        }
    }

    #[test]
    fn meridians_and_back(lens in any_lens()) {
        let [along, across] = lens.principal();
        prop_assert!(apart(&SphereCyl::from_meridians(along, across.power), &lens) < DUST);
        prop_assert!(apart(&SphereCyl::from_meridians(across, along.power), &lens) < DUST);
    }

    #[test]
    fn there_and_back_through_vertex_distances(lens in any_lens(), from in 5.0..15.0_f64, to in 5.0..15.0_f64) {
        let there = vertex::effective_sphero_cyl(&lens, from, to).unwrap();
        let back = vertex::effective_sphero_cyl(&there, to, from).unwrap();
        prop_assert!(apart(&lens, &back) < DUST);
    }

    #[test]
    fn a_lens_brought_nearer_the_eye_gains_plus(power in -40.0..40.0_f64, nearer in 1.0..10.0_f64) {
        prop_assert!(vertex::effective(power, 15.0, 15.0 - nearer).unwrap() >= power);
    }

    // A matching lens in the back cell leaves the same in the frame as taking the distance off at the end.
    #[test]
    fn a_matching_lens_is_the_distance_off_at_the_end(neutral in any_lens(), cm in 10.0..120.0_f64) {
        let distance = WorkingDistance::from_cm(cm).unwrap();
        let matching = WorkingLens::new(distance.dioptres(), Cell::Back).unwrap();
        let lens_in = net(&Neutral::InFrame(neutral), &Setup::new(distance, Some(matching)));
        prop_assert!(apart(&lens_in.net, &neutral) < DUST);

        let all = neutral.with_sphere_changed(distance.dioptres());
        let taken_off = net(&Neutral::InFrame(all), &Setup::new(distance, None));
        prop_assert!(apart(&lens_in.net, &taken_off.net) < DUST);
    }

    // One eye, whatever the distance and whatever working lens, has one net.
    #[test]
    fn an_eye_has_one_net(eye in any_lens(), cm in 10.0..120.0_f64, power in 0.25..10.0_f64) {
        let distance = WorkingDistance::from_cm(cm).unwrap();
        let neutralising = eye.with_sphere_changed(distance.dioptres() - power);
        let working = WorkingLens::new(power, Cell::Back).unwrap();
        let found = net(&Neutral::InFrame(neutralising), &Setup::new(distance, Some(working)));
        prop_assert!(apart(&found.net, &eye) < DUST);
    }

    #[test]
    fn two_meridians_and_the_frame_are_one_way(lens in trial_lens(), cm in 40.0..80.0_f64) {
        let [along, across] = lens.principal();
        let setup = Setup::new(WorkingDistance::from_cm(cm).unwrap(), None);
        let neutral = Neutral::two_meridians(along.meridian.degrees(), along.power, across.power).unwrap();
        let by_meridians = net(&neutral, &setup);
        let by_frame = net(&Neutral::InFrame(lens), &setup);
        prop_assert!(apart(&by_meridians.net, &by_frame.net) < DUST);
    }
}
