//! Retinoscopy sweep by sweep: an eye that answers by the plain rule is played through the pad by touch, following the
//! app's own next line each time; taking back, a contradiction, a tablet that dies in mid-sweeping, and the paper.

use crate::Stage;
use crate::prints::on_both_papers;
use anyhow::{Context, Result};
use lightround_tests::bedside::{self, begin_exam, begin_exam_of, make_vault, press, unlock};
use lightround_tests::playing::{By, Count, Eye, open_the_pad, sweep_once, until_enough};
use lightround_tests::{Engine, Hand};

/// Neutral with +4.00 along 180 and +2.50 along 90; so the lens at neutral is +4.00 / −1.50 × 180, and 1.50 less for 67 cm is
/// +2.50 / −1.50 × 180: by hand.
const RIGHT: Eye = Eye::plain("right", 4.00, 2.50);
/// Neutral with +3.75 along both, so +2.25 with the distance off: by hand.
const LEFT: Eye = Eye::plain("left", 3.75, 3.75);

/// Plays it.
pub async fn sweep_by_sweep(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    let passphrase = make_vault(&hand, stage.relay()?).await?;
    begin_exam(&hand).await?;
    open_the_pad(&hand).await?;
    take_back(&hand).await?;
    contradiction(&hand).await?;

    let mut count = Count::default();
    sweep_once(&hand, &RIGHT, By::Touch, &mut count).await?;
    sweep_once(&hand, &RIGHT, By::Touch, &mut count).await?;
    let here = hand.driver().current_url().await?.to_string();
    hand.see("#kept[data-keeping=kept]").await?;
    stage.tablet_dies().await?;
    let hand = stage.hand.clone();
    hand.go(&here).await?;
    unlock(&hand, &passphrase).await?;
    hand.read("#eye-right", "2 sweeps")
        .await
        .context("every sweep outlives the tablet")?;

    until_enough(&hand, &RIGHT, By::Touch, &mut count).await?;
    say_count(&hand, &RIGHT, &count).await?;
    hand.read("#net-off-right", "+2.50 / −1.50 × 180").await?;
    hand.read("#advice-right", "change the sphere +4.00 to +2.50")
        .await?;
    moved_in(&hand).await?;
    hand.shot("sweeps-enough").await?;

    hand.tap("#work-left").await?;
    let mut count = Count::default();
    until_enough(&hand, &LEFT, By::Touch, &mut count).await?;
    say_count(&hand, &LEFT, &count).await?;
    hand.read("#net-off-left", "+2.25 DS").await?;
    hand.click("#next").await?;
    signed_and_printed(stage).await
}

/// Five people's eyes from nothing: what neutralises each, and what that comes to with 67 cm off, by hand. Every eleventh call
/// of the later ones is wrong.
const PAIRS: [(&str, [Eye; 2], [&str; 2]); 5] = [
    (
        "Ines",
        [
            Eye::plain("right", 1.50, 1.50),
            Eye::plain("left", 1.25, 1.75),
        ],
        ["0.00", "+0.25 / −0.50 × 90"],
    ),
    (
        "Tam",
        [
            Eye::plain("right", -2.50, -4.00),
            Eye::plain("left", -3.25, -3.25),
        ],
        ["−4.00 / −1.50 × 180", "−4.75 DS"],
    ),
    (
        "Brin",
        [
            Eye::plain("right", 7.75, 6.25),
            Eye::plain("left", 6.50, 7.50),
        ],
        ["+6.25 / −1.50 × 180", "+6.00 / −1.00 × 90"],
    ),
    (
        "Sorrel",
        [erring("right", 3.00, 4.25), erring("left", 2.75, 3.00)],
        ["+2.75 / −1.25 × 90", "+1.50 / −0.25 × 90"],
    ),
    (
        "Wick",
        [erring("right", 0.25, -0.75), erring("left", 12.50, 11.50)],
        ["−1.25 / −1.00 × 180", "+11.00 / −1.00 × 180"],
    ),
];

const fn erring(word: &'static str, lying: f64, standing: f64) -> Eye {
    let eye = Eye::plain(word, lying, standing);
    Eye {
        wrong_every: 11,
        ..eye
    }
}

