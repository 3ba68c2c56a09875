//! From a tap to the next frame that shows its effect, with the processor slowed fourfold.

use crate::{ROUNDS, measure, median};
use anyhow::{Context, Result};
use lightround_tests::{Hand, Relay};
use serde_json::{Value, json};

/// How long a tap follows the last one, in milliseconds: three a second are more than a thumb gives that reads between them.
const BETWEEN: u32 = 333;

/// Taps the element as the browser does for a finger, and waits for the frame after the effect: the first animation frame
/// runs before that paint, the message posted from it after.
fn tap_to_paint(selector: &str) -> String {
    format!(
        "const done = arguments[arguments.length - 1];
         const target = document.querySelector('{selector}');
         setTimeout(() => {{
           const began = performance.now();
           for (const kind of ['pointerdown', 'pointerup']) target.dispatchEvent(new PointerEvent(kind, {{ bubbles: true, pointerId: 1, isPrimary: true, button: 0 }}));
           target.click();
           requestAnimationFrame(() => {{
             const channel = new MessageChannel();
             channel.port1.onmessage = () => done(performance.now() - began);
             channel.port2.postMessage(0);
           }});
         }}, {BETWEEN});"
    )
}

/// A line of the acuity picker, beside the one button.
pub async fn tap(hand: &Hand, relay: &Relay, button: &Relay) -> Result<Value> {
    hand.go(button.address()).await?;
    hand.see("button").await?;
    let theirs = slowed(hand, &["button", "button"]).await?;
    exam(hand, relay).await?;
    let ours = slowed(hand, &["#read-line-6-36", "#read-line-6-24"]).await?;
    Ok(measure(
        "tap to paint, processor slowed fourfold",
        ours,
        "one-button app",
        theirs,
    ))
}

/// Makes a vault and begins an exam; the later measures go on from there.
async fn exam(hand: &Hand, relay: &Relay) -> Result<()> {
    hand.go(relay.address()).await?;
    hand.write("#examiner", "Maren Foxglove-Quay").await?;
    hand.click("#written").await?;
    hand.click("#make-vault").await?;
    hand.read("#works-offline", "Yes").await?;
    hand.click("#new-person").await?;
    hand.write("#given", "Orla").await?;
    hand.click("#keep-person").await?;
    hand.click("#begin-exam [data-part=begin]").await?;
    hand.click("#to-acuity").await?;
    hand.see("#read-line-6-36").await?;
    Ok(())
}

/// The median of taps that alternate between two elements, the processor slowed fourfold.
pub async fn slowed(hand: &Hand, selectors: &[&str; 2]) -> Result<f64> {
    let cdp = hand.driver().cdp();
    cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": 4 }))
        .await?;
    let mut times = Vec::new();
    for round in 0..ROUNDS * 2 {
        let time = hand.ask_later(&tap_to_paint(selectors[round % 2])).await?;
        times.push(time.as_f64().context("no time came back")?);
    }
    cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": 1 }))
        .await?;
    median(times)
}
