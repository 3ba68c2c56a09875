//! Chi-square: how large a sum of squared standard deviations chance alone makes.
//!
//! ```text
//! two parts:  −2 ln(1 − P)        any number ν:  ν (1 − 2/(9ν) + z √(2/(9ν)))³
//! ```
//!
//! Without unit. For two parts the value is exact. What chance exceeds less than 5 times in 100 is, up to ten degrees of
//! freedom, that of the printed tables, to three decimals; above, the cube of Wilson and Hilferty with z = 1.644854
//! (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.17; from memory, and checked to 0.02 against mpmath in
//! `tests/published`).
//!
//! ```
//! use optics::chi_square;
//!
//! assert_eq!(chi_square::upper_95(1), 3.841);
//! assert!((chi_square::two_parts(0.90)? - 4.605).abs() < 5e-4);
//! # Ok::<(), optics::OutOfRange>(())
//! ```

use crate::exact;
use crate::limits::{self, OutOfRange};

/// Printed tables of chi-square, upper 5 %, for one to ten degrees of freedom.
const PRINTED: [f64; 10] = [
    3.841, 5.991, 7.815, 9.488, 11.070, 12.592, 14.067, 15.507, 16.919, 18.307,
];

/// What chi-square stays below 95 times in 100, for so many degrees of freedom; none counts as one.
pub fn upper_95(degrees_of_freedom: usize) -> f64 {
    let printed = PRINTED.get(degrees_of_freedom.saturating_sub(1));
    printed
        .copied()
        .unwrap_or_else(|| cubed(degrees_of_freedom as f64))
}

fn cubed(degrees: f64) -> f64 {
    const Z: f64 = 1.644_853_627;
    let ninth = 2.0 / (9.0 * degrees);
    degrees * exact::raised(1.0 - ninth + Z * ninth.sqrt(), 3.0)
}

/// What chi-square of two parts stays below with this probability, 0.0001 to 0.9999.
///
/// # Errors
/// [`OutOfRange`] outside that.
pub fn two_parts(probability: f64) -> Result<f64, OutOfRange> {
    Ok(-2.0 * exact::ln(1.0 - limits::probability(probability)?))
}
