//! The tablet's own unlocking opens the vault where the browser lets it keep a key, and nothing of it is shown where not.

use crate::Stage;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{make_vault, make_vault_at, unlock};
use lightround_tests::{Authenticator, Engine, Hand};

/// Nobody's passphrase.
const ANOTHER: &str = "another phrase altogether, and a long one";

/// Plays it. Debian's Firefox and WebKit have no authenticator that a test could put in; Chromium has one.
pub async fn own_unlocking(stage: &mut Stage) -> Result<()> {
    match stage.browser.engine {
        Engine::Chromium => opened_by_it(stage).await,
        Engine::Firefox | Engine::WebKit => not_shown(stage).await,
    }
}

async fn opened_by_it(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    // A browser gives such keys to names only, and to no bare address.
    let address = stage.relay()?.address().replace("127.0.0.1", "localhost");
    let finger = Authenticator::put_in(&hand).await?;
    let passphrase = make_vault_at(&hand, &address).await?;
    set(&hand, &finger, &passphrase).await?;

    hand.click("#lock").await?;
    hand.click("#open-by-tablet").await?;
    hand.see_gone("#unlock").await?;
    hand.see("#by-tablet").await?;

    hand.go(&format!("{address}/vault")).await?;
    hand.click("#open-by-tablet").await?;
    hand.see_gone("#unlock").await?;

    // A finger that isn't the owner's: it is said, and the passphrase opens it still.
    finger.knows_nobody().await?;
    hand.click("#lock").await?;
    hand.click("#open-by-tablet").await?;
    hand.read("#unlock-said", "use the passphrase").await?;
    hand.shot("by-tablet-refused").await?;
    unlock(&hand, &passphrase).await?;
    not_any_more(&hand, &passphrase).await
}

/// A wrong passphrase leaves no key behind, the right one does.
async fn set(hand: &Hand, finger: &Authenticator, passphrase: &str) -> Result<()> {
    hand.click("#to-vault").await?;
    hand.click("#by-tablet summary").await?;
    hand.write("#by-tablet-passphrase", ANOTHER).await?;
    hand.click("#by-tablet-set").await?;
    hand.read("#by-tablet-passphrase-error", "passphrase")
        .await?;
    ensure!(finger.keys().await? == 0, "a key for a wrong passphrase");
    hand.write("#by-tablet-passphrase", passphrase).await?;
    hand.click("#by-tablet-set").await?;
    hand.see("#by-tablet-remove").await?;
    hand.shot("by-tablet-set").await?;
    ensure!(finger.keys().await? == 1, "one key is kept");
    Ok(())
}

async fn not_any_more(hand: &Hand, passphrase: &str) -> Result<()> {
    hand.click("#by-tablet summary").await?;
    hand.click("#by-tablet-remove").await?;
    hand.see("#by-tablet-set").await?;
    hand.click("#lock").await?;
    asks_for_the_passphrase(hand, passphrase).await
}

/// After a wrong passphrase was answered the gate has long looked into the key file.
async fn asks_for_the_passphrase(hand: &Hand, passphrase: &str) -> Result<()> {
    hand.write("#passphrase", ANOTHER).await?;
    hand.click("#open-vault").await?;
    hand.read("#unlock-said", "passphrase").await?;
    ensure!(
        !hand.is_there("#open-by-tablet").await?,
        "the tablet's own unlocking is offered"
    );
    unlock(hand, passphrase).await
}

async fn not_shown(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    let passphrase = make_vault(&hand, stage.relay()?).await?;
    hand.click("#to-vault").await?;
    hand.see("#to-passphrase").await?;
    // Its answer comes a moment after the page.
    let offered = "setTimeout((done) => done(document.querySelector('#by-tablet') !== null), 1000, arguments[0])";
    ensure!(
        hand.ask_later(offered).await? == false,
        "an own unlocking is offered that isn't there"
    );
    hand.click("#lock").await?;
    asks_for_the_passphrase(&hand, &passphrase)
        .await
        .context("without an own unlocking the passphrase opens it as ever")
}
