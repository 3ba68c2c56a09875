//! A week of two tablets and a laptop, each in an engine of its own, before one relay: rounds while it can't be reached, the same
//! section written on both tablets and settled on both, a relay that is killed and one that is restarted, a tablet that is lost and
//! replaced. In the end they show the same.

use crate::equal::{Shown, to_the_exam, to_the_list, until_equal};
use crate::seat::{KeptRelay, Seat};
use crate::{AT_ONCE, BROWSERS};
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{
    EXAMINER, PLACE, begin_exam, decide_and_sign, kept_for_offline, make_vault, put_number,
};
use lightround_tests::joining::{Newcomer, join};
use lightround_tests::{Engine, Hand, Place, Relay};
use tokio::try_join;

/// Invented, as everybody here.
const CLINICIAN: Newcomer<'_> = Newcomer {
    examiner: "Ivo Castlemere",
    tablet: "harbour tablet",
    role: "clinician",
};
const MANAGER: Newcomer<'_> = Newcomer {
    examiner: "Hester Larkmoor",
    tablet: "clinic laptop",
    role: "viewer",
};
const REPLACED: Newcomer<'_> = Newcomer {
    tablet: "new harbour tablet",
    ..CLINICIAN
};

#[tokio::test]
async fn two_tablets_and_a_laptop_go_through_a_week() -> Result<()> {
    // Three browsers for one journey: nobody else's turn.
    let _all = BROWSERS.acquire_many(AT_ONCE).await?;
    let place = Place::from_env()?;
    let (mut lead, mut clinician, mut laptop) = try_join!(
        Seat::open(&place, Engine::Chromium),
        Seat::open(&place, Engine::Firefox),
        Seat::open(&place, Engine::WebKit)
    )?;
    let relay = KeptRelay::new(&place)?;
    let played = play(&place, relay, &mut lead, &mut clinician, &mut laptop).await;
    for seat in [lead, clinician, laptop] {
        if played.is_err() {
            let _ = seat.hand.shot("failed-week").await;
        }
        seat.close().await?;
    }
    played
}

async fn play(
    place: &Place,
    mut relay: KeptRelay,
    lead: &mut Seat,
    clinician: &mut Seat,
    laptop: &mut Seat,
) -> Result<()> {
    let orla = monday(&relay, lead, clinician, laptop).await?;
    let (one, other, reader) = (&lead.hand, &clinician.hand, &laptop.hand);

    relay.taken()?.end().context("ends when it is asked")?;
    tuesday(one, other, &orla).await?;
    relay.start()?;
    both_are_shown(one, other, &orla).await?;

    one.click("#home-state").await?;
    one.click("#go-home").await?;
    relay.taken()?.stop()?;
    wednesday(&relay, (lead, clinician), &orla).await?;
    relay.start()?;
    let whole = settled(one, other, reader, &orla).await?;
    ensure!(!whole.knows("Ivo"), "who comes later is not there yet");

    lost(one, other, reader).await?;
    only_reads(laptop, &relay.address(), &orla).await?;

    // Its place is taken by another, which gets everything that counts.
    let fresh = Seat::open(place, Engine::Firefox).await?;
    std::mem::replace(clinician, fresh).close().await?;
    clinician.passphrase = join(one, &clinician.hand, &relay.address(), REPLACED).await?;
    until_equal(&[one, &clinician.hand, &laptop.hand]).await?;
    the_same(&[one, &clinician.hand, &laptop.hand], &orla).await?;
    let sound = Relay::told(place, "verify", &relay.file())?;
    println!("{}", sound.trim());
    Ok(())
}

/// The vault is founded, opened at the relay, and joined by the other two; somebody is examined, and a round is planned.
async fn monday(
    relay: &KeptRelay,
    lead: &mut Seat,
    clinician: &mut Seat,
    laptop: &mut Seat,
) -> Result<String> {
    let address = relay.address();
    let running = relay.running.as_ref().context("the relay runs")?;
    let hand = &lead.hand;
    lead.passphrase = make_vault(hand, running).await?;
    hand.click("#to-vault").await?;
    let code = Relay::told(&relay.place, "invite", &relay.file())?;
    hand.write("#invitation", code.trim()).await?;
    hand.click("#open-at-relay").await?;
    hand.see("#home-state[data-home='all']").await?;
    to_the_list(hand).await?;
    let orla = examined(hand).await?;
    put_down(hand, "Tobias").await?;
    hand.click("#new-round").await?;
    hand.click("#make-round").await?;
    hand.click("#round-add summary").await?;
    hand.click("#add-all").await?;
    hand.see("[data-part=next]").await?;
    to_the_list(hand).await?;
    clinician.passphrase = join(hand, &clinician.hand, &address, CLINICIAN).await?;
    laptop.passphrase = join(hand, &laptop.hand, &address, MANAGER).await?;
    until_equal(&[hand, &clinician.hand, &laptop.hand]).await?;
    try_join!(
        ready(&lead.hand),
        ready(&clinician.hand),
        ready(&laptop.hand)
    )?;
    the_same(&[hand, &clinician.hand, &laptop.hand], &orla).await?;
    Ok(orla)
}

