//! Checks of the arithmetic against published examples, printed formulas and its own algebra.
//!
//! Beside each check stands where its figures come from. "Computed from the formula" means that the formula printed in the
//! module was worked by hand or by script outside this crate; it is no published example.

#![expect(clippy::unwrap_used, reason = "helpers here are tests too")]

mod acuity;
mod algebra;
mod beside;
mod bracket;
mod change;
mod doors;
mod in_pupil;
mod lenses;
mod meridians;
mod near;
mod played;
mod prism;
mod reflex;
mod retinoscopy;
mod rounding;
mod scales;
mod spread;
mod stored;
mod sums;
mod thick;
mod tolerance;
mod vertex;
mod written;
mod written_acuity;

use optics::SphereCyl;
use proptest::strategy::Strategy;

/// A lens from figures that are known to be good.
fn lens(sphere: f64, cylinder: f64, axis: f64) -> SphereCyl {
    SphereCyl::new(sphere, cylinder, axis).unwrap()
}

/// Any lens that a field takes, at any axis.
fn any_lens() -> impl Strategy<Value = SphereCyl> {
    (-40.0..40.0_f64, -15.0..15.0_f64, 0.0..=180.0_f64).prop_map(|(s, c, a)| lens(s, c, a))
}

/// How far two lenses are from one another, in dioptres of blur strength.
fn apart(one: &SphereCyl, other: &SphereCyl) -> f64 {
    one.vector().distance(&other.vector())
}

/// Two numbers agree within a tolerance.
#[track_caller]
fn assert_near(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "found {found}, expected {expected} within {within}"
    );
}

/// Two lenses agree in sphere, cylinder (0.001 D) and axis (0.05 degrees, around the half turn).
#[track_caller]
fn assert_lens(found: SphereCyl, expected: SphereCyl) {
    assert_near(found.sphere, expected.sphere, 0.001);
    assert_near(found.cylinder_power(), expected.cylinder_power(), 0.001);
    if let (Some(found), Some(expected)) = (found.cylinder, expected.cylinder) {
        let apart = (found.axis().degrees() - expected.axis().degrees()).rem_euclid(180.0);
        assert_near(apart.min(180.0 - apart), 0.0, 0.05);
    }
}
