//! Somebody who was seen before: how few taps both eyes take, by quick entry and sweep by sweep.

use crate::Stage;
use anyhow::{Result, ensure};
use lightround_tests::bedside::make_vault;
use lightround_tests::quick;

/// The aim for both eyes by quick entry from last time's result.
const MOST_TAPS: usize = 16;

/// Plays it.
pub async fn quick_entry(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    make_vault(&hand, stage.relay()?).await?;
    quick::seen_before(&hand, "Orla").await?;
    let tally = quick::by_quick_entry(&hand).await?;
    println!(
        "both eyes by quick entry: {} taps, {:.0} pixels",
        tally.taps, tally.travel
    );
    ensure!(
        tally.taps <= MOST_TAPS,
        "{} taps are more than {MOST_TAPS}",
        tally.taps
    );
    Ok(())
}

/// Plays it. No tap is anything but a sweep, a change of lens or meridian, or the change to the other eye.
pub async fn sweeps(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    make_vault(&hand, stage.relay()?).await?;
    quick::seen_before(&hand, "Orla").await?;
    let (tally, count) = quick::by_sweeps(&hand).await?;
    println!(
        "both eyes by {} sweeps: {} taps, {:.0} pixels",
        count.sweeps, tally.taps, tally.travel
    );
    ensure!(
        tally.taps == count.taps + 1,
        "{} taps for {count:?}",
        tally.taps
    );
    ensure!(
        tally.taps <= 2 * count.sweeps + 1,
        "{} taps for {} sweeps",
        tally.taps,
        count.sweeps
    );
    Ok(())
}
