//! How often a device may ask.

use std::collections::HashMap;
use std::sync::{Mutex, PoisonError};
use vault::DeviceId;

/// A bucket of `burst` requests that fills by `each_second`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rate {
    /// Requests that may come at once.
    pub burst: u32,
    /// Requests that may come every second after that; at least 1.
    pub each_second: u32,
}

/// The most devices that are remembered; beyond that, those that may ask freely again are forgotten.
const MOST: usize = 20_000;
/// A request, in thousandths: what fills in a millisecond is a whole number of them.
const ONE: u64 = 1_000;

/// Every device's bucket.
#[derive(Debug)]
pub struct Buckets {
    rate: Rate,
    levels: Mutex<HashMap<DeviceId, Level>>,
}

/// How full a bucket was, in thousandths of a request, and when.
#[derive(Clone, Copy, Debug)]
struct Level {
    left: u64,
    at: u64,
}

impl Buckets {
    pub fn new(rate: Rate) -> Self {
        Self {
            rate,
            levels: Mutex::default(),
        }
    }

    /// Takes a request out of a device's bucket; the seconds until there is one where there is none.
    pub fn take(&self, device: DeviceId, now: u64) -> Result<(), u32> {
        let mut levels = self.levels.lock().unwrap_or_else(PoisonError::into_inner);
        if levels.len() >= MOST {
            levels.retain(|_, level| self.filled(*level, now) < self.full());
        }
        let new = Level {
            left: self.full(),
            at: now,
        };
        let level = levels.entry(device).or_insert(new);
        let left = self.filled(*level, now);
        level.at = now;
        level.left = left.saturating_sub(if left >= ONE { ONE } else { 0 });
        if left >= ONE {
            return Ok(());
        }
        let each_second = u64::from(self.rate.each_second.max(1)) * ONE;
        Err((ONE - left).div_ceil(each_second) as u32)
    }

    fn filled(&self, level: Level, now: u64) -> u64 {
        let fills = now
            .saturating_sub(level.at)
            .saturating_mul(u64::from(self.rate.each_second));
        level.left.saturating_add(fills).min(self.full())
    }

    fn full(&self) -> u64 {
        u64::from(self.rate.burst) * ONE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bucket_empties_and_fills_again() {
        let buckets = Buckets::new(Rate {
            burst: 3,
            each_second: 2,
        });
        let [one, other] = [1, 2].map(|byte| DeviceId::from_bytes([byte; 16]));
        let taken: Vec<bool> = (0..4).map(|_| buckets.take(one, 5_000).is_ok()).collect();
        assert_eq!(taken, [true, true, true, false]);
        assert_eq!(buckets.take(one, 5_000), Err(1));
        assert!(
            buckets.take(other, 5_000).is_ok(),
            "each device has its own"
        );
        // Computed from the formula: two a second is one after half a second.
        assert_eq!(buckets.take(one, 5_499), Err(1));
        assert_eq!(buckets.take(one, 5_500), Ok(()));
        assert!(
            buckets.take(one, 4_000).is_err(),
            "a clock that goes back fills nothing"
        );
    }

    #[test]
    fn strangers_without_end_fill_no_memory() {
        let buckets = Buckets::new(Rate {
            burst: 1,
            each_second: 1,
        });
        for number in 0..3 * MOST as u128 {
            let device = DeviceId::from_bytes(number.to_be_bytes());
            buckets.take(device, number as u64 * 10).unwrap();
        }
        assert!(buckets.levels.lock().unwrap().len() <= MOST);
    }
}
