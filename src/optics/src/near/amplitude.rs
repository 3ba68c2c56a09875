//! The amplitude of accommodation that an age leaves to be expected, in dioptres.
//!
//! ```text
//! Hofstetter 1950:   least 15 − 0.25 age     mean 18.5 − 0.30 age     most 25 − 0.40 age
//! Anderson 2008:     7.33 − 0.0035 (age − 3)²                          ages 3 to 40
//! ```
//!
//! Hofstetter drew on Donders' and Duane's surveys by the push-up method, which measures too much; the lines hold for about
//! 8 to 60 years and end at 0. Anderson et al. (Invest Ophthalmol Vis Sci 49:2919-2926) measured with an instrument and
//! found less. Donders' means at 10 to 75 years, by fives, stand in lecture notes on the amplitude of accommodation. Depth of focus makes a measured amplitude of about 1 D even where none is left (from memory).

use crate::limits::{self, Limit, OutOfRange, Unit};
use ::words::optics::limits as say;

/// The ages that Hofstetter's lines were drawn through, in years.
const SURVEYED: std::ops::RangeInclusive<f64> = 8.0..=60.0;

/// What to expect of an age, in dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expected {
    /// The least of healthy eyes.
    pub least: f64,
    /// The mean.
    pub mean: f64,
    /// The most.
    pub most: f64,
    /// Whether the age lies outside the survey (8 to 60 years), so that the figures are guesses.
    pub beyond_survey: bool,
}

/// Hofstetter's three lines at an age in years, none below 0.
///
/// ```
/// let expected = optics::near::hofstetter(45.0)?;
/// assert_eq!((expected.least, expected.mean, expected.most), (3.75, 5.0, 7.0));
/// assert!(optics::near::hofstetter(85.0)?.beyond_survey);
/// # Ok::<(), optics::OutOfRange>(())
/// ```
///
/// # Errors
/// [`OutOfRange`] outside 0 to 120 years.
pub fn hofstetter(age: f64) -> Result<Expected, OutOfRange> {
    let age = limits::age(age)?;
    let line = |at_birth: f64, a_year: f64| (at_birth - a_year * age).max(0.0);
    Ok(Expected {
        least: line(15.0, 0.25),
        mean: line(18.5, 0.30),
        most: line(25.0, 0.40),
        beyond_survey: !SURVEYED.contains(&age),
    })
}

/// Anderson's mean of amplitudes measured with an instrument, at 3 to 40 years.
///
/// # Errors
/// [`OutOfRange`] at any other age: the curve turns meaningless there.
pub fn anderson(age: f64) -> Result<f64, OutOfRange> {
    let from_three = ANDERSON_AGE.check(age)? - 3.0;
    Ok(7.33 - 0.0035 * from_three * from_three)
}

const ANDERSON_AGE: Limit = Limit {
    what: say::age_for_this_curve,
    unit: Unit::Years,
    low: 3.0,
    high: 40.0,
};

/// Age in years and mean amplitude in dioptres.
const DONDERS: [(f64, f64); 14] = [
    (10.0, 14.0),
    (15.0, 12.0),
    (20.0, 10.0),
    (25.0, 8.5),
    (30.0, 7.0),
    (35.0, 5.5),
    (40.0, 4.5),
    (45.0, 3.5),
    (50.0, 2.5),
    (55.0, 1.75),
    (60.0, 1.0),
    (65.0, 0.5),
    (70.0, 0.25),
    (75.0, 0.0),
];

/// Donders' mean at 10 to 75 years, in a straight line between his ages.
///
/// ```
/// assert_eq!(optics::near::donders(47.5)?, 3.0);
/// # Ok::<(), optics::OutOfRange>(())
/// ```
///
/// # Errors
/// [`OutOfRange`] at any other age.
pub fn donders(age: f64) -> Result<f64, OutOfRange> {
    let age = DONDERS_AGE.check(age)?;
    let around = DONDERS.windows(2).find(|pair| age <= pair[1].0);
    let between = around.map(|pair| {
        let ((younger, more), (older, less)) = (pair[0], pair[1]);
        more + (less - more) * (age - younger) / (older - younger)
    });
    Ok(between.unwrap_or(0.0))
}

const DONDERS_AGE: Limit = Limit {
    what: say::age_for_this_table,
    unit: Unit::Years,
    low: 10.0,
    high: 75.0,
};