/// Ten whole eyes through the pad, no lens known beforehand.
pub async fn ten_eyes(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    make_vault(&hand, stage.relay()?).await?;
    for (given, eyes, nets) in PAIRS {
        begin_exam_of(&hand, given, 84).await?;
        open_the_pad(&hand).await?;
        for (eye, net) in eyes.iter().zip(nets) {
            hand.tap(&format!("#work-{}", eye.word)).await?;
            let mut count = Count::default();
            until_enough(&hand, eye, By::Touch, &mut count).await?;
            say_count(&hand, eye, &count).await?;
            hand.read(&format!("#net-off-{}", eye.word), net)
                .await
                .with_context(|| format!("{given}: {eye:?}"))?;
        }
        hand.click("#to-story").await?;
        hand.click("header a[href='/']").await?;
    }
    Ok(())
}

/// The same eye from a keyboard alone.
pub async fn sweep_by_keyboard(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    make_vault(&hand, stage.relay()?).await?;
    begin_exam(&hand).await?;
    open_the_pad(&hand).await?;
    let mut count = Count::default();
    press(&hand, "b").await?;
    hand.see("#beam-reversed[aria-checked=true]").await?;
    press(&hand, "b").await?;
    press(&hand, "+").await?;
    hand.read("#lens-in-place", "+0.25").await?;
    press(&hand, "-").await?;
    press(&hand, "m").await?;
    hand.see("#tests-second[aria-checked=true]").await?;
    press(&hand, "t").await?;
    hand.read("#last-sweep", "90 at 0.00: can’t tell").await?;
    press(&hand, "u").await?;
    hand.read("#last-sweep", "no sweep yet").await?;
    until_enough(&hand, &RIGHT, By::Keyboard, &mut count).await?;
    say_count(&hand, &RIGHT, &count).await?;
    hand.read("#net-off-right", "+2.50 / −1.50 × 180").await?;
    hand.until(
        "the sweep for a screen reader",
        "return document.querySelector('#sweep-said').textContent.includes(' at ')",
    )
    .await
}

async fn take_back(hand: &Hand) -> Result<()> {
    hand.tap("#lens-more").await?;
    hand.tap("#seen-with").await?;
    hand.read("#last-sweep", "180 at +0.25: with").await?;
    hand.read("#eye-right", "1 sweep").await?;
    hand.tap("#undo-sweep").await?;
    hand.read("#last-sweep", "no sweep yet").await?;
    hand.tap("#beam-reversed").await?;
    hand.read("#seen-with", "less plus")
        .await
        .context("with the beam reversed the ways change places")?;
    hand.tap("#beam-normal").await?;
    hand.tap("#lens-less").await
}

/// With at +3.00 and against at nought in one meridian can't both be right.
async fn contradiction(hand: &Hand) -> Result<()> {
    hand.tap("#seen-against").await?;
    hand.tap("#seen-against").await?;
    hand.hold("#lens-more", 2200).await?;
    hand.tap("#seen-with").await?;
    hand.tap("#seen-with").await?;
    hand.read("#advice-right", "both be right").await?;
    hand.shot("sweeps-contradiction").await?;
    for left in (0..4).rev() {
        hand.tap("#undo-sweep").await?;
        let swept = if left == 0 {
            "no sweep yet".to_owned()
        } else {
            String::from("180 at")
        };
        hand.read("#last-sweep", &swept).await?;
    }
    Ok(())
}

async fn say_count(hand: &Hand, eye: &Eye, count: &Count) -> Result<()> {
    let found = hand.text(&format!("#net-off-{}", eye.word)).await?;
    println!(
        "the {} eye took {} sweeps, {} taps or keys: {found}",
        eye.word, count.sweeps, count.taps
    );
    Ok(())
}

async fn moved_in(hand: &Hand) -> Result<()> {
    hand.tap("#move-in").await?;
    hand.tap("#moved-in-yes").await?;
    hand.read("#sweep-asides", "with in both when moved in")
        .await
}

async fn signed_and_printed(stage: &Stage) -> Result<()> {
    let hand = &stage.hand;
    bedside::subjective(hand).await?;
    bedside::decide_and_sign(hand).await?;
    hand.click("#to-retinoscopy").await?;
    hand.read("#signed-section", "+2.50 / −1.50 × 180").await?;
    hand.read("#signed-section", "sweeps").await?;
    hand.click("#to-sign").await?;
    hand.click("#to-prescription").await?;
    for cell in ["+2.50", "−1.50", "180"] {
        hand.read("#rx-right", cell).await?;
    }
    hand.read("#rx-left", "+2.25").await?;
    if stage.browser.engine.prints() {
        let mut lines = vec!["Orla Pennyquick"];
        // Firefox's file does not tell which figure a drawn figure is.
        if stage.browser.engine == Engine::Chromium {
            lines.extend(["+2.50", "−1.50", "180", "+2.25"]);
        }
        on_both_papers(hand, &lines).await?;
    }
    Ok(())
}
