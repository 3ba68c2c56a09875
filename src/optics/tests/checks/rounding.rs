//! Rounding to a trial-lens step, against a search through every lens near by.

use crate::{any_lens, apart, lens};
use optics::{SphereCyl, Step};
use proptest::prelude::*;

const STEPS: [Step; 2] = [Step::Quarter, Step::Eighth];

/// Every lens on the step within three steps of sphere and cylinder and two degrees of axis: how near the nearest is.
fn nearest_by_search(lens: &SphereCyl, step: Step) -> f64 {
    let size = step.dioptres();
    let start = |power: f64| (power / size).round() * size;
    let axis = lens.cylinder.map_or(180.0, |c| c.axis().degrees()).round();
    let mut least = f64::INFINITY;
    for s in -3..=3 {
        for c in -3..=3 {
            for a in -2..=2 {
                let sphere = start(lens.sphere) + f64::from(s) * size;
                let cylinder = start(lens.cylinder_power()) + f64::from(c) * size;
                let axis = (axis + f64::from(a)).rem_euclid(180.0);
                least = least.min(apart(lens, &crate::lens(sphere, cylinder, axis)));
            }
        }
    }
    least
}

/// A lens as arithmetic leaves it, with a cylinder of at least half a step: a weaker one is dropped, however near.
fn with_cylinder(step: Step) -> impl Strategy<Value = SphereCyl> {
    let power = step.dioptres() / 2.0..15.0_f64;
    (-40.0..40.0_f64, power, any::<bool>(), 0.0..=180.0_f64).prop_map(|(s, c, minus, a)| {
        let c = if minus { -c } else { c };
        lens(s, c, a)
    })
}

proptest! {
    #[test]
    fn no_lens_on_the_quarter_step_is_nearer(lens in with_cylinder(Step::Quarter)) {
        let lost = lens.rounded(Step::Quarter).lost;
        let searched = nearest_by_search(&lens, Step::Quarter);
        prop_assert!((lost - searched).abs() < 1e-9, "lost {}, and {} would do", lost, searched);
    }

    #[test]
    fn no_lens_on_the_eighth_step_is_nearer(lens in with_cylinder(Step::Eighth)) {
        let lost = lens.rounded(Step::Eighth).lost;
        let searched = nearest_by_search(&lens, Step::Eighth);
        prop_assert!((lost - searched).abs() < 1e-9, "lost {}, and {} would do", lost, searched);
    }

    // A dropped cylinder leaves the sphere that is nearest to the mean sphere.
    #[test]
    fn a_weak_cylinder_leaves_the_nearest_sphere(sphere in -40.0..40.0_f64, weak in -0.0624..0.0624_f64, axis in 0.0..180.0_f64) {
        for step in STEPS {
            let lens = lens(sphere, weak, axis);
            let rounded = lens.rounded(step);
            prop_assert_eq!(rounded.value.cylinder, None);
            for other in [-1.0, 1.0] {
                let neighbour = rounded.value.with_sphere_changed(other * step.dioptres());
                prop_assert!(rounded.lost <= apart(&lens, &neighbour) + 1e-9);
            }
        }
    }

    // Each power moves by at most half a step, a dropped cylinder by a quarter step more in quadrature; half a degree of axis
    // costs the cylinder times sin 0.5°.
    #[test]
    fn what_is_lost_is_said_and_little(lens in any_lens()) {
        for step in STEPS {
            let rounded = lens.rounded(step);
            prop_assert!((rounded.lost - apart(&lens, &rounded.value)).abs() < 1e-12);
            let most = step.dioptres() * 0.5 * 1.25_f64.sqrt() + lens.cylinder_power().abs() * 0.0088;
            prop_assert!(rounded.lost <= most, "{}", rounded.lost);
            prop_assert_eq!(rounded.value.rounded(step).value, rounded.value);
        }
    }

    #[test]
    fn the_form_does_not_matter(lens in any_lens()) {
        let [one, other] = [lens, lens.transposed()].map(|lens| lens.rounded(Step::Quarter));
        // Where two lenses are equally near, either may be taken.
        prop_assert!((one.lost - other.lost).abs() < 1e-6);
    }
}
