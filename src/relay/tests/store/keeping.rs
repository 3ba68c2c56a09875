//! Every store keeps frames as every place that keeps frames does: the cases are those that a tablet's storage is held to.
//!
//! Each store keeps all the cases' vaults at once.

use futures::executor::block_on;
use sync::contract::Outcome;
use sync::contract::keeping::{FEWEST, OfRelay, run};
use sync::exchange::FrameStore;

fn keeps_frames(store: &impl FrameStore) {
    let fresh = async |vault| Ok(OfRelay { store, vault });
    let outcomes = block_on(run(fresh));
    let broken = outcomes.iter().filter(|outcome| outcome.ended.is_err());
    assert_eq!(broken.collect::<Vec<_>>(), Vec::<&Outcome>::new());
    assert!(outcomes.len() >= FEWEST, "{} cases", outcomes.len());
}

#[test]
fn memory() {
    keeps_frames(&crate::memory());
}

#[test]
fn sqlite() {
    keeps_frames(&crate::sqlite());
}

#[test]
fn postgres() {
    keeps_frames(&crate::postgres());
}
