//! How often a device may ask.
//!
//! Anybody can make a key, and with each a bucket of its own. So strangers, whom the relay has not answered well since it
//! began, share one bucket more: however many they are, they take nothing away from a vault's devices.

use std::collections::{HashMap, HashSet};
use std::hash::Hash;
use std::sync::{Mutex, MutexGuard, PoisonError};
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
/// How much more all strangers together may ask than one device.
const STRANGERS: u32 = 10;
/// A request, in thousandths: what fills in a millisecond is a whole number of them.
const ONE: u64 = 1_000;

/// Every device's bucket.
#[derive(Debug)]
pub struct Buckets {
    devices: Mutex<Levels<DeviceId>>,
    strangers: Mutex<Levels<()>>,
    known: Mutex<HashSet<DeviceId>>,
}

/// Buckets of one size.
#[derive(Debug)]
struct Levels<K> {
    rate: Rate,
    levels: HashMap<K, Level>,
}

/// How full a bucket was, in thousandths of a request, and when.
#[derive(Clone, Copy, Debug)]
struct Level {
    left: u64,
    at: u64,
}

impl Buckets {
    pub fn new(rate: Rate) -> Self {
        let shared = Rate {
            burst: rate.burst.saturating_mul(STRANGERS),
            each_second: rate.each_second.saturating_mul(STRANGERS),
        };
        Self {
            devices: Mutex::new(Levels::new(rate)),
            strangers: Mutex::new(Levels::new(shared)),
            known: Mutex::default(),
        }
    }

    /// Takes a request out of a device's bucket; the seconds until there is one where there is none.
    pub fn take(&self, device: DeviceId, now: u64) -> Result<(), u32> {
        if !lock(&self.known).contains(&device) {
            lock(&self.strangers).take((), now)?;
        }
        lock(&self.devices).take(device, now)
    }

    /// A device that was answered well is no stranger any more.
    pub fn know(&self, device: DeviceId) {
        let mut known = lock(&self.known);
        if known.len() >= MOST && !known.contains(&device) {
            // Each that is still there is known again with its next request.
            known.clear();
        }
        known.insert(device);
    }
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl<K: Copy + Eq + Hash> Levels<K> {
    fn new(rate: Rate) -> Self {
        Self {
            rate,
            levels: HashMap::new(),
        }
    }

    fn take(&mut self, key: K, now: u64) -> Result<(), u32> {
        let (rate, full) = (self.rate, self.rate.full());
        if self.levels.len() >= MOST {
            self.levels
                .retain(|_, level| rate.filled(*level, now) < full);
        }
        let new = Level {
            left: full,
            at: now,
        };
        let level = self.levels.entry(key).or_insert(new);
        let left = rate.filled(*level, now);
        level.at = now;
        level.left = left.saturating_sub(if left >= ONE { ONE } else { 0 });
        if left >= ONE {
            return Ok(());
        }
        let each_second = u64::from(rate.each_second.max(1)) * ONE;
        Err((ONE - left).div_ceil(each_second) as u32)
    }
}

impl Rate {
    fn filled(self, level: Level, now: u64) -> u64 {
        let fills = now
            .saturating_sub(level.at)
            .saturating_mul(u64::from(self.each_second));
        level.left.saturating_add(fills).min(self.full())
    }

    fn full(self) -> u64 {
        u64::from(self.burst) * ONE
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
            buckets.take(device, number as u64 * 200).unwrap();
        }
        assert!(buckets.devices.lock().unwrap().levels.len() <= MOST);
        for number in 0..3 * MOST as u128 {
            buckets.know(DeviceId::from_bytes(number.to_be_bytes()));
        }
        assert!(buckets.known.lock().unwrap().len() <= MOST);
    }

    #[test]
    fn strangers_take_nothing_from_those_who_are_known() {
        let buckets = Buckets::new(Rate {
            burst: 2,
            each_second: 1,
        });
        let device = |number: u128| DeviceId::from_bytes(number.to_be_bytes());
        buckets.know(device(0));
        let taken = (1..=100)
            .filter(|number| buckets.take(device(*number), 0).is_ok())
            .count();
        // Computed from the formula: ten times two.
        assert_eq!(taken, 20);
        assert_eq!(buckets.take(device(101), 0), Err(1));
        assert_eq!(buckets.take(device(0), 0), Ok(()));
        assert_eq!(buckets.take(device(101), 100), Ok(()), "ten a second");
    }
}
