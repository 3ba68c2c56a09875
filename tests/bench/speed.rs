//! Nanoseconds for one of each operation of the arithmetic, timed by a page of its own.

use anyhow::{Context, Result};
use lightround_tests::{Hand, Relay};
use serde_json::Value;

/// Opens the page, which measures while it loads, and gives what it shows.
pub async fn speed(hand: &Hand, page: &Relay) -> Result<Vec<Value>> {
    hand.go(page.address()).await?;
    let text = hand.text("#measured").await?;
    serde_json::from_str(&text).with_context(|| format!("the page shows no measures: {text}"))
}
