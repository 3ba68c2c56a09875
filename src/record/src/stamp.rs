//! When something was written: a hybrid logical clock.
//!
//! A tablet's clock may be wrong or run backwards. A [`Stamp`] carries the wall clock's milliseconds and a counter;
//! the [`Clock`] that issues stamps never goes back, and moves on when it sees a later stamp from another device. So
//! what was written after reading something is always stamped later than it. Stamps order lists for people to read;
//! what replaced what is told by an entry's parents, never by a stamp.

use serde::{Deserialize, Serialize};

/// A point in hybrid logical time. Orders by wall clock, then by counter.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
pub struct Stamp {
    /// Milliseconds since 1970-01-01T00:00Z, as the writer's clock gave it or as the latest stamp seen.
    pub wall_ms: u64,
    /// Tells apart stamps within one millisecond.
    pub counter: u16,
}

impl Stamp {
    /// The next later stamp in the same millisecond, or in the next one when its counter is used up. At the end of all
    /// time, which only a broken clock reaches, it stands still.
    fn next(self) -> Self {
        if let Some(counter) = self.counter.checked_add(1) {
            return Self { counter, ..self };
        }
        match self.wall_ms.checked_add(1) {
            Some(wall_ms) => Self {
                wall_ms,
                counter: 0,
            },
            None => self,
        }
    }
}

/// Issues stamps for one device. Start it with [`Clock::witness`] of every entry held.
///
/// ```
/// use record::{Clock, Stamp};
///
/// let mut clock = Clock::default();
/// let first = clock.tick(1_000);
/// let set_back = clock.tick(400); // somebody corrected the tablet's clock
/// assert!(set_back > first);
///
/// clock.witness(Stamp { wall_ms: 9_000, counter: 3 }); // read on another device's entry
/// assert!(clock.tick(1_001) > Stamp { wall_ms: 9_000, counter: 3 });
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Clock {
    latest: Stamp,
}

impl Clock {
    /// Issues the stamp for something written now, where `now_ms` is the wall clock in milliseconds since 1970.
    pub fn tick(&mut self, now_ms: u64) -> Stamp {
        let wall = Stamp {
            wall_ms: now_ms,
            counter: 0,
        };
        self.latest = if wall > self.latest {
            wall
        } else {
            self.latest.next()
        };
        self.latest
    }

    /// Takes note of a stamp from elsewhere, so that what is written next is stamped later.
    pub fn witness(&mut self, stamp: Stamp) {
        self.latest = self.latest.max(stamp);
    }
}
