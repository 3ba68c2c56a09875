//! Whole histories of several devices and a relay, made up from a seed: crashes at every write, messages that are lost,
//! repeated, reordered and altered, clocks that are wrong, a relay that is put back from an old copy, tablets that are removed
//! while they write, by two leads at once. However it went, all come to hold the same, nothing that was acknowledged is
//! missing, and nothing that a tablet wrote after its removal counts.
//!
//! ```text
//! LIGHTROUND_HISTORIES=50000 cargo test -p sync --test simulation     more of them
//! LIGHTROUND_SEED=1234 cargo test -p sync --test simulation           one of them, step by step
//! ```
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod chance;
mod device;
mod history;
mod line;
mod roll;
mod world;

use history::{History, Outcome};
use std::panic::{AssertUnwindSafe, catch_unwind};
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
    let [faults, restored, removed, at_once] = [const { AtomicU64::new(0) }; 4];
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
                    faults.fetch_add(outcome.faults, Ordering::Relaxed);
                    restored.fetch_add(outcome.restored, Ordering::Relaxed);
                    removed.fetch_add(outcome.removed, Ordering::Relaxed);
                    at_once.fetch_add(outcome.at_once, Ordering::Relaxed);
                }
            });
        }
    });
    // Histories in which nothing goes wrong would show nothing.
    let [faults, restored, removed, at_once] =
        [faults, restored, removed, at_once].map(AtomicU64::into_inner);
    assert!(
        faults > count * 5,
        "only {faults} faults in {count} histories"
    );
    assert!(
        restored > count / 20,
        "only {restored} relays put back in {count} histories"
    );
    assert!(
        removed > count / 4 && at_once > count / 20,
        "only {removed} removals in {count} histories, {at_once} of them at once"
    );
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

/// One history without chance, in which each single write and each single message fails once.
#[test]
fn every_single_effect_may_fail() {
    for seed in [1, 2] {
        let effects = History::calm(seed, None).run().effects;
        assert!(effects > 50, "{effects}");
        for fails in 0..effects {
            let outcome = catch_unwind(|| History::calm(seed, Some(fails)).run());
            let outcome =
                outcome.unwrap_or_else(|_| panic!("history {seed} with effect {fails} failing"));
            assert!(
                outcome.faults > 0,
                "effect {fails} of {effects} was never met"
            );
        }
    }
}
