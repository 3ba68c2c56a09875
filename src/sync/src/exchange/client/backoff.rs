//! How long to wait after failures.

/// The first wait, in milliseconds.
const FIRST: u64 = 1_000;
/// The longest wait that a client chooses by itself, in milliseconds.
const LONGEST: u64 = 5 * 60 * 1_000;

/// Milliseconds to wait after `failures` in a row, at least as long as the relay asked for.
///
/// Doubled each time up to five minutes; of that, between a half and the whole, so that tablets that lost the same network
/// at the same moment don't come back at the same moment.
pub fn wait(failures: u32, random: u32, asked_seconds: u32) -> u64 {
    let doubled = FIRST
        .checked_shl(failures.saturating_sub(1).min(20))
        .map_or(LONGEST, |wait| wait.min(LONGEST));
    let half = doubled / 2;
    let chosen = half + u64::from(random) * half / u64::from(u32::MAX);
    chosen.max(u64::from(asked_seconds) * 1_000 + chosen / 10)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn waits_double_between_a_half_and_the_whole() {
        // Computed from the formula.
        assert_eq!((wait(1, 0, 0), wait(1, u32::MAX, 0)), (500, 1_000));
        assert_eq!((wait(4, 0, 0), wait(4, u32::MAX, 0)), (4_000, 8_000));
        for failures in [10, 21, 64, u32::MAX] {
            assert_eq!(wait(failures, u32::MAX, 0), LONGEST, "{failures}");
        }
    }

    #[test]
    fn the_relays_word_counts_for_more() {
        assert!(wait(1, 0, 30) >= 30_000);
        assert!(wait(1, u32::MAX, u32::MAX) >= u64::from(u32::MAX) * 1_000);
        assert_ne!(
            wait(1, 0, 30),
            wait(1, u32::MAX, 30),
            "and all don't come at once"
        );
    }
}
