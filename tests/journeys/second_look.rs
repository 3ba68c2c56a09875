//! The second look: a slip is asked about while it is written and before the signature, and a reason answers it for good.

use crate::Stage;
use crate::looks::look;
use anyhow::{Result, ensure};
use lightround_tests::bedside::{
    begin_exam, decide_and_sign, make_vault, put_number, retinoscopy_left, retinoscopy_right,
};

/// Whether the first question's words lie within the window.
const IN_SIGHT: &str =
    "const box = document.querySelector('#second-look li p').getBoundingClientRect();
    return box.top >= 0 && box.bottom <= innerHeight";

/// Plays it: the distance is taken off a second time in both eyes, the classic slip of the trade (common practice, no source).
pub async fn asked_and_answered(stage: &mut Stage) -> Result<()> {
    let (hand, relay, engine) = (stage.hand.clone(), stage.relay()?, stage.browser.engine);
    make_vault(&hand, relay).await?;
    begin_exam(&hand).await?;
    hand.click("#to-retinoscopy").await?;
    retinoscopy_right(&hand).await?;
    retinoscopy_left(&hand).await?;
    ensure!(
        !hand.is_there("#second-look").await?,
        "a plain retinoscopy raises nothing"
    );
    hand.click("#next").await?;
    // Retinoscopy is +2.50 / −1.50 × 180 and +2.25 / −1.00 × 85; 1.50 less is +1.00 and +0.75: by hand.
    hand.click("#start-right-0").await?;
    put_number(&hand, "subjective-right-sphere", "1").await?;
    hand.click("#work-left").await?;
    hand.click("#start-left-0").await?;
    put_number(&hand, "subjective-left-sphere", "0.75").await?;
    let asked = "#asked-distance-slip-both";
    hand.read(asked, "distance").await?;
    hand.read("#to-second-look", "question").await?;
    hand.tap("#to-second-look").await?;
    hand.until("the question in sight", IN_SIGHT).await?;
    look(&hand, engine, "second-look").await?;
    // She looks no farther than the room, so lenses found at 3 m are meant to be for it.
    hand.see("#asked-near-chart-both").await?;
    hand.click("#for-the-room").await?;
    hand.see_gone("#asked-near-chart-both").await?;
    hand.click("#next").await?;
    hand.see("#task").await?;
    hand.click("#to-sign").await?;
    hand.see(asked).await?;
    hand.tap("#why-distance-slip-both summary").await?;
    look(&hand, engine, "sign-second-look").await?;
    hand.tap("#keep-answer-distance-slip-both").await?;
    hand.read(asked, "say why it is right").await?;
    hand.write(
        "#answer-distance-slip-both",
        "she has worn this for years and reads well with it",
    )
    .await?;
    hand.tap("#keep-answer-distance-slip-both").await?;
    hand.see_gone(asked).await?;
    hand.read("#answers", "she has worn this for years").await?;
    hand.click("#to-decision").await?;
    decide_and_sign(&hand).await
}