async fn ready(hand: &Hand) -> Result<()> {
    to_the_list(hand).await?;
    kept_for_offline(hand).await
}

/// Orla, with a lens for each eye, signed; gives the address of her story.
async fn examined(hand: &Hand) -> Result<String> {
    begin_exam(hand).await?;
    hand.click("#to-subjective").await?;
    put_number(hand, "subjective-right-sphere", "1").await?;
    hand.click("#work-left").await?;
    put_number(hand, "subjective-left-sphere", "0.75").await?;
    hand.click("#to-decision").await?;
    decide_and_sign(hand).await?;
    hand.click("#to-story").await?;
    hand.see("#begin-exam").await?;
    let orla = hand.driver().current_url().await?.path().to_owned();
    to_the_list(hand).await?;
    Ok(orla)
}

async fn put_down(hand: &Hand, given: &str) -> Result<()> {
    to_the_list(hand).await?;
    hand.click("#new-person").await?;
    hand.write("#given", given).await?;
    hand.write("#place", PLACE).await?;
    hand.click("#keep-person").await?;
    hand.see("#begin-exam").await?;
    to_the_list(hand).await
}

/// Without the relay: both amend the same lens, each otherwise; one finds Tobias asleep, whom the other examines; each puts
/// somebody down.
async fn tuesday(one: &Hand, other: &Hand, orla: &str) -> Result<()> {
    try_join!(
        amended(
            one,
            orla,
            "more",
            "read the smaller line with a quarter more"
        ),
        amended(other, orla, "less", "a quarter less was as clear")
    )?;
    try_join!(to_the_list(one), to_the_list(other))?;
    one.click("[data-part=next] [id^=mark-asleep]").await?;
    one.read("[data-part=glance]", "1 asleep").await?;
    other.click("[data-part=next] [data-part=begin]").await?;
    other.click("#to-decision").await?;
    other.click("#glasses-leave-alone").await?;
    other.click("#next").await?;
    other.click("#sign").await?;
    other.read("#signatures", CLINICIAN.examiner).await?;
    put_down(one, "Rosa").await?;
    put_down(other, "Maud").await?;
    for hand in [one, other] {
        hand.see("#home-state[data-home='waiting']").await?;
    }
    Ok(())
}

async fn amended(hand: &Hand, orla: &str, step: &str, why: &str) -> Result<()> {
    to_the_exam(hand, orla).await?;
    hand.click("#to-subjective").await?;
    hand.click("#amend").await?;
    hand.tap(&format!("#subjective-right-sphere-{step}"))
        .await?;
    hand.write("#amend-why", why).await?;
    hand.click("#next").await?;
    hand.see("#signed-section").await.map(drop)
}

/// The relay is back: both tablets show both versions, whichever was sent first.
async fn both_are_shown(one: &Hand, other: &Hand, orla: &str) -> Result<()> {
    until_equal(&[one, other]).await?;
    for hand in [one, other] {
        two_versions(hand, orla).await?;
        hand.read(".versions-beside", "+1.25").await?;
        hand.read(".versions-beside", "+0.75").await?;
        hand.read("#what-differs", "+0.75").await?;
    }
    one.shot("week-two-versions").await?;
    for hand in [one, other] {
        to_the_list(hand).await?;
        hand.read("#people", "Rosa").await?;
        hand.read("#people", "Maud").await?;
    }
    Ok(())
}

async fn two_versions(hand: &Hand, orla: &str) -> Result<()> {
    to_the_exam(hand, orla).await?;
    hand.click("#to-subjective").await?;
    hand.see("#two-versions").await.map(drop)
}

