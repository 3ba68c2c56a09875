//! Eyes that answer, played through the sweep pad by following the app's own next line.
//!
//! The plain rule is common practice, no source: with where more plus is needed, against where less, neutral between; with the
//! beam reversed, with and against change places. That it looks neutral within 0.20 D is this project's own choice.

use crate::Hand;
use crate::bedside::press;
use anyhow::{Context, Result, bail, ensure};
use serde_json::Value;

/// An eye: the lens that neutralises each meridian at the distance in use.
#[derive(Clone, Copy, Debug)]
pub struct Eye {
    /// "right" or "left".
    pub word: &'static str,
    /// Along the meridian nearer to lying, dioptres.
    pub lying: f64,
    /// Along the other, dioptres.
    pub standing: f64,
    /// One call in so many is wrong, the first of them this one; 0 for none.
    pub wrong_every: usize,
}

const ZONE: f64 = 0.20;
/// More sweeps than anybody's patience.
const MANY: usize = 40;

impl Eye {
    /// An eye that is never called wrongly.
    pub const fn plain(word: &'static str, lying: f64, standing: f64) -> Self {
        Self {
            word,
            lying,
            standing,
            wrong_every: 0,
        }
    }

    /// What a sweep shows.
    fn shows(&self, meridian: &str, lens: f64, reversed: bool) -> &'static str {
        let degrees: f64 = meridian.parse().unwrap_or(f64::NAN);
        let neutral = if (45.0..=135.0).contains(&degrees) {
            self.standing
        } else {
            self.lying
        };
        match neutral - lens {
            needs if needs.abs() <= ZONE => "neutral",
            needs if (needs > 0.0) == reversed => "against",
            _ => "with",
        }
    }

    /// What is called; a wrong call takes the next of the three.
    fn called(&self, sweep: usize, meridian: &str, lens: f64, reversed: bool) -> &'static str {
        let shown = self.shows(meridian, lens, reversed);
        if self.wrong_every == 0 || sweep % self.wrong_every != self.wrong_every - 1 {
            return shown;
        }
        match shown {
            "with" => "neutral",
            "neutral" => "against",
            _ => "with",
        }
    }
}

/// How an examiner does things on the pad.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// With a thumb.
    Touch,
    /// With keys.
    Keyboard,
}

/// What an examiner has done so far.
#[derive(Clone, Copy, Default, Debug)]
pub struct Count {
    /// Taps, or keys.
    pub taps: usize,
    /// Sweeps among them; the rest changed lens or meridian.
    pub sweeps: usize,
}

/// Opens retinoscopy on the pad.
///
/// # Errors
/// Where it does not open.
pub async fn open_the_pad(hand: &Hand) -> Result<()> {
    hand.click("#to-retinoscopy").await?;
    if !hand.is_there("#pad").await? {
        hand.click("#way-right-sweeps").await?;
    }
    hand.see("#pad").await?;
    Ok(())
}

/// Follows the next line, and answers as the eye would; false where there is nothing more to follow.
///
/// # Errors
/// Where the pad does not take it.
pub async fn sweep_once(hand: &Hand, eye: &Eye, by: By, count: &mut Count) -> Result<bool> {
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
        By::Touch => hand.tap("#take-next").await?,
        By::Keyboard => press(hand, "x").await?,
    }
    hand.until(
        "the advice taken up",
        r"return / for \d/.test(document.querySelector('#sweep-said').textContent)",
    )
    .await?;
    let (meridian, lens, reversed) = in_hand(hand).await?;
    let seen = eye.called(count.sweeps, &meridian, lens, reversed);
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

/// Sweeps until the app says that it is enough.
///
/// # Errors
/// Where it never says so.
pub async fn until_enough(hand: &Hand, eye: &Eye, by: By, count: &mut Count) -> Result<()> {
    for _ in 0..MANY {
        if !sweep_once(hand, eye, by, count).await? {
            return Ok(());
        }
    }
    bail!("{MANY} sweeps were not enough for a plain eye")
}

/// The power as the app writes it: with its sign and a true minus.
fn written(lens: f64) -> String {
    match lens {
        lens if lens < 0.0 => format!("\u{2212}{:.2}", -lens),
        lens if lens > 0.0 => format!("+{lens:.2}"),
        _ => "0.00".to_owned(),
    }
}

/// What is in hand: the lens in place, what the streak tests, and whether the beam is reversed, in one look.
const IN_HAND: &str = "return [
  document.querySelector('#lens-in-place').textContent,
  document.querySelector('#tests [aria-checked=true] .pick-label').textContent,
  document.querySelector('#beam-reversed[aria-checked=true]') !== null,
]";

/// The meridian that the streak tests, the lens in place, and whether the beam is reversed.
async fn in_hand(hand: &Hand) -> Result<(String, f64, bool)> {
    let [lens, tests, reversed] = serde_json::from_value(hand.ask(IN_HAND).await?)?;
    let text = |value: Value| value.as_str().map(|text| text.trim().to_owned());
    let lens = text(lens).context("a lens is in place")?;
    let lens = lens.replace('\u{2212}', "-").parse().context(lens)?;
    let meridian = text(tests).context("the streak tests a meridian")?;
    Ok((meridian, lens, reversed == Value::Bool(true)))
}
