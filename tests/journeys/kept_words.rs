//! Words that stand nowhere else: a pair jotted on a slip, and a letter's question, which is a draft while it is written, leaves
//! with the paper, and is kept as it left.

use crate::Stage;
use crate::looks::look;
use anyhow::Result;
use lightround_tests::bedside::{
    EXAMINER, acuity, begin_exam, make_vault, retinoscopy_left, retinoscopy_right, subjective,
};
use lightround_tests::{Engine, Hand};

/// Invented words.
const ASKED: &str = "Please say whether the left lens is to come out";
const LATER: &str = "Please see her in the morning";

/// Plays it.
pub async fn kept(stage: &mut Stage) -> Result<()> {
    let (hand, engine) = (stage.hand.clone(), stage.browser.engine);
    make_vault(&hand, stage.relay()?).await?;
    begin_exam(&hand).await?;
    a_slip(&hand, engine).await?;
    referred(&hand).await?;
    hand.click("#to-papers").await?;
    hand.click("#paper-referral").await?;
    write(&hand, ASKED).await?;

    // Left before it was made: what was written is there again.
    hand.click("#back-to-papers").await?;
    hand.click("#paper-referral").await?;
    hand.read("#document", ASKED).await?;
    look(&hand, engine, "paper-referral").await?;
    hand.click("#make-pdf").await?;
    hand.click("#pdf-go").await?;
    hand.read("#pdf-said", "Saved as").await?;
    // Nothing takes words while the sheet that asked is still going.
    hand.see_gone("#pdf-go").await?;
    write(&hand, LATER).await?;

    // What left is kept as it left, whatever is written afterwards.
    hand.click("#back-to-papers").await?;
    hand.read("#papers-left", EXAMINER).await?;
    hand.click("#left-0 summary").await?;
    hand.read("#left-0", ASKED).await?;
    // Firefox has opened the PDF in a tab of its own before this one: here nothing hears of another size any more.
    if engine == Engine::Firefox {
        return Ok(());
    }
    look(&hand, engine, "papers-left").await
}

/// A pair as it stands on a slip; one that can't be read stays, to be put right.
async fn a_slip(hand: &Hand, engine: Engine) -> Result<()> {
    hand.click("#to-worn-glasses").await?;
    hand.click("#jotted summary").await?;
    hand.write("#jotted-text", "R +2.50/-1.00 L +2.25").await?;
    hand.click("#jotted-take").await?;
    hand.read("#jotted-text-error", "right eye").await?;
    look(hand, engine, "jotted").await?;
    hand.write("#jotted-text", "R +2.50/-1.00x90 L +2.25 add +2.50")
        .await?;
    hand.click("#jotted-take").await?;
    hand.read("main", "+2.50 / −1.00 × 90").await?;
    hand.read("main", "+2.25 DS").await?;
    hand.click("#next").await?;
    hand.click("#to-acuity").await?;
    acuity(hand).await
}

/// An exam that ends in a referral, signed.
async fn referred(hand: &Hand) -> Result<()> {
    retinoscopy_right(hand).await?;
    retinoscopy_left(hand).await?;
    hand.click("#next").await?;
    subjective(hand).await?;
    hand.click("#glasses-prescribe").await?;
    hand.click("#refer-soon").await?;
    hand.write("#refer-to", "the eye clinic").await?;
    hand.click("#next").await?;
    hand.click("#sign").await?;
    hand.read("#signatures", EXAMINER).await
}

/// Writes what is asked into the letter, and sees it on the paper.
async fn write(hand: &Hand, words: &str) -> Result<()> {
    if !hand.is_there("#letter-asked").await? {
        hand.click("#paper-words summary").await?;
    }
    hand.write("#letter-asked", words).await?;
    hand.read("#document", words).await
}
