//! Numbers as the trade writes them: a true minus sign (U+2212), and the sign always standing.

use crate::step::Step;

/// Writes a number with its sign, rounded half away from zero; what rounds to zero has no sign.
///
/// `decimals` is the number of places after the point, 0 to 9.
///
/// ```
/// assert_eq!(optics::format::signed(-1.5, 2), "−1.50");
/// assert_eq!(optics::format::signed(0.25, 2), "+0.25");
/// assert_eq!(optics::format::signed(-0.001, 2), "0.00");
/// ```
pub fn signed(value: f64, decimals: usize) -> String {
    let places = decimals.min(9);
    let scale = (0..places).fold(1.0, |scale, _| scale * 10.0);
    // Rounded here because the formatter rounds halves to even.
    let rounded = (value * scale).round() / scale;
    let size = format!("{:.places$}", rounded.abs());
    if rounded == 0.0 {
        size
    } else if rounded < 0.0 {
        format!("−{size}")
    } else {
        format!("+{size}")
    }
}

/// Writes a power in dioptres to two places, as it is engraved on a trial lens.
///
/// An odd eighth is cut, not rounded (0.125 is written 0.12, 0.375 is 0.37): common practice, no source.
///
/// ```
/// assert_eq!(optics::format::power(1.375), "+1.37");
/// assert_eq!(optics::format::power(-0.125), "−0.12");
/// ```
pub fn power(value: f64) -> String {
    const EXACTLY: f64 = 1e-9;
    let shown =
        Step::odd_eighth(value, EXACTLY).map_or(value, |eighth| (eighth * 100.0).trunc() / 100.0);
    signed(shown, 2)
}

/// Writes a number with up to `decimals` places and no trailing zeros: a distance, an angle, a letter size.
///
/// ```
/// assert_eq!(optics::format::plain(22.5, 1), "22.5");
/// assert_eq!(optics::format::plain(66.0, 1), "66");
/// ```
pub fn plain(value: f64, decimals: usize) -> String {
    let written = signed(value, decimals);
    let unsigned = written.strip_prefix('+').unwrap_or(&written);
    if unsigned.contains('.') {
        unsigned
            .trim_end_matches('0')
            .trim_end_matches('.')
            .to_owned()
    } else {
        unsigned.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // House rule: a true minus sign, and halves rounded away from zero.
    #[test]
    fn the_sign_stands_and_halves_go_away_from_zero() {
        assert_eq!(signed(0.5, 0), "+1");
        assert_eq!(signed(-2.5, 0), "\u{2212}3");
        assert_eq!(signed(12.0, 2), "+12.00");
        assert_eq!(signed(-0.0, 2), "0.00");
    }

    // Engraving of eighth-dioptre lenses: common practice, no source.
    #[test]
    fn eighths_are_cut() {
        let written: Vec<String> = [0.125, 0.375, 0.625, 0.875, 0.25, -0.875]
            .into_iter()
            .map(power)
            .collect();
        assert_eq!(
            written,
            ["+0.12", "+0.37", "+0.62", "+0.87", "+0.25", "−0.87"]
        );
    }

    #[test]
    fn a_derived_power_that_is_no_eighth_is_rounded() {
        assert_eq!(power(2.5075), "+2.51");
        assert_eq!(power(-1.4925), "−1.49");
    }

    #[test]
    fn plain_numbers_lose_their_idle_zeros_only_after_the_point() {
        assert_eq!(plain(100.0, 1), "100");
        assert_eq!(plain(100.0, 0), "100");
        assert_eq!(plain(0.0, 1), "0");
        assert_eq!(plain(-2.50, 2), "−2.5");
    }
}
