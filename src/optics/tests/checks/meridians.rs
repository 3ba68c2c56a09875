//! A lens from what was found in single meridians.

use crate::{any_lens, apart, assert_near};
use optics::retinoscopy::{FitError, Measured, meridian_fit};
use optics::{Meridian, MeridianPower, SphereCyl};
use proptest::prelude::*;

fn measured(found: &[(f64, f64, f64)]) -> Vec<Measured> {
    let one =
        |&(meridian, power, sd): &(f64, f64, f64)| Measured::new(meridian, power, sd).unwrap();
    found.iter().map(one).collect()
}

fn of_lens(lens: &SphereCyl, meridians: &[f64], sd: f64) -> Vec<Measured> {
    let found: Vec<_> = meridians
        .iter()
        .map(|&at| (at, lens.power_along(at), sd))
        .collect();
    measured(&found)
}

// By the definition of the standard deviations: one finding of 0.25 beside one of 0.50 weighs four times as much.
#[test]
fn a_surer_finding_weighs_more() {
    let found = [(180.0, 2.0, 0.25), (180.0, 3.0, 0.5), (90.0, 1.0, 0.25)];
    let fit = meridian_fit(&measured(&found)).unwrap();
    assert_near(fit.lens.power_along(180.0), 2.2, 1e-9);
    assert_near(fit.lens.power_along(90.0), 1.0, 1e-9);
    assert!(fit.principal_assumed && !fit.disagree);
}

// A residual of 1 D on findings of 0.10 D is no chance; the same on findings of 1 D is.
#[test]
fn findings_that_contradict_one_another_are_said() {
    let four = |sd: f64| {
        measured(&[
            (180.0, 2.0, sd),
            (45.0, 3.0, sd),
            (90.0, 2.0, sd),
            (135.0, 3.0, sd),
        ])
    };
    let sure = meridian_fit(&four(0.1)).unwrap();
    assert!(sure.disagree);
    assert_near(sure.residual.unwrap(), 0.5, 1e-9);
    assert!(!meridian_fit(&four(1.0)).unwrap().disagree);
}

// Jorge and others 2005, Optom Vis Sci 82:64-68: J45 scatters by 0.08 D. Without a cylinder that is all that is assumed.
#[test]
fn what_two_meridians_leave_open_is_as_wide_as_the_paper_says() {
    let fit = meridian_fit(&measured(&[(180.0, 1.0, 0.25), (90.0, 1.0, 0.25)])).unwrap();
    let [_, _, j45] = fit.covariance.variances();
    assert_near(j45.sqrt(), 0.08, 1e-12);
    // Computed from the formula: 2 D of cylinder, 2.5 degrees: hypot(0.08, 0.08724) = 0.11837.
    let fit = meridian_fit(&measured(&[(180.0, 3.0, 0.25), (90.0, 1.0, 0.25)])).unwrap();
    assert_near(fit.covariance.variances()[2].sqrt(), 0.11837, 5e-6);
}

#[test]
fn findings_that_cannot_make_a_lens_say_why() {
    let refused = |found: &[(f64, f64, f64)]| meridian_fit(&measured(found)).unwrap_err();
    assert_eq!(refused(&[]), FitError::TooFew { given: 0 });
    assert_eq!(
        refused(&[(90.0, 1.0, 0.25)]).to_string(),
        "a lens needs two meridians across one another, or three, and there are 1"
    );
    assert_eq!(
        refused(&[(10.0, 1.0, 0.25), (170.0, 2.0, 0.25)]).to_string(),
        "two meridians 20 degrees apart do not give a lens: they must be 90 apart within 5, or find a third"
    );
    assert_eq!(
        refused(&[(10.0, 1.0, 0.25), (13.0, 2.0, 0.25), (7.0, 2.0, 0.25)]),
        FitError::TooClose
    );
    assert_eq!(refused(&[(60.0, 1.0, 0.25); 4]), FitError::TooClose);
}

