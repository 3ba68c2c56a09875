//! Looking around among made-up people: one tap in, somebody found by the sound of the name, the years over which they were seen,
//! a round of a whole home, and one tap out.

use crate::Stage;
use crate::looks::look;
use anyhow::{Result, ensure};
use lightround_tests::{Engine, Hand};
use thirtyfour::{By, Key};

/// How many people are made up, as the first screen says.
const PEOPLE: usize = 60;

/// Plays it.
pub async fn look_around(stage: &mut Stage) -> Result<()> {
    let (hand, engine) = (stage.hand.clone(), stage.browser.engine);
    hand.go(stage.relay()?.address()).await?;
    hand.click("#look-around").await?;
    hand.see("#made-up-band").await?;
    hand.see(".person-row").await?;
    let rows = hand
        .ask("return document.querySelectorAll('.person-row').length")
        .await?;
    ensure!(rows == PEOPLE, "{rows} of {PEOPLE} people");
    years(&hand, engine).await?;
    round(&hand, engine).await?;
    hand.click("header a[href='/']").await?;
    hand.click("#to-vault").await?;
    hand.click("#to-settings").await?;
    hand.see("#figure-pressure-high").await?;
    look(&hand, engine, "settings").await?;
    hand.click("#lock").await?;
    hand.see("#look-around-again").await?;
    hand.click("#end-looking-around").await?;
    hand.see("#offered").await?;
    ensure!(
        !hand.is_there("#look-around-again").await?,
        "nobody made up is left"
    );
    Ok(())
}

/// Somebody whose name is spelt otherwise than it is typed, and what became of their eyes.
async fn years(hand: &Hand, engine: Engine) -> Result<()> {
    hand.size(360, 740).await?;
    // Where the page begins, the field is near the phone's lower edge, and going there brings it up.
    hand.ask("window.scrollTo(0, 0)").await?;
    hand.driver().find(By::Css("#find")).await?.click().await?;
    hand.keys("#find", "ankerfold").await?;
    hand.read("#found-people", "Anchorfold").await?;
    hand.until(
        "only who sounds like it",
        "return [...document.querySelectorAll('#found-people .person-row')].every((row) => row.textContent.includes('Anchorfold'))",
    )
    .await?;
    // The lower half is the keyboard's on a phone.
    hand.until(
        "who was found, in the upper half",
        "const name = document.querySelector('#found-people .person-who b').getBoundingClientRect();
        return name.top >= 0 && name.bottom <= innerHeight / 2",
    )
    .await?;
    hand.size(820, 1180).await?;
    hand.click("#found-people .person-who").await?;
    hand.see("#strip").await?;
    let newest = hand.text("#strip-picked").await?;
    hand.click("#strip").await?;
    hand.keys("#strip", Key::Home + "").await?;
    hand.until(
        "the oldest exam is picked",
        &format!(
            "return document.querySelector('#strip-picked').innerText !== {}",
            serde_json::Value::from(newest)
        ),
    )
    .await?;
    look(hand, engine, "story-over-the-years").await?;
    hand.click("header a[href='/']").await
}

/// A round of everybody at the first home: one asleep, and taken back; then the first is begun with.
async fn round(hand: &Hand, engine: Engine) -> Result<()> {
    hand.click("#new-round").await?;
    hand.see("#make-round").await?;
    look(hand, engine, "round-new").await?;
    hand.click("#make-round").await?;
    hand.click("#round-add summary").await?;
    hand.click("#add-all").await?;
    hand.see("[data-part=next] [data-part=begin]").await?;
    hand.click("li [id^='mark-asleep-']").await?;
    hand.read("main", "1 asleep").await?;
    hand.click("#visit-undo-act").await?;
    hand.until(
        "nobody is asleep",
        "return !document.querySelector('main').innerText.includes('1 asleep')",
    )
    .await?;
    look(hand, engine, "round").await?;
    hand.click("#to-rounds").await?;
    hand.see("[data-part=next]").await?;
    look(hand, engine, "rounds-with-one").await?;
    hand.click("[data-part=next] [data-part=begin]").await?;
    hand.read(".section-title", "History").await?;
    hand.click("#to-story").await
}
