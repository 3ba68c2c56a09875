//! Lenses against another library's linear algebra, live: nalgebra's symmetric eigenvalues, and its inverses.

use nalgebra::{Matrix2, Rotation2, SymmetricEigen};
use optics::{PowerMatrix, SphereCyl, ThickLens, contact, vertex};
use proptest::prelude::*;

fn any_lens() -> impl Strategy<Value = SphereCyl> {
    // Awkward axes come as often as all others together.
    let axis = prop_oneof![
        0.0..=180.0_f64,
        prop::sample::select(vec![180.0, 90.0, 1.0, 179.0, 45.0, 135.0, 1e-9])
    ];
    (-40.0..40.0_f64, -15.0..15.0_f64, axis)
        .prop_map(|(s, c, a)| SphereCyl::new(s, c, a).expect("an axis within half a turn"))
}

/// The lens as a turned diagonal matrix, which is not how the crate makes its own.
fn matrix(lens: &SphereCyl) -> Matrix2<f64> {
    let [along, across] = lens.principal();
    let turn = Rotation2::new(along.meridian.degrees().to_radians()).into_inner();
    let diagonal = Matrix2::new(along.power, 0.0, 0.0, across.power);
    turn * diagonal * turn.transpose()
}

/// How far a lens is from a matrix, entry by entry.
fn off(lens: &SphereCyl, expected: &Matrix2<f64>) -> f64 {
    let found = PowerMatrix::from(*lens);
    let found = Matrix2::new(found.xx, found.xy, found.xy, found.yy);
    (found - expected).abs().max()
}

/// Light of this vergence after so many metres.
fn through(power: &Matrix2<f64>, metres: f64) -> Matrix2<f64> {
    let rest = Matrix2::identity() - power * metres;
    power * rest.try_inverse().expect("t F stays below 1")
}

proptest! {
    #[test]
    fn entries_are_those_of_a_turned_matrix(lens in any_lens()) {
        prop_assert!(off(&lens, &matrix(&lens)) < 1e-12);
    }

    #[test]
    fn principal_powers_are_eigenvalues(lens in any_lens()) {
        let eigen = SymmetricEigen::new(matrix(&lens));
        let [most, least] = PowerMatrix::from(lens).principal();
        prop_assert!((eigen.eigenvalues.max() - most.power).abs() < 1e-10);
        prop_assert!((eigen.eigenvalues.min() - least.power).abs() < 1e-10);
        // Along its meridian the most plus power only stretches: F e = power e.
        let (y, x) = most.meridian.degrees().to_radians().sin_cos();
        let [along_x, along_y] = PowerMatrix::from(lens).times([x, y]);
        prop_assert!((along_x - most.power * x).hypot(along_y - most.power * y) < 1e-9);
    }

    #[test]
    fn contact_is_the_sum_of_matrices(one in any_lens(), other in any_lens()) {
        let together = contact::together(&[one, other]).unwrap();
        prop_assert!(off(&together, &(matrix(&one) + matrix(&other))) < 1e-9);
        let left = contact::left_over(&one, &other).unwrap();
        prop_assert!(off(&left, &(matrix(&one) - matrix(&other))) < 1e-9);
    }

    #[test]
    fn a_moved_lens_is_an_inverse(lens in any_lens(), from in 0.0..16.0_f64, to in 0.0..16.0_f64) {
        let moved = vertex::effective_sphero_cyl(&lens, from, to).unwrap();
        let expected = through(&matrix(&lens), (from - to) / 1000.0);
        prop_assert!(off(&moved, &expected) < 1e-7 * expected.abs().max().max(1.0));
    }

    #[test]
    fn thick_lenses_are_inverses(front in any_lens(), back in any_lens(), mm in 0.0..10.0_f64, index in 1.45..1.9_f64) {
        let lens = ThickLens::new(front, back, mm, index).unwrap();
        let reduced = mm / 1000.0 / index;
        let from_back = through(&matrix(&front), reduced) + matrix(&back);
        let from_front = through(&matrix(&back), reduced) + matrix(&front);
        prop_assert!(off(&lens.back_vertex_power(), &from_back) < 1e-8);
        prop_assert!(off(&lens.front_vertex_power(), &from_front) < 1e-8);
    }
}
