//! Retinoscopy under the thumb: taps, how far it goes, how soon a tap shows, and how smoothly the drawn reflex moves.

use crate::tap::slowed;
use crate::{counted, measure};
use anyhow::{Context, Result};
use lightround_tests::Hand;
use lightround_tests::playing::open_the_pad;
use lightround_tests::quick;
use serde_json::{Value, json};

/// The aim for both eyes by quick entry.
const AIM: f64 = 16.0;

/// Measures it with somebody who was seen before, from the exam that is open.
pub async fn retinoscopy(hand: &Hand) -> Result<Vec<Value>> {
    to_rounds(hand).await?;
    quick::seen_before(hand, "Ines").await?;
    let entered = quick::by_quick_entry(hand).await?;
    to_rounds(hand).await?;
    quick::seen_before(hand, "Tam").await?;
    let (swept, count) = quick::by_sweeps(hand).await?;
    let sweeps = count.sweeps as f64;
    let mut measures = vec![
        counted(
            "taps",
            "both eyes by quick entry, from last time",
            entered.taps as f64,
            "the aim",
            AIM,
        ),
        counted(
            "taps",
            "both eyes sweep by sweep, from last time",
            swept.taps as f64,
            "sweeps alone",
            sweeps,
        ),
        counted(
            "px",
            "thumb travel sweep by sweep",
            swept.travel,
            "by quick entry",
            entered.travel,
        ),
    ];
    measures.extend(paint(hand).await?);
    measures.push(frames(hand).await?);
    Ok(measures)
}

async fn to_rounds(hand: &Hand) -> Result<()> {
    hand.click("#to-story").await?;
    hand.click("header a[href='/']").await
}

/// What a thumb does on the pad, each beside what takes it back.
const TAPS: [(&str, [&str; 2]); 5] = [
    ("a sweep", ["#seen-with", "#undo-sweep"]),
    (
        "a sweep that can\u{2019}t tell",
        ["#seen-cannot-tell", "#undo-sweep"],
    ),
    ("the other meridian", ["#tests-first", "#tests-second"]),
    ("a step of the lens", ["#lens-more", "#lens-less"]),
    ("a change of the beam", ["#beam-reversed", "#beam-normal"]),
];

/// Every kind of tap on the pad of an eye that was swept to the end: a sweep beside a change of the beam, and the slowest
/// beside what the design allows.
async fn paint(hand: &Hand) -> Result<[Value; 2]> {
    open_the_pad(hand).await?;
    let mut painted = Vec::new();
    for (name, selectors) in &TAPS {
        let time = slowed(hand, selectors).await?;
        println!("{name} to paint, slowed fourfold: {time:.1} ms");
        painted.push((*name, time));
    }
    let (sweep, beam) = (painted[0].1, painted[TAPS.len() - 1].1);
    let slowest = painted.into_iter().max_by(|a, b| a.1.total_cmp(&b.1));
    let (name, time) = slowest.context("nothing was tapped")?;
    Ok([
        measure(
            "a sweep to paint, processor slowed fourfold",
            sweep,
            "a change of the beam",
            beam,
        ),
        json!({ "name": format!("the slowest kind of tap on the pad, slowed fourfold: {name}"), "unit": "ms", "ours": time, "budget": 50.0 }),
    ])
}

/// The drawn reflex moving, beside the same page standing still.
async fn frames(hand: &Hand) -> Result<Value> {
    to_rounds(hand).await?;
    hand.click("#to-vault").await?;
    hand.click("#to-practice").await?;
    hand.see("#reflex").await?;
    let cdp = hand.driver().cdp();
    cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": 4 }))
        .await?;
    let moving = hand.frames_a_second().await?;
    hand.click("#by-itself").await?;
    let still = hand.frames_a_second().await?;
    cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": 1 }))
        .await?;
    Ok(counted(
        "frames/s",
        "the drawn reflex, processor slowed fourfold",
        moving,
        "the same page standing still",
        still,
    ))
}