#[test]
fn what_is_no_number_is_refused() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert!(Measured::new(bad, 1.0, 0.25).is_err());
        assert!(Measured::new(90.0, bad, 0.25).is_err());
        assert!(Measured::new(90.0, 1.0, bad).is_err());
        let fit = meridian_fit(&measured(&[(180.0, 1.0, 0.25), (90.0, 1.0, 0.25)])).unwrap();
        assert!(fit.ellipse(bad).is_err());
    }
    for sd in [0.0, -0.25, 11.0] {
        assert!(Measured::new(90.0, 1.0, sd).is_err(), "{sd}");
    }
}

proptest! {
    // The lens is known; the fit must find it again.
    #[test]
    fn any_three_meridians_apart_give_the_lens_back(
        lens in any_lens(), start in 0.0..180.0_f64, gaps in (15.0..50.0_f64, 15.0..50.0_f64), sd in 0.01..10.0_f64,
    ) {
        let meridians = [start, start + gaps.0, start + gaps.0 + gaps.1].map(|at| at % 180.0);
        let fit = meridian_fit(&of_lens(&lens, &meridians, sd)).unwrap();
        prop_assert!(apart(&fit.lens, &lens) < 1e-8);
        prop_assert!(fit.residual.is_none() && !fit.disagree && !fit.principal_assumed);
    }

    #[test]
    fn many_meridians_give_the_lens_back(lens in any_lens(), at in prop::collection::vec(0.0..180.0_f64, 1..8)) {
        let meridians = [&[180.0, 45.0, 90.0, 135.0], at.as_slice()].concat();
        let fit = meridian_fit(&of_lens(&lens, &meridians, 0.25)).unwrap();
        prop_assert!(apart(&fit.lens, &lens) < 1e-8);
        prop_assert!(fit.residual.unwrap() < 1e-8 && !fit.disagree);
    }

    // Two meridians across one another are the principal ones, as in the record's own way of writing them.
    #[test]
    fn two_meridians_are_the_principal_ones(at in 0.0..180.0_f64, one in -55.0..55.0_f64, other in -55.0..55.0_f64) {
        let meridian = Meridian::new(at).unwrap();
        let first = MeridianPower { meridian, power: one };
        let second = MeridianPower { meridian: meridian.crossed(), power: other };
        let found = [first, second].map(|found| Measured::of(found, 0.25).unwrap());
        let fit = meridian_fit(&found).unwrap();
        prop_assert!(apart(&fit.lens, &SphereCyl::from_meridians(first, other)) < 1e-9);
        prop_assert!(fit.principal_assumed && fit.residual.is_none());
        // The mean of two: 0.25 / √2, and 90 of 100 lie within 1.6449 of that.
        prop_assert!((fit.mean_sphere_half_width() - 0.290_77).abs() < 1e-5);
    }

    // More of the same makes surer, never less sure, and all standard deviations grow together.
    #[test]
    fn the_covariance_scales_with_what_it_comes_from(lens in any_lens(), times in 1.0..10.0_f64) {
        let meridians = [180.0, 50.0, 100.0, 140.0];
        let one = meridian_fit(&of_lens(&lens, &meridians, 0.5)).unwrap();
        let wider = meridian_fit(&of_lens(&lens, &meridians, 0.5 * times)).unwrap();
        for (small, large) in one.covariance.0.iter().flatten().zip(wider.covariance.0.iter().flatten()) {
            prop_assert!((small * times * times - large).abs() < 1e-9 * times * times);
        }
        let (small, large) = (one.ellipse(0.5).unwrap(), one.ellipse(0.9).unwrap());
        prop_assert!(small.major < large.major && small.minor < large.minor && small.minor <= small.major);
    }

    #[test]
    fn no_findings_fell_it(found in prop::collection::vec((0.0..=180.0_f64, -55.0..=55.0_f64, 0.01..=10.0_f64), 0..6)) {
        if let Ok(fit) = meridian_fit(&measured(&found)) {
            prop_assert!(fit.vector.blur_strength().is_finite());
            prop_assert!(fit.covariance.variances().iter().all(|variance| *variance > 0.0));
            let ellipse = fit.ellipse(0.9).unwrap();
            prop_assert!(ellipse.major.is_finite() && ellipse.minor >= 0.0);
            prop_assert!((0.0..180.0).contains(&ellipse.angle_degrees));
        }
    }
}
