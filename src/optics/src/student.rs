//! Student's t: how many standard deviations hold 95 readings in 100, when the deviation itself comes from few readings.
//!
//! `P(−t ≤ T ≤ t) = 0.95` for so many degrees of freedom, one or more; without unit. Up to ten degrees the values are those
//! of the printed tables, to three decimals; above, the expansion about the normal 1.959964 in powers of 1/ν (Abramowitz and
//! Stegun, Handbook of Mathematical Functions, 26.7.5; from memory, and checked to 0.0005 against mpmath in
//! `tests/published`).
//!
//! ```
//! use optics::student;
//!
//! assert_eq!(student::two_sided_95(2), 4.303);
//! assert!((student::two_sided_95(1_000_000) - 1.96).abs() < 1e-4);
//! ```

use crate::exact;

/// Printed tables of t, two-sided 95 %, for one to ten degrees of freedom.
const PRINTED: [f64; 10] = [
    12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228,
];

/// Student's t that holds 95 %, for so many degrees of freedom; none counts as one.
pub fn two_sided_95(degrees_of_freedom: usize) -> f64 {
    let printed = PRINTED.get(degrees_of_freedom.saturating_sub(1));
    printed
        .copied()
        .unwrap_or_else(|| expanded(degrees_of_freedom as f64))
}

fn expanded(degrees: f64) -> f64 {
    const Z: f64 = 1.959_963_985;
    let power = |n| exact::raised(Z, n);
    let first = (power(3.0) + Z) / 4.0;
    let second = (5.0 * power(5.0) + 16.0 * power(3.0) + 3.0 * Z) / 96.0;
    let third = (3.0 * power(7.0) + 19.0 * power(5.0) + 17.0 * power(3.0) - 15.0 * Z) / 384.0;
    Z + first / degrees + second / exact::squared(degrees) + third / exact::raised(degrees, 3.0)
}
