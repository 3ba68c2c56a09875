//! Practice with the drawn reflex: no vault, an eye set by hand, the streak under a finger, and how many frames it draws.

use crate::Stage;
use crate::looks::look;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::put_number;
use lightround_tests::{Engine, Hand};
use serde_json::json;
use thirtyfour::Key;

/// Plays it.
pub async fn drawn_reflex(stage: &mut Stage) -> Result<()> {
    let (hand, relay, engine) = (stage.hand.clone(), stage.relay()?, stage.browser.engine);
    hand.go(relay.address()).await?;
    // The gate grows once it has looked at the tablet: the link then stands still.
    hand.see("#offered").await?;
    hand.tap("#to-practice").await?;
    hand.see("#reflex").await?;
    still_look(&hand, engine, "practice").await?;
    set_eye(&hand, "2", None).await?;
    with_and_against(&hand).await?;
    skewed(&hand).await?;
    still_look(&hand, engine, "practice-skewed").await?;
    by_finger_and_key(&hand).await?;
    frames(&hand, engine).await?;
    hand.click("#leave-practice").await?;
    hand.see("#found")
        .await
        .context("practice leads back to the gate")?;
    if engine == Engine::Chromium {
        still(&hand, relay.address()).await?;
    }
    Ok(())
}

/// Looked at with the streak held still: sixty frames a second leave a busy machine no time to look for faults.
async fn still_look(hand: &Hand, engine: Engine, name: &str) -> Result<()> {
    hand.click("#by-itself").await?;
    hand.read("#by-itself", "let the streak sweep").await?;
    look(hand, engine, name).await?;
    hand.click("#by-itself").await?;
    hand.read("#by-itself", "hold the streak still").await
}

async fn set_eye(hand: &Hand, sphere: &str, cylinder: Option<(&str, &str)>) -> Result<()> {
    hand.click("#eye").await?;
    hand.click("#own-clear").await?;
    put_number(hand, "own-sphere", sphere).await?;
    if let Some((power, axis)) = cylinder {
        put_number(hand, "own-cylinder", power).await?;
        put_number(hand, "own-axis-number", axis).await?;
    }
    hand.click("#eye-sheet-close").await
}

/// The eye is +2.00. With less than +3.50 in place at 67 cm a normal beam shows with, with more against, and a reversed one
/// the other way round: common practice, no source; +3.50 is +2.00 and the usual 1.50 for 67 cm.
async fn with_and_against(hand: &Hand) -> Result<()> {
    hand.tap("#seen summary").await?;
    hand.read("#seen-words", "with, slow").await?;
    put_number(hand, "lens", "2.5").await?;
    hand.read("#seen-words", "with").await?;
    put_number(hand, "lens", "3.5").await?;
    hand.read("#seen-words", "neutral").await?;
    hand.click("#lens-more").await?;
    put_number(hand, "lens", "5").await?;
    hand.read("#seen-words", "against").await?;
    hand.click("#beam-reversed").await?;
    hand.read("#seen-words", "with").await?;
    hand.click("#beam-normal").await?;
    hand.read("#seen-words", "against").await
}

/// A streak that stands off the axis shows a skewed reflex, and one that stands on it does not: every text on streak
/// retinoscopy.
async fn skewed(hand: &Hand) -> Result<()> {
    set_eye(hand, "3", Some(("-2", "180"))).await?;
    put_number(hand, "lens", "0").await?;
    hand.read("#shown-eye", "+3.00 / −2.00 × 180").await?;
    ensure!(!hand.text("#seen-words").await?.contains("skewed"));
    hand.click("#tests-45").await?;
    hand.read("#seen-words", "skewed").await
}

async fn streak(hand: &Hand) -> Result<f64> {
    let now = hand.see("#reflex").await?.attr("aria-valuenow").await?;
    now.context("the streak is nowhere")?
        .parse()
        .context("the streak is at no number")
}

async fn by_finger_and_key(hand: &Hand) -> Result<()> {
    hand.click("#tests-180").await?;
    let size = hand.see("#reflex").await?.rect().await?;
    let quarter = size.width as i32 / 8;
    hand.drag("#reflex", (0, 0), (quarter, 0)).await?;
    hand.read("#by-itself", "let the streak sweep").await?;
    until_streak(hand, "dragged to the right", "> 0").await?;
    let dragged = streak(hand).await?;
    hand.keys("#reflex", Key::End + "").await?;
    until_streak(hand, "at its end", &format!("> {dragged}")).await?;
    let end = streak(hand).await?;
    for _ in 0..4 {
        hand.keys("#reflex", Key::Left + "").await?;
    }
    let back = end - 2.0;
    until_streak(
        hand,
        "two millimetres back by four keys",
        &format!("- {back} < 0.01"),
    )
    .await?;
    ensure!(
        (streak(hand).await? - back).abs() < 0.01,
        "four keys are two millimetres"
    );
    hand.click("#by-itself").await?;
    until_streak(hand, "on its way", &format!("!== {back}")).await
}

/// Waits until the streak's place compares so.
async fn until_streak(hand: &Hand, what: &str, compares: &str) -> Result<()> {
    let script = format!(
        "return parseFloat(document.querySelector('#reflex').getAttribute('aria-valuenow')) {compares}"
    );
    hand.until(&format!("the streak {what}"), &script).await
}

/// How many frames a second the moving reflex leaves, beside the same page standing still: said and not judged, because it
/// depends on what else the machine does.
async fn frames(hand: &Hand, engine: Engine) -> Result<()> {
    let slowed = if engine == Engine::Chromium { 4 } else { 1 };
    for rate in [1, slowed] {
        throttle(hand, engine, rate).await?;
        let moving = hand.frames_a_second().await?;
        hand.click("#by-itself").await?;
        let still = hand.frames_a_second().await?;
        hand.click("#by-itself").await?;
        println!(
            "{}: the processor slowed {rate} times, {moving:.1} frames a second moving, {still:.1} standing still",
            engine.name()
        );
    }
    throttle(hand, engine, 1).await
}

async fn throttle(hand: &Hand, engine: Engine, rate: u32) -> Result<()> {
    if engine == Engine::Chromium {
        let cdp = hand.driver().cdp();
        cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": rate }))
            .await?;
    }
    Ok(())
}

/// Where the system asks for no motion, the streak waits for a finger.
async fn still(hand: &Hand, address: &str) -> Result<()> {
    let asked = json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] });
    hand.driver()
        .cdp()
        .send_raw("Emulation.setEmulatedMedia", asked)
        .await?;
    hand.go(&format!("{address}/practice")).await?;
    hand.read("#by-itself", "let the streak sweep").await
}
