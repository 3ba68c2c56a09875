//! Every tablet is lost: whoever keeps the relay writes what it has into a carry file, and that with the recovery sheet brings
//! everything back on an empty browser, which then opens the vault at the relay anew.

use crate::Stage;
use crate::seat::KeptRelay;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{begin_exam, decide_and_sign, make_vault, put_number};
use lightround_tests::{Browser, Hand, Relay};
use std::path::Path;

/// Plays it.
pub async fn brought_back(stage: &mut Stage) -> Result<()> {
    let (hand, place) = (stage.hand.clone(), stage.place.clone());
    stage.lose_the_server()?;
    let relay = KeptRelay::new(&place)?;
    make_vault(&hand, relay.running.as_ref().context("the relay runs")?).await?;
    let code = sheet(&hand).await?;
    at_the_relay(&hand, &relay).await?;
    examined(&hand).await?;
    hand.see("#home-state[data-home='all']").await?;
    hand.click("#to-vault").await?;
    hand.click("#go-home").await?;
    hand.see("#home-state[data-home='all']").await?;
    let entries = hand.text("#entries-here").await?;

    // The tablet goes, with everything on it.
    let empty = crate::fresh_profile(stage.browser.engine, "brought-back");
    let fresh = Browser::open(stage.browser.engine, &empty).await?;
    std::mem::replace(&mut stage.browser, fresh).close().await?;
    stage.hand = Hand::on(&stage.browser, &place);
    let hand = stage.hand.clone();
    hand.size(820, 1180).await?;
    let file = empty.join("from-the-relay.carry");
    let vault = vault(&relay)?;
    let to = file.to_str().context("a path in letters")?;
    let told = Relay::asked(
        &place,
        "carry",
        &relay.file(),
        &["--vault", &vault, "--to", to],
    )?;
    ensure!(told.contains("entries"), "{told}");

    hand.go(&relay.address()).await?;
    bring_back(&hand, &file, &code).await?;
    hand.read("#people", "Orla").await?;
    hand.click("#to-vault").await?;
    hand.see("#sheet-due").await?;
    let here = hand.text("#entries-here").await?;
    ensure!(here == entries, "{entries} entries before, and {here}");
    hand.click("header a[href='/']").await?;
    still_signed(&hand).await?;

    // The relay knows nobody of the tablets that are left, so it begins anew as well.
    Relay::asked(&place, "erase", &relay.file(), &["--vault", &vault])?;
    hand.click("#to-story").await?;
    hand.click("header a[href='/']").await?;
    at_the_relay(&hand, &relay).await?;
    let sound = Relay::told(&place, "verify", &relay.file())?;
    ensure!(sound.contains(" 0 things wrong"), "{sound}");
    let _ = std::fs::remove_dir_all(empty);
    Ok(())
}

/// Makes the sheet, and gives the code that is on it.
async fn sheet(hand: &Hand) -> Result<String> {
    hand.click("#sheet-now").await?;
    hand.click("#show-sheet").await?;
    hand.see("#recovery-sheet").await?;
    let groups = hand
        .ask("return [...document.querySelectorAll('.sheet-group')].map((group) => group.innerText).join(' ')")
        .await?;
    hand.click("#sheet-kept").await?;
    hand.see("#sheet-made").await?;
    hand.click("header a[href='/']").await?;
    let code = groups.as_str().context("the sheet has a code")?;
    Ok(code.to_owned())
}

/// Opens the vault at the relay, from the list and back.
async fn at_the_relay(hand: &Hand, relay: &KeptRelay) -> Result<()> {
    hand.click("#to-vault").await?;
    let code = Relay::told(&relay.place, "invite", &relay.file())?;
    hand.write("#invitation", code.trim()).await?;
    hand.click("#open-at-relay").await?;
    hand.see("#home-state[data-home='all']").await?;
    hand.read("#home-status", "The relay answers").await?;
    hand.click("header a[href='/']").await
}

async fn examined(hand: &Hand) -> Result<()> {
    begin_exam(hand).await?;
    hand.click("#to-subjective").await?;
    put_number(hand, "subjective-right-sphere", "1").await?;
    hand.click("#work-left").await?;
    put_number(hand, "subjective-left-sphere", "0.75").await?;
    hand.click("#to-decision").await?;
    decide_and_sign(hand).await?;
    hand.click("#to-story").await?;
    hand.see("#begin-exam").await?;
    hand.click("header a[href='/']").await
}

async fn bring_back(hand: &Hand, file: &Path, code: &str) -> Result<()> {
    hand.click("#to-bring-back").await?;
    let file = file.to_str().context("a path in letters")?;
    hand.pick("#carried", file).await?;
    hand.read("#carried-size", "kB").await?;
    hand.write("#examiner", "Ivo Castlemere").await?;
    hand.click("#written").await?;
    // Another sheet's code opens nothing, and nothing is kept.
    hand.write("#recovery-code", "no code at all").await?;
    hand.click("#bring-it-back").await?;
    hand.see("#bring-said:not(:empty)").await?;
    hand.shot("bring-back-refused").await?;
    hand.write("#recovery-code", code).await?;
    hand.click("#bring-it-back").await?;
    hand.see("#find").await.map(drop)
}

/// The exam is there as it was signed.
async fn still_signed(hand: &Hand) -> Result<()> {
    hand.click("#people a").await?;
    hand.click(".told h2 a").await?;
    hand.read("#signatures", lightround_tests::bedside::EXAMINER)
        .await?;
    hand.shot("brought-back").await
}

/// The id of the relay's one vault.
fn vault(relay: &KeptRelay) -> Result<String> {
    let told = Relay::told(&relay.place, "vaults", &relay.file())?;
    let line = told.lines().nth(1).context("a vault is told")?;
    let id = line.split_whitespace().next();
    Ok(id.context("and its id")?.to_owned())
}
