//! Retinoscopy sweep by sweep: an eye that answers by the plain rule is played through the pad by touch, following the
//! app's own next line each time; taking back, a contradiction, a tablet that dies in mid-sweeping, and the paper.
//!
//! The plain rule is common practice, no source: with where more plus is needed, against where less, neutral between. That it
//! looks neutral within 0.20 D is this project's own choice.

use crate::Stage;
use crate::bedside::{self, begin_exam, make_vault, unlock};
use crate::prints::on_both_papers;
use anyhow::{Context, Result, bail, ensure};
use lightround_tests::{Engine, Hand};

/// An eye at 67 cm: the lens that neutralises each meridian.
struct Eye {
    word: &'static str,
    lying: f64,
    standing: f64,
}

/// Neutral with +4.00 along 180 and +2.50 along 90; so the lens at neutral is +4.00 / −1.50 × 180, and 1.50 less for 67 cm is
/// +2.50 / −1.50 × 180: by hand.
const RIGHT: Eye = Eye {
    word: "right",
    lying: 4.00,
    standing: 2.50,
};
/// Neutral with +3.75 along both, so +2.25 with the distance off: by hand.
const LEFT: Eye = Eye {
    word: "left",
    lying: 3.75,
    standing: 3.75,
};
const ZONE: f64 = 0.20;
/// More sweeps than anybody's patience.
const MANY: usize = 40;

impl Eye {
    /// What a sweep shows; with the beam reversed, with and against change places.
    fn shows(&self, meridian: &str, lens: f64, reversed: bool) -> &'static str {
        let neutral = if meridian == "180" {
            self.lying
        } else {
            self.standing
        };
        match neutral - lens {
            needs if needs.abs() <= ZONE => "neutral",
            needs if (needs > 0.0) == reversed => "against",
            _ => "with",
        }
    }
}

/// How an examiner does things on the pad.
#[derive(Clone, Copy, PartialEq, Eq)]
enum By {
    Touch,
    Keyboard,
}

/// What an examiner has done so far.
#[derive(Default)]
struct Count {
    taps: usize,
    sweeps: usize,
}

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
    let said = hand
        .ask("return document.querySelector('#sweep-said').textContent")
        .await?;
    ensure!(
        said.as_str().is_some_and(|said| said.contains(" at ")),
        "a screen reader hears the sweep: {said}"
    );
    Ok(())
}

async fn open_the_pad(hand: &Hand) -> Result<()> {
    hand.click("#to-retinoscopy").await?;
    hand.click("#way-right-sweeps").await?;
    hand.see("#pad").await?;
    Ok(())
}

/// Presses a key with the focus on nothing that writes.
async fn press(hand: &Hand, key: &str) -> Result<()> {
    hand.keys("body", key).await
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

/// Follows the next line, and answers as the eye would; false where there is nothing more to follow.
async fn sweep_once(hand: &Hand, eye: &Eye, by: By, count: &mut Count) -> Result<bool> {
    let advice = format!("#advice-{}", eye.word);
    let said = hand.text(&advice).await?;
    if said.starts_with("Enough") {
        return Ok(false);
    }
    ensure!(
        !said.starts_with("more sweeping"),
        "a plain eye is told in the end: {said}"
    );
    match by {
        By::Touch => hand.tap(&advice).await?,
        By::Keyboard => press(hand, "x").await?,
    }
    hand.until(
        "the advice taken up",
        r"return / for \d/.test(document.querySelector('#sweep-said').textContent)",
    )
    .await?;
    let (meridian, lens) = in_hand(hand).await?;
    let reversed = hand.is_there("#beam-reversed[aria-checked=true]").await?;
    let seen = eye.shows(&meridian, lens, reversed);
    match by {
        By::Touch => hand.tap(&format!("#seen-{seen}")).await?,
        By::Keyboard => press(hand, &seen[..1]).await?,
    }
    let beam = if reversed { ", beam reversed" } else { "" };
    count.taps += 2;
    count.sweeps += 1;
    hand.read(
        "#last-sweep",
        &format!("{meridian} at {}{beam}: {seen}", written(lens)),
    )
    .await?;
    Ok(true)
}

/// The power as the app writes it: with its sign and a true minus.
fn written(lens: f64) -> String {
    match lens {
        lens if lens < 0.0 => format!("\u{2212}{:.2}", -lens),
        lens if lens > 0.0 => format!("+{lens:.2}"),
        _ => "0.00".to_owned(),
    }
}

/// The meridian that the streak tests, and the lens in place.
async fn in_hand(hand: &Hand) -> Result<(String, f64)> {
    let lens = hand.text("#lens-in-place").await?.replace('\u{2212}', "-");
    let tests = hand.text("#tests [aria-checked=true]").await?;
    // The word before it is drawn by the style sheet, and some engines count it as text.
    let meridian = tests.trim_start_matches("tests").trim();
    let lens = lens.parse().with_context(|| lens.clone())?;
    Ok((meridian.to_owned(), lens))
}

async fn until_enough(hand: &Hand, eye: &Eye, by: By, count: &mut Count) -> Result<()> {
    for _ in 0..MANY {
        if !sweep_once(hand, eye, by, count).await? {
            return Ok(());
        }
    }
    bail!("{MANY} sweeps were not enough for a plain eye")
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
