//! Near: what must hold for any eye, whatever the figures.

use crate::assert_near;
use optics::acuity::{LogMar, Print};
use optics::near::{
    FIXED_RESERVE, Share, Tentative, acuity_reserve, anderson, by_age, clear_range, donders,
    hofstetter, in_reserve, kestenbaum, kestenbaum_for, magnification, magnification_at_near_point,
    magnification_needed, reading_distance_cm, tentative,
};
use proptest::prelude::*;

fn any_share() -> impl Strategy<Value = Share> {
    prop_oneof![Just(Share::Half), Just(Share::TwoThirds)]
}

proptest! {
    // Nobody's amplitude grows with age, in any of the surveys.
    #[test]
    fn amplitude_falls_with_age(young in 10.0..=39.0_f64, by in 0.1..=30.0_f64) {
        let (younger, older) = (hofstetter(young).unwrap(), hofstetter(young + by).unwrap());
        prop_assert!(older.least <= younger.least && older.mean < younger.mean && older.most < younger.most);
        prop_assert!(donders(young + by).unwrap() < donders(young).unwrap());
        if young + by <= 40.0 {
            prop_assert!(anderson(young + by).unwrap() < anderson(young).unwrap());
        }
    }

    // The lines cross only where the least has already ended at 0: 15 − 0.25 a < 18.5 − 0.3 a < 25 − 0.4 a below 65 years.
    #[test]
    fn the_least_is_no_more_than_the_most(age in 0.0..=120.0_f64) {
        let expected = hofstetter(age).unwrap();
        prop_assert!(0.0 <= expected.least && expected.least <= expected.mean && expected.mean <= expected.most);
        prop_assert_eq!(expected.beyond_survey, !(8.0..=60.0).contains(&age));
    }

    #[test]
    fn the_addition_falls_as_the_amplitude_grows(cm in 10.0..=80.0_f64, amplitude in 0.0..=10.0_f64, more in 0.01..=5.0_f64, share in any_share()) {
        let less_help = tentative(cm, amplitude + more, share).unwrap();
        let more_help = tentative(cm, amplitude, share).unwrap();
        prop_assert!(less_help.dioptres() <= more_help.dioptres());
        prop_assert!(less_help.none_needed() || less_help.dioptres() < more_help.dioptres());
        // A person who uses more of the amplitude needs less.
        let half = tentative(cm, amplitude, Share::Half).unwrap().dioptres();
        prop_assert!(tentative(cm, amplitude, Share::TwoThirds).unwrap().dioptres() <= half);
    }

    // The addition was made for the distance, so the distance is clear, and the rest of the amplitude is left.
    #[test]
    fn the_distance_that_the_addition_is_for_is_clear(cm in 5.0..=100.0_f64, amplitude in 0.0..=10.0_f64, share in any_share()) {
        let add = tentative(cm, amplitude, share).unwrap();
        let clear = clear_range(add.dioptres(), amplitude).unwrap();
        prop_assert!(clear.contains(cm));
        let left = in_reserve(cm, add.dioptres(), amplitude).unwrap();
        let meant = (1.0 - share.fraction()) * amplitude;
        prop_assert!(add.none_needed() || (left - meant).abs() < 1e-9);
        prop_assert!(left >= meant - 1e-9);
    }

    #[test]
    fn the_clear_range_has_its_ends(add in 0.25..=8.0_f64, amplitude in 0.0..=10.0_f64) {
        let clear = clear_range(add, amplitude).unwrap();
        let (far, near) = (clear.farthest_cm().unwrap(), clear.nearest_cm().unwrap());
        prop_assert!(near <= far);
        prop_assert!(clear.contains(near) && clear.contains(far));
        prop_assert!(!clear.contains(far * 1.01) && !clear.contains(near * 0.99));
    }

    // Held at its focus, a lens of Kestenbaum's power lets 1 M print be read at exactly the acuity it was made from.
    #[test]
    fn kestenbaum_reads_one_m(logmar in 0.0..=1.7_f64) {
        let acuity = LogMar::new(logmar).unwrap();
        let cm = reading_distance_cm(kestenbaum(acuity)).unwrap();
        let read = LogMar::from_fraction(cm / 100.0, 1.0).unwrap();
        prop_assert!((read.value() - logmar).abs() < 1e-12);
        let twice = kestenbaum_for(acuity, Print::m(2.0).unwrap());
        prop_assert!((2.0 * twice - kestenbaum(acuity)).abs() < 1e-9);
    }

    // Enlarged as much as needed, the target stands at the reserve that was asked for.
    #[test]
    fn what_is_needed_gives_the_reserve(threshold in 4.0..=80.0_f64, target in 4.0..=20.0_f64, reserve in 1.0..=4.0_f64) {
        let (threshold, target) = (Print::n(threshold).unwrap(), Print::n(target).unwrap());
        let times = magnification_needed(threshold, target, reserve).unwrap();
        prop_assert!((times * acuity_reserve(target, threshold) - reserve).abs() < 1e-9);
    }

    #[test]
    fn any_number_is_taken_or_refused(one in any::<f64>(), two in any::<f64>(), three in any::<f64>(), share in any_share()) {
        let made = [
            hofstetter(one).map(|expected| expected.mean).ok(),
            donders(one).ok(),
            anderson(one).ok(),
            by_age(one).ok().flatten().map(|add| add.most),
            tentative(one, two, share).map(Tentative::dioptres).ok(),
            in_reserve(one, two, three).ok(),
            reading_distance_cm(one).ok(),
            magnification(one).ok(),
            magnification_at_near_point(one).ok(),
            Share::for_age(one).map(Share::fraction).ok(),
            Print::n(12.0).and_then(|print| magnification_needed(print, print, one)).ok(),
        ];
        prop_assert!(made.into_iter().flatten().all(f64::is_finite));
        if let Ok(clear) = clear_range(one, two) {
            let _ = clear.contains(three);
            prop_assert!(clear.nearest_cm().is_none_or(f64::is_finite));
        }
    }
}

