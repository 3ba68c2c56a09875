//! Comparing in whole numbers, for 0.15 as a float can turn into 0.1500001.

use std::fmt;

/// A size in whole hundredths of its unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Hundredths(pub i64);

impl Hundredths {
    /// The size in its unit.
    pub fn value(self) -> f64 {
        self.0 as f64 / 100.0
    }
}

/// Two places, with a true minus sign.
impl fmt::Display for Hundredths {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "−" } else { "" };
        let size = self.0.unsigned_abs();
        write!(f, "{sign}{}.{:02}", size / 100, size % 100)
    }
}

/// Whole thousandths: finer than any focimeter reads, and exact for eighths and for hundredths.
pub(super) fn thousandths(value: f64) -> i64 {
    (value * 1000.0).round() as i64
}

/// How far apart two readings are. An odd eighth is cut as it is engraved (0.125 is 0.12); all else between two
/// hundredths counts as the farther.
pub(super) fn off(ordered: f64, measured: f64) -> Hundredths {
    let apart = (thousandths(measured) - thousandths(ordered)).abs();
    let is_odd_eighth = apart % 250 == 125;
    Hundredths(if is_odd_eighth {
        apart / 10
    } else {
        (apart + 9) / 10
    })
}

/// How far apart two axes are, the small way round, in hundredths of a degree.
pub(super) fn axis_off(ordered: f64, measured: f64) -> Hundredths {
    let hundredths = |degrees: f64| (degrees * 100.0).round() as i64;
    let apart = (hundredths(measured) - hundredths(ordered)).rem_euclid(18_000);
    Hundredths(apart.min(18_000 - apart))
}

#[cfg(test)]
mod tests {
    use super::*;

    // The eighth is engraved cut: common practice, no source. The rest is the house rule of never rounding toward a limit.
    #[test]
    fn eighths_are_cut_and_all_else_counts_as_the_farther() {
        for (ordered, measured, expected) in [
            (-2.0, -2.125, 12),
            (1.125, 1.25, 12),
            (1.12, 1.25, 13),
            (0.0, 0.15, 15),
            (1.0, 1.131, 14),
            (1.0, 1.375, 37),
            (7.0, 7.0, 0),
        ] {
            assert_eq!(off(ordered, measured), Hundredths(expected));
            assert_eq!(off(measured, ordered), Hundredths(expected));
        }
    }

    #[test]
    fn axes_go_the_small_way_round() {
        for (ordered, measured, expected) in [
            (180.0, 6.0, 600),
            (1.0, 179.0, 200),
            (90.0, 180.0, 9000),
            (45.0, 45.0, 0),
            (10.0, 12.5, 250),
        ] {
            assert_eq!(axis_off(ordered, measured), Hundredths(expected));
        }
    }

    #[test]
    fn hundredths_are_written_with_two_places() {
        assert_eq!(Hundredths(13).to_string(), "0.13");
        assert_eq!(Hundredths(-105).to_string(), "−1.05");
    }
}
