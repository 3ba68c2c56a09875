//! What one tablet writes appears on the other without a tap, and does so still after the relay was restarted.

use crate::equal::to_the_list;
use crate::seat::{KeptRelay, Seat};
use crate::{AT_ONCE, BROWSERS};
use anyhow::{Context, Result};
use lightround_tests::bedside::make_vault;
use lightround_tests::joining::{Newcomer, join};
use lightround_tests::{Engine, Hand, Place, Relay};
use serde_json::json;

/// Invented.
const CLINICIAN: Newcomer<'_> = Newcomer {
    examiner: "Ivo Castlemere",
    tablet: "harbour tablet",
    role: "clinician",
};

#[tokio::test]
async fn chromium_and_firefox_hear_of_each_other() -> Result<()> {
    both_hear(Engine::Chromium, Engine::Firefox).await
}

#[tokio::test]
async fn webkit_and_chromium_hear_of_each_other() -> Result<()> {
    both_hear(Engine::WebKit, Engine::Chromium).await
}

async fn both_hear(first: Engine, second: Engine) -> Result<()> {
    // Two browsers for one journey.
    let _all = BROWSERS.acquire_many(AT_ONCE).await?;
    let place = Place::from_env()?;
    let mut lead = Seat::open(&place, first).await?;
    let mut other = Seat::open(&place, second).await?;
    let relay = KeptRelay::new(&place)?;
    let played = play(relay, &mut lead, &mut other).await;
    for seat in [lead, other] {
        if played.is_err() {
            let _ = seat.hand.shot("failed-news").await;
        }
        seat.close().await?;
    }
    played
}

async fn play(mut relay: KeptRelay, lead: &mut Seat, other: &mut Seat) -> Result<()> {
    let (one, two) = (&lead.hand, &other.hand);
    make_vault(one, relay.running.as_ref().context("the relay runs")?).await?;
    one.click("#to-vault").await?;
    let code = Relay::told(&relay.place, "invite", &relay.file())?;
    one.write("#invitation", code.trim()).await?;
    one.click("#open-at-relay").await?;
    one.see("#home-state[data-home='all']").await?;
    join(one, two, &relay.address(), CLINICIAN).await?;
    to_the_list(one).await?;

    // The first may be brought by the round of whoever has just come in; the next can only be heard of, for without news
    // a tablet asks every three minutes.
    for (from, to, given) in [(one, two, "Rosa"), (one, two, "Maud"), (two, one, "Ivo")] {
        appears(from, to, given).await?;
    }

    relay.taken()?.end().context("ends when it is asked")?;
    relay.start()?;
    // Again the first may come by a round that is tried anew.
    for (from, to, given) in [
        (two, one, "Linnet"),
        (two, one, "Tamsin"),
        (one, two, "Bram"),
    ] {
        appears(from, to, given).await?;
    }
    Ok(())
}

/// Somebody who is put down on the one is on the other's list, which nobody touches.
async fn appears(from: &Hand, to: &Hand, given: &str) -> Result<()> {
    from.click("#new-person").await?;
    from.write("#given", given).await?;
    from.click("#keep-person").await?;
    from.see("#begin-exam").await?;
    from.click("header a[href='/']").await?;
    from.see("#find").await?;
    to.read("#people", given)
        .await
        .with_context(|| format!("{given} was written on the other tablet"))
}

/// A page behind others is woken by the worker, which the browser tells of a network that is there again. There is no such
/// network to lose on one machine, so the browser is told to say it.
#[tokio::test]
async fn a_page_that_the_worker_wakes_exchanges_at_once() -> Result<()> {
    let _one = BROWSERS.acquire().await?;
    let place = Place::from_env()?;
    let seat = Seat::open(&place, Engine::Chromium).await?;
    let relay = KeptRelay::new(&place)?;
    let played = woken(&relay, &seat.hand).await;
    if played.is_err() {
        let _ = seat.hand.shot("failed-woken").await;
    }
    seat.close().await?;
    played
}

/// How often the page has asked the relay for entries.
const ROUNDS: &str =
    "performance.getEntriesByType('resource').filter(asked => asked.name.endsWith('/pull')).length";

async fn woken(relay: &KeptRelay, hand: &Hand) -> Result<()> {
    make_vault(hand, relay.running.as_ref().context("the relay runs")?).await?;
    hand.click("#to-vault").await?;
    let code = Relay::told(&relay.place, "invite", &relay.file())?;
    hand.write("#invitation", code.trim()).await?;
    hand.click("#open-at-relay").await?;
    hand.see("#home-state[data-home='all']").await?;
    hand.until(
        "the worker is in charge",
        "return navigator.serviceWorker.controller !== null",
    )
    .await?;
    // The app hears the worker first, and has asked nothing yet when this does.
    hand.ask(&format!(
        "navigator.serviceWorker.addEventListener('message', said => {{
            if (said.data.kind === 'exchange-now') window.before = {ROUNDS};
        }})"
    ))
    .await?;
    tell_of_a_network(hand, &relay.address()).await?;
    // All is home, so by itself the page asks again in three minutes.
    hand.until(
        "a round after the worker's word",
        &format!("return window.before !== undefined && {ROUNDS} > window.before"),
    )
    .await
}

async fn tell_of_a_network(hand: &Hand, origin: &str) -> Result<()> {
    let browser = hand.driver().cdp();
    browser.send_raw("ServiceWorker.enable", json!({})).await?;
    // The first registration of a profile.
    let sync =
        json!({ "origin": origin, "registrationId": "0", "tag": "exchange", "lastChance": false });
    browser
        .send_raw("ServiceWorker.dispatchSyncEvent", sync)
        .await?;
    Ok(())
}