// Computed from the formulas: 85 years is beyond the survey, and every line has ended.
#[test]
fn an_old_age_is_said_to_be_beyond_the_survey() {
    let expected = hofstetter(85.0).unwrap();
    assert!(expected.beyond_survey);
    assert_near(expected.most, 0.0, 0.0);
    assert!(!hofstetter(60.0).unwrap().beyond_survey);
}

#[test]
fn what_no_survey_covers_is_refused() {
    assert_eq!(
        anderson(45.0).unwrap_err().to_string(),
        "the age for this curve can be 3 to 40 years, and 45 is outside that"
    );
    assert_eq!(
        donders(80.0).unwrap_err().to_string(),
        "the age for this table can be 10 to 75 years, and 80 is outside that"
    );
    assert_eq!(by_age(40.0), Ok(None));
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert!(hofstetter(bad).is_err() && donders(bad).is_err() && anderson(bad).is_err());
        assert!(by_age(bad).is_err() && Share::for_age(bad).is_err());
        assert!(tentative(bad, 1.0, Share::Half).is_err());
        assert!(tentative(40.0, bad, Share::Half).is_err());
        assert!(in_reserve(40.0, bad, 1.0).is_err() && clear_range(bad, 1.0).is_err());
        assert!(clear_range(1.0, bad).is_err() && magnification(bad).is_err());
        assert!(reading_distance_cm(bad).is_err());
        let n8 = Print::n(8.0).unwrap();
        assert!(magnification_needed(n8, n8, bad).is_err());
    }
}

// Computed from the definitions: no addition sees to the horizon, and no amplitude has one distance.
#[test]
fn ends_without_an_end() {
    let bare = clear_range(0.0, 0.0).unwrap();
    assert_eq!((bare.farthest_cm(), bare.nearest_cm()), (None, None));
    assert!(!bare.contains(40.0));
    let young = clear_range(0.0, 10.0).unwrap();
    assert_eq!(young.farthest_cm(), None);
    assert!(young.contains(10.0) && young.contains(600.0) && !young.contains(9.0));
    assert!(!young.contains(f64::NAN) && !young.contains(-10.0) && !young.contains(0.0));
}

// Published: 0.3 log unit (Cheong, Lovie-Kitchin and Bowers 2002), which is twice to a quarter of a percent.
#[test]
fn the_fixed_reserve_is_three_even_lines() {
    assert_near(FIXED_RESERVE / 10_f64.powf(0.3), 1.0, 0.0025);
}
