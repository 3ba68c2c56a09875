//! The widgets under a real finger and a real keyboard: tap, hold, drag, type, arrows.

use crate::Stage;
use anyhow::{Context, Result, ensure};
use lightround_tests::Hand;
use lightround_tests::bedside::{begin_exam, make_vault};
use thirtyfour::Key;

const SPHERE: &str = "#frame-right-sphere";
const AXIS: &str = "#frame-right-axis";

/// Plays it.
pub async fn thumb_and_keyboard(stage: &mut Stage) -> Result<()> {
    let (hand, relay) = (stage.hand.clone(), stage.relay()?);
    make_vault(&hand, relay).await?;
    begin_exam(&hand).await?;
    picker(&hand).await?;
    hand.click("#to-retinoscopy").await?;
    hand.click("#way-right-frame").await?;
    stepper_by_thumb(&hand).await?;
    stepper_by_keyboard(&hand).await?;
    dial(&hand).await?;
    Ok(())
}

/// The picker: one stop for the tab key, arrows move.
async fn picker(hand: &Hand) -> Result<()> {
    hand.tap("#read-line-6-60").await?;
    hand.keys("#read-line-6-60", Key::Right + "").await?;
    hand.read("#acuity-right", "6/36").await?;
    hand.tap("#read-letters-plus-2").await?;
    hand.read("#acuity-right", "6/36 +2").await
}

async fn value_of(hand: &Hand, selector: &str) -> Result<f64> {
    let now = hand.see(selector).await?.attr("aria-valuenow").await?;
    now.context("the number is blank")?
        .parse()
        .context("the number is none")
}

async fn until_value(hand: &Hand, selector: &str, wanted: f64) -> Result<()> {
    until_that(hand, selector, &format!("=== {wanted}")).await
}

/// Waits until the number compares so: an input event is answered by the page, not by the driver that sent it.
async fn until_that(hand: &Hand, selector: &str, compares: &str) -> Result<()> {
    let script = format!(
        "return parseFloat(document.querySelector('{selector}').getAttribute('aria-valuenow')) {compares}"
    );
    hand.until(&format!("{selector} {compares}"), &script).await
}

async fn stepper_by_thumb(hand: &Hand) -> Result<()> {
    let (more, less) = (format!("{SPHERE}-more"), format!("{SPHERE}-less"));
    hand.tap(&more).await?;
    let there = format!("return document.querySelector('{SPHERE}').hasAttribute('aria-valuenow')");
    hand.until("a number", &there).await?;
    let first = value_of(hand, SPHERE).await?;
    hand.tap(&more).await?;
    until_value(hand, SPHERE, first + 0.25).await?;
    hand.tap(&less).await?;
    until_value(hand, SPHERE, first).await?;

    hand.hold(&more, 1500).await?;
    until_that(hand, SPHERE, &format!(">= {}", first + 0.75))
        .await
        .context("held for a second and a half, it goes on and on")?;
    let held = value_of(hand, SPHERE).await?;
    ensure!((held * 4.0).fract() == 0.0, "it stops on the step: {held}");
    hand.tap(&less).await?;
    until_value(hand, SPHERE, held - 0.25)
        .await
        .context("after the finger lifts nothing runs on")?;

    let before = value_of(hand, SPHERE).await?;
    hand.drag(SPHERE, (0, 0), (0, -120)).await?;
    until_that(hand, SPHERE, &format!("> {before}")).await
}

async fn stepper_by_keyboard(hand: &Hand) -> Result<()> {
    hand.click(SPHERE).await?;
    hand.keys(SPHERE, "-2,5".to_owned() + Key::Enter).await?;
    until_value(hand, SPHERE, -2.5).await?;
    hand.keys(SPHERE, Key::Up + "").await?;
    until_value(hand, SPHERE, -2.25).await?;
    hand.keys(SPHERE, Key::PageDown + "").await?;
    until_value(hand, SPHERE, -3.0)
        .await
        .context("a page key goes to the next whole dioptre")?;
    hand.read("#net-right", "−3.00")
        .await
        .context("the true minus sign stands")?;
    hand.keys(SPHERE, "7".to_owned() + Key::Escape).await?;
    until_value(hand, SPHERE, -3.0).await
}

async fn dial(hand: &Hand) -> Result<()> {
    hand.tap(&format!("{}-less", "#frame-right-cylinder"))
        .await?;
    let face = hand.see(AXIS).await?;
    let size = face.rect().await?;
    // The arc's top is 90: the dial is a half-circle with 0 and 180 at its ends (ISO 8429).
    hand.drag(AXIS, (0, -(size.height as i32) / 2 + 40), (0, 0))
        .await?;
    until_that(hand, AXIS, ">= 0").await?;
    let top = value_of(hand, AXIS).await?;
    ensure!(
        (top - 90.0).abs() <= 10.0,
        "tapped at its top, the dial says {top}"
    );
    // To the examiner's right the axis falls towards 0: angles run anticlockwise from there (ISO 8429).
    hand.drag(
        AXIS,
        (0, -(size.height as i32) / 2 + 40),
        (size.width as i32 / 4, 20),
    )
    .await?;
    until_that(hand, AXIS, &format!("< {top}")).await?;
    let right = value_of(hand, AXIS).await?;
    hand.keys(AXIS, Key::Up + "").await?;
    until_that(hand, AXIS, &format!("> {right}")).await?;
    let stepped = value_of(hand, AXIS).await?;
    ensure!(
        stepped - right <= 5.0,
        "an arrow key is one step: from {right} to {stepped}"
    );
    Ok(())
}
