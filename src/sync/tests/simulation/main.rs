//! Whole histories of several devices and a relay, made up from a seed: crashes at every write, messages that are lost,
//! repeated, reordered and altered, clocks that are wrong, a relay that is put back from an old copy, tablets that are removed
//! while they write, by two leads at once, carry files that are damaged, replayed and taken in by whom they were not meant for, a
//! viewer that writes. However it went, all come to hold the same, nothing that was acknowledged is missing, and nothing counts
//! that a tablet wrote after its removal, or a viewer at all.
//!
//! ```text
//! LIGHTROUND_HISTORIES=50000 cargo test -p sync --test simulation     more of them
//! LIGHTROUND_SEED=1234 cargo test -p sync --test simulation           one of them, step by step
//! ```
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod carried;
mod chance;
mod device;
mod history;
mod line;
mod roll;
mod world;

use history::{Fails, History, Outcome};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;

/// Histories of an ordinary run of the tests; each is run twice.
const HISTORIES: u64 = 20_000;

fn asked(variable: &str) -> Option<u64> {
    std::env::var(variable).ok()?.parse().ok()
}

#[test]
fn every_history_converges_and_loses_nothing() {
    if let Some(seed) = asked("LIGHTROUND_SEED") {
        let outcome = History::random(seed).told().run();
        println!("{outcome:?}");
        return;
    }
    let count = asked("LIGHTROUND_HISTORIES").unwrap_or(HISTORIES);
    let next = AtomicU64::new(1);
    let sums: Mutex<Outcome> = Mutex::default();
    let threads = thread::available_parallelism()
        .map_or(2, usize::from)
        .min(8);
    thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                loop {
                    let seed = next.fetch_add(1, Ordering::Relaxed);
                    if seed > count {
                        break;
                    }
                    let outcome = twice(seed);
                    sums.lock().unwrap().add(&outcome);
                }
            });
        }
    });
    // Histories in which nothing goes wrong would show nothing.
    let sums = sums.into_inner().unwrap();
    for (happened, least, what) in [
        (sums.faults, count * 5, "faults"),
        (sums.restored, count / 20, "relays put back"),
        (sums.removed, count / 4, "removals"),
        (sums.at_once, count / 20, "removals at once"),
        (sums.carried, count, "entries carried in a file"),
        (sums.in_vain, count / 4, "carry files in vain"),
        (sums.not_taken, count / 20, "entries of viewers refused"),
    ] {
        assert!(
            happened > least,
            "only {happened} {what} in {count} histories"
        );
    }
}

/// The same history, twice, with the same outcome to the last byte.
fn twice(seed: u64) -> Outcome {
    let run = || {
        catch_unwind(AssertUnwindSafe(|| History::random(seed).run())).unwrap_or_else(|_| {
            panic!(
                "history {seed} fails; see it step by step with\n    \
                 LIGHTROUND_SEED={seed} cargo test -p sync --test simulation -- --nocapture"
            )
        })
    };
    let outcome = run();
    assert_eq!(outcome, run(), "history {seed} isn't the same twice");
    outcome
}

/// Histories without chance, in which each single write and each single message fails once before it has done anything, and
/// once after.
#[test]
fn every_single_effect_may_fail() {
    for seed in [1, 2] {
        let effects = History::calm(seed, None).run().effects;
        assert!(effects > 50, "{effects}");
        for number in 0..effects {
            for after in [false, true] {
                let fails = Fails { number, after };
                let outcome = catch_unwind(|| History::calm(seed, Some(fails)).run());
                let outcome = outcome.unwrap_or_else(|_| panic!("history {seed} with {fails:?}"));
                assert!(outcome.faults > 0, "{fails:?} of {effects} was never met");
            }
        }
    }
}
