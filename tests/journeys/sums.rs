//! A sum on the back of an envelope: found, filled in, answered, and what is wrong said at its field.

use crate::Stage;
use crate::looks::look;
use anyhow::{Result, ensure};
use lightround_tests::Hand;
use lightround_tests::bedside::make_vault;

/// Plays it.
pub async fn a_sum(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    make_vault(&hand, stage.relay()?).await?;
    hand.click("#to-sums").await?;
    hand.see("#sum-vertex > summary").await?;
    look(&hand, stage.browser.engine, "sums").await?;
    answered(&hand).await?;
    look(&hand, stage.browser.engine, "sum-answered").await?;
    refused(&hand).await?;
    look(&hand, stage.browser.engine, "sum-refused").await?;
    not_kept(&hand).await
}

/// Computed from F / (1 − d F): −10.00 at 12 mm is −10 / 1.12 = −8.93 on the cornea.
async fn answered(hand: &Hand) -> Result<()> {
    hand.click("#sum-vertex > summary").await?;
    hand.write("#sum-vertex-lens", "-10.00").await?;
    hand.write("#sum-vertex-from", "12").await?;
    ensure!(
        !hand.is_there("#sum-vertex-answer dl").await?,
        "nothing is answered before everything is asked"
    );
    hand.write("#sum-vertex-to", "0").await?;
    hand.read("#sum-vertex-answer", "−8.93 DS").await?;
    hand.read("#sum-vertex-answer", "−9.00 DS").await
}

async fn refused(hand: &Hand) -> Result<()> {
    hand.write("#sum-vertex-lens", "10.00").await?;
    hand.read("#sum-vertex-lens-error", "has no sign").await?;
    hand.see("#sum-vertex-lens[aria-invalid=true]").await?;
    hand.see_gone("#sum-vertex-answer dl").await?;
    // Each is good by itself, and there is no answer: a lens of no power gives no prism.
    hand.click("#sum-decentre > summary").await?;
    hand.write("#sum-decentre-eye", "right").await?;
    hand.write("#sum-decentre-lens", "0.00").await?;
    hand.write("#sum-decentre-prism", "2.00 in").await?;
    hand.read("#sum-decentre-answer", "the lens has no power")
        .await
}

async fn not_kept(hand: &Hand) -> Result<()> {
    hand.click("header a[href='/']").await?;
    hand.click("#to-sums").await?;
    hand.click("#sum-vertex > summary").await?;
    hand.see("#sum-vertex-lens").await?;
    let typed = hand
        .ask("return document.querySelector('#sum-vertex-lens').value")
        .await?;
    ensure!(typed == "", "what was typed is kept: {typed}");
    Ok(())
}
