//! The bracket against simulated eyes and a simulated examiner who sometimes calls a motion wrongly.
//!
//! The examiner is no copy of the bracket's model: an edge of the neutral zone scatters by a normal curve, not a logistic one,
//! and a wrong call is drawn apart from what was seen. The aims are the design's: a plain simulation with a neutral half-zone of
//! 0.2 D, spread 0.1 D and a tenth of miscalls took 4 sweeps from anywhere within 12 D and 2 from last time's finding; the
//! information limit from ±12 D is log3 of 48, 3.5.

#![expect(clippy::unwrap_used, reason = "helpers here are tests too")]

mod examiner;
mod runs;

use examiner::{Examiner, From};
use optics::retinoscopy::Circumstances;
use runs::{Runs, run};

/// Eyes in every run. Together there are tens of thousands.
const EYES: u64 = 4_000;

const PLAIN: Examiner = Examiner {
    half_zone: 0.2,
    spread: 0.1,
    miscalls: 0.1,
};

fn plain(from: From) -> Runs {
    run(EYES, from, PLAIN, Circumstances::default())
}

#[test]
fn from_anywhere_at_most_five_sweeps_reach_a_quarter() {
    let runs = plain(From::Anywhere);
    println!("{runs}");
    assert!(runs.median_to_a_quarter() <= 5, "{runs}");
}

#[test]
fn from_last_time_at_most_three_sweeps_reach_a_quarter() {
    let runs = plain(From::LastTime);
    println!("{runs}");
    assert!(runs.median_to_a_quarter() <= 3, "{runs}");
}
