//! Forms, sums, meridians and rounding: what the tables in `tests/published` do not hold.

use crate::{assert_lens, assert_near, lens};
use optics::{SphereCyl, Step, contact, off_axis};

#[test]
fn a_form_already_right_and_a_sphere_stay() {
    let minus = lens(4.0, -1.5, 20.0);
    assert_eq!(minus.minus_form(), minus);
    assert_eq!(SphereCyl::sphere(2.0).plus_form(), SphereCyl::sphere(2.0));
}

// Formula 2 C sin e: trade white paper on the axis limits of ANSI Z80.1-2005 (D Torgersen, 2006); figures computed from it.
#[test]
fn residual_cylinder_of_an_axis_error() {
    for (degrees, residual) in [(5.0, 0.174), (10.0, 0.347), (30.0, 1.0)] {
        let left = off_axis::residual(&lens(0.0, -1.0, 90.0), degrees).unwrap();
        assert_near(left.cylinder_power(), -residual, 0.0005);
    }
}

// Two equal cylinders 90 degrees apart are a sphere: common practice, no source.
#[test]
fn crossed_equal_cylinders_leave_no_axis() {
    let equal = [lens(0.0, -0.75, 33.0), lens(0.0, -0.75, 123.0)];
    let together = contact::together(&equal).unwrap();
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
