//! Laws of means and spreads.

#![expect(
    clippy::float_cmp,
    reason = "halves are exact in binary, and a product is the same whichever factor is first"
)]

use crate::{any_lens, apart, lens};
use optics::{OpticsError, PowerVector, SphereCyl, Spread, contact, spread};
use proptest::collection::vec;
use proptest::prelude::*;

#[test]
fn too_few_readings_are_refused_with_a_sentence() {
    let none = spread::mean(&[]).unwrap_err();
    assert_eq!(
        none,
        OpticsError::TooFewReadings {
            needed: 1,
            given: 0
        }
    );
    let one = Spread::of(&[lens(1.0, -1.0, 90.0)]).unwrap_err();
    assert_eq!(
        one.to_string(),
        "this needs at least 2 readings, and there are 1"
    );
}

// Worked by hand: +1.00 and +2.00 have the variance 0.5, and t for one degree of freedom is 12.706 (printed tables), so the
// limits of one more are 1.50 ± 12.706 × 0.7071 × √1.5.
#[test]
fn two_spheres() {
    let spread = Spread::of(&[SphereCyl::sphere(1.0), SphereCyl::sphere(2.0)]).unwrap();
    assert_eq!(spread.covariance().variances(), [0.5, 0.0, 0.0]);
    let [low, high] = spread.limits_of_one();
    crate::assert_near(low.m, 1.5 - 11.004, 0.001);
    crate::assert_near(high.m, 1.5 + 11.004, 0.001);
    assert_eq!((low.j0, high.j45), (0.0, 0.0));
}

// Bland and Altman's limits, mean ± 1.96 s, are what many readings come to.
#[test]
fn many_readings_have_the_limits_of_the_normal() {
    let readings: Vec<SphereCyl> = (0..2000)
        .map(|n| SphereCyl::sphere(f64::from(n % 5) / 4.0))
        .collect();
    let spread = Spread::of(&readings).unwrap();
    let [low, high] = spread.limits_of_one();
    let half = 1.96 * spread.deviations().m;
    crate::assert_near(low.m, spread.mean().m - half, 0.001);
    crate::assert_near(high.m, spread.mean().m + half, 0.001);
}

// Readings on both sides of the half turn: the mean of 175 and 5 is 180, not 90. Common practice, no source.
#[test]
fn the_mean_goes_round() {
    let mean = spread::mean(&[lens(1.0, -1.0, 175.0), lens(1.0, -1.0, 5.0)]).unwrap();
    crate::assert_near(mean.cylinder.unwrap().axis().degrees(), 180.0, 1e-9);
}

fn parts(v: PowerVector) -> [f64; 3] {
    [v.m, v.j0, v.j45]
}

proptest! {
    #[test]
    fn the_mean_is_in_the_middle(readings in vec(any_lens(), 1..9), shift in any_lens()) {
        let mean = spread::mean(&readings).unwrap();
        let off: PowerVector = readings.iter().map(|r| r.vector() - mean.vector()).sum();
        prop_assert!(off.blur_strength() < 1e-8);
        let shifted: Vec<SphereCyl> = readings.iter().map(|r| contact::together(&[*r, shift]).unwrap()).collect();
        let expected = contact::together(&[mean, shift]).unwrap();
        prop_assert!(apart(&spread::mean(&shifted).unwrap(), &expected) < 1e-8);
    }

    #[test]
    fn one_reading_many_times_has_no_spread(reading in any_lens(), count in 2..9_usize) {
        let spread = Spread::of(&vec![reading; count]).unwrap();
        prop_assert!(spread.mean().distance(&reading.vector()) < 1e-12);
        prop_assert!(spread.deviations().blur_strength() < 1e-12);
    }

    #[test]
    fn a_shift_leaves_the_spread(readings in vec(any_lens(), 2..9), shift in any_lens()) {
        let shifted: Vec<SphereCyl> = readings.iter().map(|r| contact::together(&[*r, shift]).unwrap()).collect();
        let (one, other) = (Spread::of(&readings).unwrap(), Spread::of(&shifted).unwrap());
        for (row, moved) in one.covariance().0.iter().zip(other.covariance().0) {
            for (cell, moved) in row.iter().zip(moved) {
                prop_assert!((cell - moved).abs() < 1e-6);
            }
        }
    }

    // A covariance is symmetric, and no mixture of its parts has a negative variance.
    #[test]
    fn no_mixture_varies_less_than_not_at_all(readings in vec(any_lens(), 2..9), mix in any_lens()) {
        let spread = Spread::of(&readings).unwrap();
        let covariance = spread.covariance().0;
        let mix = parts(mix.vector());
        let mut variance = 0.0;
        for (row, one) in mix.iter().enumerate() {
            for (column, other) in mix.iter().enumerate() {
                prop_assert_eq!(covariance[row][column], covariance[column][row]);
                variance += one * other * covariance[row][column];
            }
        }
        prop_assert!(variance > -1e-6);
        let [low, high] = spread.limits_of_one().map(parts);
        for (at, mean) in parts(spread.mean()).into_iter().enumerate() {
            prop_assert!(low[at] <= mean && mean <= high[at]);
        }
    }
}
