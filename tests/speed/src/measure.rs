//! Timing, with the clock given from outside.

use crate::bits;
use crate::operations::{Case, FLOOR, OPERATIONS, Operation};
use anyhow::{Result, ensure};
use serde_json::{Value, json};

/// How long one go lasts at least, in nanoseconds: two hundred of the coarser steps of a browser's clock.
const GO: f64 = 20e6;
/// How many goes there are of each. The quickest counts: whatever else the machine does can only lengthen one.
const GOES: usize = 9;
/// A clock that stands still must not be waited for.
const MOST_ROUNDS: u32 = 1 << 26;

/// Every operation beside the floor, as measures in the shape that the bench's report reads. `now` is a clock in
/// nanoseconds; `place` says where this runs.
///
/// # Errors
/// Where the clock stands still, or the arithmetic comes out otherwise here than elsewhere.
pub fn all(place: &str, now: impl Fn() -> f64) -> Result<Value> {
    bits::check()?;
    let case = Case::new()?;
    let timer = Timer { case: &case, now };
    let found = OPERATIONS
        .iter()
        .map(|operation| timer.beside_the_floor(operation))
        .collect::<Result<Vec<_>>>()?;
    // A browser's compiler is still warming up at first; the floor is one and the same operation all through.
    let floor = found
        .iter()
        .map(|(_, floor)| *floor)
        .fold(f64::INFINITY, f64::min);
    let measures = OPERATIONS.iter().zip(found).map(|(operation, (ours, _))| {
        json!({
            "name": format!("{place}: {}", operation.name),
            "unit": "ns",
            "ours": ours,
            "against": FLOOR.name,
            "theirs": floor,
        })
    });
    Ok(measures.collect())
}

struct Timer<'a, C> {
    case: &'a Case,
    now: C,
}

impl<C: Fn() -> f64> Timer<'_, C> {
    /// Nanoseconds for one of each, go by go in turn so that both meet the same machine.
    fn beside_the_floor(&self, operation: &Operation) -> Result<(f64, f64)> {
        let (ours, floor) = (self.rounds(operation)?, self.rounds(&FLOOR)?);
        let mut quickest = (f64::INFINITY, f64::INFINITY);
        for _ in 0..GOES {
            quickest.0 = self.each(operation, ours).min(quickest.0);
            quickest.1 = self.each(&FLOOR, floor).min(quickest.1);
        }
        Ok(quickest)
    }

    /// How many rounds make a go.
    fn rounds(&self, operation: &Operation) -> Result<u32> {
        let mut rounds = 1;
        while self.go(operation, rounds) < GO {
            rounds *= 2;
            ensure!(rounds <= MOST_ROUNDS, "the clock stands still");
        }
        Ok(rounds)
    }

    fn each(&self, operation: &Operation, rounds: u32) -> f64 {
        self.go(operation, rounds) / f64::from(rounds)
    }

    fn go(&self, operation: &Operation, rounds: u32) -> f64 {
        let began = (self.now)();
        for _ in 0..rounds {
            (operation.once)(self.case);
        }
        (self.now)() - began
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::Cell;

    #[test]
    fn a_clock_that_stands_still_is_told() {
        let timer = Timer {
            case: &Case::new().unwrap(),
            now: || 0.0,
        };
        let idle = Operation {
            name: "nothing",
            once: |_| {},
        };
        let refused = timer.rounds(&idle).unwrap_err();
        assert_eq!(refused.to_string(), "the clock stands still");
    }

    // Each look at this clock is 25 ms after the one before, so a go of one round is long enough and takes 25 ms.
    #[test]
    fn a_time_is_that_of_one_round() {
        let told = Cell::new(0.0);
        let timer = Timer {
            case: &Case::new().unwrap(),
            now: || told.replace(told.get() + 25e6),
        };
        let (ours, floor) = timer.beside_the_floor(&OPERATIONS[0]).unwrap();
        assert!((ours - 25e6).abs() < 1.0 && (floor - 25e6).abs() < 1.0);
    }
}
