//! How a held button repeats: slowly enough to stop on the lens that was meant, faster the longer it is held.

use std::time::Duration;

/// The wait before the repeat that comes after `repeats` others, counted from the press itself.
///
/// The first wait tells a hold from a tap. The pace then rises in four grades to twenty steps a second, five dioptres a
/// second on the quarter step; each repeat is one step, so the value stops exactly where the finger lets go.
pub fn wait_before(repeats: u32) -> Duration {
    let milliseconds = match repeats {
        0 => 420,
        1..=4 => 200,
        5..=10 => 120,
        11..=20 => 80,
        _ => 50,
    };
    Duration::from_millis(milliseconds)
}

#[cfg(test)]
mod tests {
    use super::wait_before;

    #[test]
    fn the_pace_only_rises() {
        let waits: Vec<_> = (0..60).map(wait_before).collect();
        assert!(waits.windows(2).all(|pair| pair[1] <= pair[0]));
    }

    #[test]
    fn a_tap_is_not_a_hold() {
        // Long presses begin at 400 to 500 ms on the common touch systems: from memory.
        assert!(wait_before(0).as_millis() >= 400);
    }

    #[test]
    fn twelve_dioptres_take_less_than_six_seconds() {
        let held: u128 = (0..48).map(|n| wait_before(n).as_millis()).sum();
        assert!(held < 6000, "{held}");
    }
}