/// The relay was killed while a tablet was at it. Another morning without it: each tablet settles for its own version.
async fn wednesday(relay: &KeptRelay, of: (&Seat, &Seat), orla: &str) -> Result<()> {
    let (lead, clinician) = of;
    let address = relay.address();
    try_join!(
        lead.another_morning(&address),
        clinician.another_morning(&address)
    )?;
    for (hand, lens) in [(&lead.hand, "+1.25"), (&clinician.hand, "+0.75")] {
        two_versions(hand, orla).await?;
        holds(hand, lens).await?;
        hand.see("#home-state[data-home='waiting']").await?;
    }
    Ok(())
}

/// Of the versions side by side, that with this lens holds.
async fn holds(hand: &Hand, lens: &str) -> Result<()> {
    let which = format!(
        "return [...document.querySelectorAll('.version-beside')].findIndex((version) => version.textContent.includes('{lens}'))"
    );
    let which = hand.ask(&which).await?;
    hand.click(&format!("#hold-{which}")).await?;
    hand.read("#signed-section", lens).await
}

/// Each had settled it, so it is settled once more, by the clinician; then everybody shows that, the laptop too.
async fn settled(one: &Hand, other: &Hand, reader: &Hand, orla: &str) -> Result<Shown> {
    until_equal(&[one, other]).await?;
    two_versions(one, orla).await?;
    two_versions(other, orla).await?;
    holds(other, "+1.25").await?;
    other
        .read("#earlier-versions", "without knowing of each other")
        .await?;
    until_equal(&[one, other, reader]).await?;
    the_same(&[one, other, reader], orla).await
}

/// The lead removes a tablet that is away. What it wrote before stands; what it writes afterwards comes to nobody, and what is
/// written elsewhere comes to it no more.
async fn lost(one: &Hand, other: &Hand, reader: &Hand) -> Result<()> {
    to_the_list(other).await?;
    one.click("#home-state").await?;
    one.click("#to-tablets").await?;
    let remove = format!(
        "return [...document.querySelectorAll('.tablet')].find((tablet) => tablet.textContent.includes('{}')).id",
        CLINICIAN.tablet
    );
    one.see(".tablet").await?;
    let id = one.ask(&remove).await?;
    let id = id.as_str().context("the tablet is listed")?.to_owned();
    one.click(&format!("#{id}-remove")).await?;
    one.click("#remove-it").await?;
    one.read(&format!("#{id}"), "Removed").await?;
    put_down(one, "Ivo").await?;
    until_equal(&[one, reader]).await?;

    put_down(other, "Linnet").await?;
    other.click("#home-state").await?;
    other.click("#go-home").await?;
    other.read("#home-status", "removed from the vault").await?;
    other.read("#own-role", "not any more").await?;
    other.shot("week-removed").await?;
    other.click("#to-tablets").await?;
    other.read(".tablet-gone", CLINICIAN.tablet).await?;
    other.click("#back-to-vault").await?;
    until_equal(&[one, reader]).await?;
    for hand in [one, reader] {
        to_the_list(hand).await?;
        for known in ["Orla", "Tobias", "Rosa", "Maud", "Ivo"] {
            hand.read("#people", known).await?;
        }
        let people = hand.text("#people").await?;
        ensure!(
            !people.contains("Linnet"),
            "written after the removal, and taken"
        );
    }
    to_the_list(other).await?;
    let people = other.text("#people").await?;
    ensure!(people.contains("Maud"), "what it had stays readable there");
    ensure!(!people.contains("Ivo"), "a removed tablet reads on");
    Ok(())
}

/// The manager's laptop sees the exam and is offered nothing that writes, at no address.
async fn only_reads(laptop: &Seat, address: &str, orla: &str) -> Result<()> {
    let hand = &laptop.hand;
    to_the_exam(hand, orla).await?;
    hand.read("#signatures", EXAMINER).await?;
    hand.click("#to-subjective").await?;
    hand.read("#only-read", "+1.25").await?;
    hand.until(
        "nothing that writes",
        "return [...document.querySelectorAll('.writes, #amend, #next')].every((part) => !part.checkVisibility())",
    )
    .await?;
    hand.shot("week-laptop").await?;
    laptop
        .another_morning(&format!("{address}/people/new"))
        .await?;
    hand.see("#reads-only").await?;
    to_the_list(hand).await
}

/// All show the same; gives what.
async fn the_same(hands: &[&Hand], orla: &str) -> Result<Shown> {
    let (first, others) = hands.split_first().context("somebody")?;
    let first = Shown::of(first, orla).await?;
    for other in others {
        let shown = Shown::of(other, orla).await?;
        ensure!(
            shown == first,
            "the one shows {first:#?}\nand the other {shown:#?}"
        );
    }
    Ok(first)
}
