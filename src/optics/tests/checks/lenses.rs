//! Transposition, vectors, sums and powers along a meridian.

use crate::{assert_lens, assert_near, lens};
use optics::{PowerVector, SphereCyl, Step};

fn sum(lenses: &[SphereCyl]) -> SphereCyl {
    lenses
        .iter()
        .map(SphereCyl::vector)
        .sum::<PowerVector>()
        .into()
}

// Published: crossed-cylinder examples in an Indian optical trade journal, May-June 2022, p. 105.
#[test]
fn published_crossed_cylinders() {
    let together = sum(&[lens(1.75, 0.50, 45.0), lens(-2.25, -1.00, 135.0)]);
    assert_lens(together, lens(0.0, -1.50, 135.0));
    assert_lens(together.plus_form(), lens(-1.50, 1.50, 45.0));
}

// Computed from the formula.
#[test]
fn transposition() {
    assert_lens(lens(-1.0, -0.5, 180.0).transposed(), lens(-1.5, 0.5, 90.0));
    assert_lens(lens(4.0, 1.5, 20.0).minus_form(), lens(5.5, -1.5, 110.0));
    assert_lens(lens(5.5, -1.5, 110.0).plus_form(), lens(4.0, 1.5, 20.0));
}

#[test]
fn a_form_already_right_and_a_sphere_stay() {
    let minus = lens(4.0, -1.5, 20.0);
    assert_eq!(minus.minus_form(), minus);
    assert_eq!(SphereCyl::sphere(2.0).plus_form(), SphereCyl::sphere(2.0));
}

// Computed from the formula (components as in Thibos, Wheeler and Horner 1997).
#[test]
fn power_vectors() {
    for (lens, m, j0, j45, blur) in [
        (lens(2.0, -1.0, 30.0), 1.5, 0.25, 0.4330, 1.5811),
        (lens(-3.25, -1.75, 65.0), -4.125, -0.5624, 0.6703, 4.2168),
    ] {
        let vector = lens.vector();
        assert_near(vector.m, m, 0.00005);
        assert_near(vector.j0, j0, 0.00005);
        assert_near(vector.j45, j45, 0.00005);
        assert_near(vector.blur_strength(), blur, 0.00005);
    }
}

// Computed from the formula; the inputs of the second stand in student lecture slides on crossed cylinders.
#[test]
fn sums_of_oblique_cylinders() {
    assert_lens(
        sum(&[lens(2.0, -1.0, 30.0), lens(-0.5, -1.5, 75.0)]),
        lens(1.151, -1.803, 58.15),
    );
    assert_lens(
        sum(&[lens(0.0, -2.0, 180.0), lens(0.0, -2.0, 45.0)]),
        lens(-0.586, -2.828, 22.5),
    );
    assert_lens(
        sum(&[lens(-1.0, -1.0, 10.0), lens(-1.0, -1.0, 170.0)]),
        lens(-2.060, -1.879, 180.0),
    );
}

// Computed from the formula. Averaging the axes as plain numbers would give 63.
#[test]
fn a_mean_goes_through_vectors() {
    let readings = [
        lens(-1.0, -0.5, 175.0),
        lens(-1.25, -0.75, 5.0),
        lens(-1.5, -0.5, 10.0),
    ];
    let mean: PowerVector = readings.iter().map(SphereCyl::vector).sum();
    assert_lens((mean * (1.0 / 3.0)).into(), lens(-1.256, -0.571, 3.59));
}

// Computed from the formula.
#[test]
fn power_along_a_meridian() {
    let lens = lens(2.0, -1.5, 30.0);
    assert_near(lens.power_along(90.0), 0.875, 1e-9);
    assert_near(lens.power_along(120.0), 0.5, 1e-9);
    assert_near(lens.power_along(30.0), 2.0, 1e-9);
}

// Computed from the formula.
#[test]
fn five_degrees_of_axis_error() {
    let error = lens(2.0, -1.5, 20.0).vector() - lens(2.0, -1.5, 25.0).vector();
    assert_lens(error.into(), lens(0.131, -0.261, 157.5));
    assert_near(error.blur_strength(), 0.131, 0.0005);
}

// Formula 2 C sin e: trade white paper on the axis limits of ANSI Z80.1-2005 (D Torgersen, 2006); figures computed from it.
#[test]
fn residual_cylinder_of_an_axis_error() {
    for (degrees, residual) in [(5.0, 0.174), (10.0, 0.347), (30.0, 1.0)] {
        let error = lens(0.0, -1.0, 90.0).vector() - lens(0.0, -1.0, 90.0 + degrees).vector();
        assert_near(2.0 * error.astigmatism(), residual, 0.0005);
    }
}

// Two equal cylinders 90 degrees apart are a sphere: common practice, no source.
#[test]
fn crossed_equal_cylinders_leave_no_axis() {
    let together = sum(&[lens(0.0, -0.75, 33.0), lens(0.0, -0.75, 123.0)]);
    assert_eq!(together.cylinder, None);
    assert_near(together.sphere, -0.75, 1e-12);
}

// A lens with power in the meridian 90 alone is a cylinder with its axis at 180: the definition of a cylinder.
#[test]
fn principal_powers_name_meridians_not_axes() {
    let [along, across] = lens(0.0, 2.0, 180.0).principal();
    assert_near(along.power, 0.0, 1e-12);
    assert_near(along.meridian.degrees(), 180.0, 1e-12);
    assert_near(across.power, 2.0, 1e-12);
    assert_near(across.meridian.degrees(), 90.0, 1e-12);
}

// Computed from the formula M = S + C/2.
#[test]
fn mean_sphere() {
    assert_near(lens(-3.25, -1.75, 65.0).mean_sphere(), -4.125, 1e-12);
    assert_near(SphereCyl::sphere(1.25).mean_sphere(), 1.25, 1e-12);
}

// Computed by hand: the powers +1.10 and +0.50 go to +1.00 and +0.50, so 0.10 is lost in one meridian alone, which is
// 0.05 of mean sphere and 0.05 of crossed cylinder.
#[test]
fn rounding_says_what_it_lost() {
    let rounded = lens(1.10, -0.60, 90.0).rounded(Step::Quarter);
    assert_lens(rounded.value, lens(1.0, -0.5, 90.0));
    assert_near(rounded.lost, 0.05_f64.hypot(0.05), 1e-9);
}

#[test]
fn an_axis_out_of_range_and_endless_powers_are_refused() {
    assert!(SphereCyl::new(1.0, -1.0, 200.0).is_err());
    assert!(SphereCyl::new(f64::NAN, -1.0, 20.0).is_err());
    assert!(SphereCyl::new(1.0, f64::INFINITY, 20.0).is_err());
    assert_eq!(
        SphereCyl::new(1.0, 0.0, 20.0).unwrap(),
        SphereCyl::sphere(1.0)
    );
}
