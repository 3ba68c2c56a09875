//! Every public function of lenses at its door: what is no number is refused, and no finite number, however wild, fells one.

use optics::{
    Axis, Cell, CrossedCylinders, Cylinder, PowerMatrix, SphereCyl, Spread, Step, ThickLens, cells,
    contact, far, off_axis, spread, vergence, vertex,
};
use proptest::prelude::*;

const ENDLESS: [f64; 3] = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY];

#[test]
fn what_is_no_number_is_refused() {
    let good = SphereCyl::sphere(1.0);
    let axis = Axis::new(90.0).unwrap();
    for bad in ENDLESS {
        let lens = SphereCyl::sphere(bad);
        assert!(SphereCyl::new(bad, -1.0, 90.0).is_err());
        assert!(SphereCyl::new(1.0, bad, 90.0).is_err());
        assert!(SphereCyl::new(1.0, -1.0, bad).is_err());
        assert!(Cylinder::new(bad, axis).is_err());
        assert!(CrossedCylinders::new(bad, axis, 1.0).is_err());
        assert!(CrossedCylinders::new(1.0, axis, bad).is_err());
        assert!(contact::together(&[good, lens]).is_err());
        assert!(contact::left_over(&good, &lens).is_err());
        assert!(off_axis::turned(&lens, 5.0).is_err());
        assert!(off_axis::turned(&good, bad).is_err());
        assert!(off_axis::residual(&good, bad).is_err());
        assert!(off_axis::residual(&lens, 5.0).is_err());
        assert!(off_axis::refraction(&good, 5.0, &lens).is_err());
        assert!(off_axis::to_order(&good, bad, &good).is_err());
        assert!(spread::mean(&[good, lens]).is_err());
        assert!(Spread::of(&[good, lens]).is_err());
        assert!(ThickLens::new(good, lens, 5.0, 1.5).is_err());
        assert!(vergence::of_distance(bad).is_err());
        assert!(vergence::distance(bad).is_err());
        assert!(vergence::after(bad, 1.0).is_err());
        assert!(vergence::after(1.0, bad).is_err());
        assert!(vertex::effective(bad, 12.0, 0.0).is_err());
        assert!(vertex::effective(1.0, bad, 0.0).is_err());
        assert!(vertex::effective(1.0, 12.0, bad).is_err());
        assert!(vertex::effective_sphero_cyl(&lens, 12.0, 0.0).is_err());
        assert!(cells::at_back(&lens, Cell::Front, 4.0).is_err());
        assert!(cells::at_back(&good, Cell::Front, bad).is_err());
        assert!(cells::combined(&[(lens, Cell::Back)], 4.0).is_err());
        assert!(far::allowance(bad).is_err());
        assert!(far::for_far(&good, bad).is_err());
    }
    assert!(vergence::of_distance(0.0).is_err());
}

/// Any finite number, the largest and the smallest among them.
fn wild() -> impl Strategy<Value = f64> {
    use prop::num::f64::{NEGATIVE, NORMAL, POSITIVE, SUBNORMAL, ZERO};
    POSITIVE | NEGATIVE | NORMAL | SUBNORMAL | ZERO
}

fn wild_lens() -> impl Strategy<Value = SphereCyl> {
    (wild(), wild(), 0.0..=180.0_f64).prop_map(|(s, c, a)| SphereCyl::new(s, c, a).unwrap())
}

/// Whether a lens that came out as good is one: finite in sphere, cylinder and axis.
fn is_good(lens: &SphereCyl) -> bool {
    let axis = lens.cylinder.map_or(180.0, |c| c.axis().degrees());
    lens.sphere.is_finite() && lens.cylinder_power().is_finite() && axis > 0.0 && axis <= 180.0
}

proptest! {
    #[test]
    fn no_finite_number_fells_one(one in wild_lens(), other in wild_lens(), number in wild(), second in wild()) {
        let lenses = [
            contact::together(&[one, other]),
            contact::left_over(&one, &other),
            off_axis::turned(&one, number),
            off_axis::residual(&one, number),
            off_axis::refraction(&one, number, &other),
            off_axis::to_order(&one, number, &other),
            spread::mean(&[one, other]),
            vertex::effective_sphero_cyl(&one, number, second),
            cells::at_back(&one, Cell::Front, 4.0),
            cells::combined(&[(one, Cell::Front), (other, Cell::Middle)], number),
            cells::combined(&[(one, Cell::Front), (other, Cell::Middle)], 4.0),
        ];
        for lens in lenses.into_iter().flatten() {
            prop_assert!(is_good(&lens), "{:?}", lens);
        }
        let numbers = [
            vergence::of_distance(number),
            vergence::after(number, second),
            vergence::distance(number).map(Option::unwrap_or_default),
            vertex::effective(number, second, 0.0),
        ];
        for number in numbers.into_iter().flatten() {
            prop_assert!(number.is_finite());
        }
        if let Ok(spread) = Spread::of(&[one, other]) {
            prop_assert!(spread.deviations().blur_strength().is_finite());
        }
        if let Ok(lens) = ThickLens::new(one, other, 5.0, 1.5) {
            prop_assert!(is_good(&lens.back_vertex_power()) && is_good(&lens.front_vertex_power()));
        }
    }

    // These cannot refuse; on wild lenses they may say that a sum is endless, but they say something.
    #[test]
    fn what_cannot_refuse_does_not_fall(lens in wild_lens(), degrees in wild()) {
        prop_assert!(!lens.to_string().is_empty());
        prop_assert!(!CrossedCylinders::from(lens).to_string().is_empty());
        let matrix = PowerMatrix::from(lens);
        prop_assert!(matrix.principal().iter().all(|p| p.meridian.degrees() > 0.0 || p.power.is_nan()));
        let rounded = lens.rounded(Step::Quarter);
        prop_assert!(rounded.lost.is_nan() || rounded.lost >= 0.0);
        prop_assert!(lens.power_along(degrees).is_finite() || lens.sphere.abs() > 1e300 || lens.cylinder_power().abs() > 1e300);
        prop_assert!(lens.strongest() >= 0.0);
    }
}
