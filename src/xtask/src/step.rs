//! One line before a step, the time it took after it.

use anyhow::Result;
use std::time::{Duration, Instant};

/// Says what is done, does it, and says how long it took.
///
/// # Errors
/// Those of the work itself.
pub fn step<T>(what: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
    println!("- {what}");
    let began = Instant::now();
    let done = work()?;
    println!("  {}", spelled(began.elapsed()));
    Ok(done)
}

/// `0.4 s`, `2 min 05 s`.
pub fn spelled(time: Duration) -> String {
    let seconds = time.as_secs();
    if seconds < 60 {
        format!("{:.1} s", time.as_secs_f64())
    } else {
        format!("{} min {:02} s", seconds / 60, seconds % 60)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_read_at_a_glance() {
        assert_eq!(spelled(Duration::from_millis(420)), "0.4 s");
        assert_eq!(spelled(Duration::from_secs(125)), "2 min 05 s");
    }
}
