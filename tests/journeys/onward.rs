//! What retinoscopy hands on: the fog reminder, the pictures, and one tap to the subjective.

use crate::Stage;
use crate::looks::look;
use anyhow::{Result, ensure};
use lightround_tests::bedside::{begin_exam, begin_exam_of, make_vault, retinoscopy_right};
use lightround_tests::{Engine, Hand};

/// Plays it.
pub async fn handed_on(stage: &mut Stage) -> Result<()> {
    let (hand, relay, engine) = (stage.hand.clone(), stage.relay()?, stage.browser.engine);
    make_vault(&hand, relay).await?;
    fogged(&hand).await?;
    begin_exam(&hand).await?;
    hand.click("#to-retinoscopy").await?;
    hand.see("#eye-left").await?;
    // Hofstetter 1950 (from memory): nothing is left to fog from 60 on.
    ensure!(
        !hand.is_there("#fog-left").await?,
        "there is nothing to fog at 86"
    );
    ensure!(
        !hand.is_there("#start-subjective-right").await?,
        "nothing was found yet"
    );
    retinoscopy_right(&hand).await?;
    hand.tap("#see-right summary").await?;
    hand.read("#plane-right-words", "+2.50 / −1.50 × 180")
        .await?;
    // By hand: +2.50/−1.50×180 has +2.50 along 180 and +1.00 along 90.
    let cross = hand.see("#cross-right").await?.attr("aria-label").await?;
    ensure!(
        cross.as_deref() == Some("right eye, power cross: along 180 +2.50, along 90 +1.00"),
        "the cross says {cross:?}"
    );
    look(&hand, engine, "retinoscopy-see").await?;
    pictures(&hand, engine).await?;
    hand.tap("#start-subjective-right").await?;
    hand.read(
        "#started-right",
        "starts from retinoscopy: +2.50 / −1.50 × 180, 67 cm taken off",
    )
    .await?;
    hand.read("#subjective-right-written", "+2.50 / −1.50 × 180")
        .await?;
    look(&hand, engine, "subjective-started").await?;
    Ok(())
}

/// A younger person's waiting eye wants fog, until something is found of it.
async fn fogged(hand: &Hand) -> Result<()> {
    begin_exam_of(hand, "Rosa", 34).await?;
    hand.click("#to-retinoscopy").await?;
    hand.read("#fog-left", "fog this eye").await?;
    retinoscopy_right(hand).await?;
    hand.click("#work-left").await?;
    hand.see_gone("#fog-left").await?;
    ensure!(!hand.is_there("#fog-right").await?, "it is said once");
    hand.click("#to-story").await?;
    hand.click("header a[href='/']").await
}

/// The pictures alone, for the eye that looks at the shots.
async fn pictures(hand: &Hand, engine: Engine) -> Result<()> {
    for (size, width, height) in [("phone", 360, 740), ("tablet", 820, 1180)] {
        hand.size(width, height).await?;
        for palette in ["day", "night"] {
            hand.ask(&format!(
                "document.documentElement.dataset.palette = '{palette}'"
            ))
            .await?;
            hand.ask("document.querySelector('#cross-right').scrollIntoView({ block: 'start' })")
                .await?;
            hand.shot(&format!("plane-{size}-{palette}")).await?;
        }
    }
    hand.ask("document.documentElement.dataset.palette = 'day'")
        .await?;
    ensure!(
        hand.see("#plane-right").await?.rect().await?.width > 0.0,
        "{} draws no plane",
        engine.name()
    );
    Ok(())
}
