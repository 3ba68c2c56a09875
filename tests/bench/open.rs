//! From opening the address, with the server gone, to a page that can be used.

use crate::{ROUNDS, measure, median};
use anyhow::{Context, Result};
use lightround_tests::{Hand, Relay};
use serde_json::Value;

/// When the element was first on the page, by the page's own clock, which starts with the navigation.
fn since_start(selector: &str) -> String {
    format!(
        "const done = arguments[arguments.length - 1];
         const look = () => document.querySelector('{selector}') ? done(performance.now()) : requestAnimationFrame(look);
         look();"
    )
}

/// The app without its server, beside the one-button app with its server on the same machine.
pub async fn open(hand: &Hand, relay: Relay, button: &Relay) -> Result<Value> {
    let address = relay.address().to_owned();
    relay.stop()?;
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        ours.push(timed(hand, &address, "#passphrase").await?);
        theirs.push(timed(hand, button.address(), "button").await?);
    }
    Ok(measure(
        "offline, from opening to usable",
        median(ours)?,
        "one-button app, online",
        median(theirs)?,
    ))
}

async fn timed(hand: &Hand, address: &str, selector: &str) -> Result<f64> {
    hand.go("about:blank").await?;
    hand.go(address).await?;
    hand.ask_later(&since_start(selector))
        .await?
        .as_f64()
        .context("no time came back")
}
