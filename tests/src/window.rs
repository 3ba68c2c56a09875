//! The window around the page: its size, and how many frames it draws.

use crate::Hand;
use anyhow::{Context, Result, bail};

/// Counts frames for two seconds.
const COUNT: &str = r"
const done = arguments[arguments.length - 1];
const began = performance.now();
let frames = 0;
const next = () => {
  frames += 1;
  const passed = performance.now() - began;
  if (passed < 2000) requestAnimationFrame(next); else done(frames * 1000 / passed);
};
requestAnimationFrame(next);";

/// How often a window is told its size.
const TRIES: usize = 12;

impl Hand {
    /// Makes the window so large that its inside has this many CSS pixels, or is as narrow as the engine allows.
    ///
    /// # Errors
    /// Where the browser refuses, or the page never hears of it.
    pub async fn size(&self, width: u32, height: u32) -> Result<()> {
        let mut outside = (width, height);
        // The second time the window's own frame is known; the third is for one that takes more rows when it is narrow, and the
        // rest for a page too busy to hear of it in time: as long as it has its old size, that size tells nothing of the frame.
        let mut came = (0, 0);
        for _ in 0..TRIES {
            self.driver()
                .set_window_rect(0, 0, outside.0, outside.1)
                .await?;
            let inside = self.ask_later(&grown_to(width, height)).await?;
            let pixels = |index: usize| inside[index].as_u64().and_then(|n| u32::try_from(n).ok());
            let (wide, high) = pixels(0).zip(pixels(1)).context("the page has no size")?;
            let heard = came != (wide, high);
            came = (wide, high);
            if wide >= width && high == height {
                return Ok(());
            }
            if heard {
                outside.0 += width.saturating_sub(wide);
                outside.1 = (outside.1 + height).saturating_sub(high);
            } else {
                outside = (width, height);
            }
        }
        bail!(
            "the page never came to {width} by {height}: it is {} by {}, in a window of {outside:?}",
            came.0,
            came.1
        )
    }

    /// How many frames a second the page draws, counted for two seconds.
    ///
    /// # Errors
    /// Where the browser doesn't answer.
    pub async fn frames_a_second(&self) -> Result<f64> {
        let counted = self.ask_later(COUNT).await?.as_f64();
        counted.context("no frames were counted")
    }
}

/// Answers with the page's width and height once it has these, or after a moment in which it has not: WebDriver says that
/// the window has its size before the page has heard of it.
fn grown_to(width: u32, height: u32) -> String {
    format!(
        "const done = arguments[0];
        const until = performance.now() + 500;
        const look = () => (innerWidth === {width} && innerHeight === {height}) || performance.now() > until
          ? done([innerWidth, innerHeight]) : setTimeout(look, 16);
        look();"
    )
}
