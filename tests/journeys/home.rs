//! What is written goes to the relay: opened there with an invitation, waiting while there is none, and all there in the end.

use crate::Stage;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{kept_for_offline, make_vault, unlock};
use lightround_tests::{Hand, Place, Relay};
use std::path::Path;
use std::time::Duration;
use tokio::time::{Instant, sleep};

/// No relay ever printed it.
const NEVER_GIVEN: &str = "7G2K-0DQM-8XRA-V5TN-3BHC-94WE";

/// Plays it.
pub async fn goes_home(stage: &mut Stage) -> Result<()> {
    let (hand, place) = (stage.hand.clone(), stage.place.clone());
    stage.lose_the_server()?;
    let folder = std::env::temp_dir().join(format!(
        "lightround-home-{}-{}",
        stage.browser.engine.name(),
        std::process::id()
    ));
    std::fs::create_dir_all(&folder)?;
    let data = folder.join("kept.sqlite");
    let relay = Relay::keeping(&place, "127.0.0.1:0", &data)?;
    let (host, address) = (relay.host().to_owned(), relay.address().to_owned());

    let passphrase = make_vault(&hand, &relay).await?;
    kept_for_offline(&hand).await?;
    hand.click("#to-vault").await?;
    hand.write("#invitation", NEVER_GIVEN).await?;
    hand.click("#open-at-relay").await?;
    hand.read("#invitation-error", "not valid").await?;
    let code = Relay::told(&place, "invite", &data)?;
    hand.write("#invitation", code.trim()).await?;
    hand.click("#open-at-relay").await?;
    hand.see("#home-state[data-home='all']").await?;
    hand.read("#home-status", "The relay answers").await?;
    hand.shot("home-all").await?;
    let before = entries(&place, &data)?;

    // The relay is gone: a person is written down all the same, and waits.
    relay.stop()?;
    put_down(&hand, "Orla").await?;
    hand.see("#home-state[data-home='waiting']").await?;
    hand.click("#home-state").await?;
    hand.read("#home-status", "be reached").await?;
    hand.shot("home-waiting").await?;

    // Locked and opened again without it, nothing is forgotten; then the relay is back.
    hand.go(&address).await?;
    unlock(&hand, &passphrase).await?;
    hand.see("#home-state[data-home='waiting']").await?;
    let relay = Relay::keeping(&place, &host, &data)?;
    hand.click("#home-state").await?;
    hand.click("#go-home").await?;
    hand.see("#home-state[data-home='all']").await?;
    // A person is two entries: a key, and what is written under it.
    let after = entries(&place, &data)?;
    ensure!(after == before + 2, "{before}, then {after}");
    // While there is a relay, what is written goes by itself.
    put_down(&hand, "Tamsin").await?;
    until_kept(&place, &data, after + 2).await?;
    hand.see("#home-state[data-home='all']").await?;
    let sound = Relay::told(&place, "verify", &data)?;
    println!("{}", sound.trim());
    relay.stop()?;
    std::fs::remove_dir_all(folder)?;
    Ok(())
}

async fn put_down(hand: &Hand, given: &str) -> Result<()> {
    hand.click("header a[href='/']").await?;
    hand.click("#new-person").await?;
    hand.write("#given", given).await?;
    hand.click("#keep-person").await?;
    hand.see("#begin-exam").await?;
    Ok(())
}

/// Waits until the relay has so many entries: the word at the top says “all home” before the first of them has set out, too.
async fn until_kept(place: &Place, data: &Path, wanted: u64) -> Result<()> {
    let until = Instant::now() + Duration::from_secs(45);
    loop {
        let kept = entries(place, data)?;
        if kept == wanted {
            return Ok(());
        }
        ensure!(
            kept < wanted && Instant::now() < until,
            "the relay keeps {kept} entries, not {wanted}"
        );
        sleep(Duration::from_millis(50)).await;
    }
}

/// How many entries the relay has of its one vault.
fn entries(place: &Place, data: &Path) -> Result<u64> {
    let told = Relay::told(place, "vaults", data)?;
    let vault = told.lines().nth(1).context("a vault is told")?;
    let number = vault.split_whitespace().nth(2).context("and its entries")?;
    number
        .parse()
        .with_context(|| format!("{number} is no number"))
}
