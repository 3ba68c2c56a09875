//! What is on record is at hand: a place among what is searched for, one person out of two and two again, phrases of one's own,
//! what an amendment changed, figures as the reader writes them, and a vault that opens from its snapshot.

use crate::Stage;
use anyhow::{Context, Result, ensure};
use lightround_tests::Hand;

/// How many people are made up, as the first screen says.
const PEOPLE: u64 = 60;
/// Where some of them live.
const PLACE: &str = "Wrackholm Lodge, Isle of Wrack";
/// Invented words.
const PHRASE: &str = "asked by the lighthouse keeper";
const ADVICE: &str = "sit with the back to the window";

/// Flips one bit in the middle of each piece of the snapshot.
const SPOIL: &str = r"
const done = arguments[arguments.length - 1];
const request = indexedDB.open('lightround-made-up');
request.onsuccess = () => {
  const database = request.result;
  const transaction = database.transaction('checkpoint', 'readwrite');
  let spoilt = 0;
  transaction.objectStore('checkpoint').openCursor().onsuccess = (event) => {
    const cursor = event.target.result;
    if (!cursor) return;
    const piece = new Uint8Array(cursor.value);
    piece[piece.length >> 1] ^= 1;
    cursor.update(piece);
    spoilt += 1;
    cursor.continue();
  };
  transaction.oncomplete = () => { database.close(); done(spoilt); };
  transaction.onerror = () => done(0);
};";

/// Plays it.
pub async fn known(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    hand.go(stage.relay()?.address()).await?;
    hand.click("#look-around").await?;
    hand.see("#readiness[data-opened=whole]").await?;
    hand.see(".person-row").await?;
    a_place(&hand).await?;
    two_in_one(&hand).await?;
    own_phrase(&hand).await?;
    what_changed(&hand).await?;
    as_the_reader_writes(&hand).await?;
    from_the_snapshot(&hand).await
}

/// A home that stood in words only is written down, takes in whoever lives there, and is found from then on.
async fn a_place(hand: &Hand) -> Result<()> {
    hand.click("#to-places").await?;
    hand.read("#places-in-words", PLACE).await?;
    hand.click("#new-place").await?;
    hand.write("#place-name", PLACE).await?;
    hand.click("#keep-place").await?;
    hand.see("#place-people .person-who").await?;
    hand.click("#to-rounds").await?;
    hand.write("#find", "wrackholm").await?;
    hand.read("#found-places a", "Wrackholm Lodge").await?;
    hand.click("#found-places a").await?;
    hand.read("h1", "Wrackholm Lodge").await?;
    hand.see("#place-people .person-who").await?;
    hand.click("#to-rounds").await
}

async fn people(hand: &Hand, wanted: u64) -> Result<()> {
    hand.until(
        &format!("{wanted} people"),
        &format!("return document.querySelectorAll('.person-row').length === {wanted}"),
    )
    .await
}

/// The first of the list is said to be somebody else as well; then they are two after all.
async fn two_in_one(hand: &Hand) -> Result<()> {
    people(hand, PEOPLE).await?;
    hand.click(".person-who").await?;
    hand.click("#same summary").await?;
    hand.write("#same-find", "ankerfold").await?;
    hand.read("#same-offered", "Anchorfold").await?;
    hand.click("#same-offered [data-part=same]").await?;
    hand.read(".same-said", "Anchorfold").await?;
    let here = hand.driver().current_url().await?.path().to_owned();
    hand.click("header a[href='/']").await?;
    people(hand, PEOPLE - 1).await?;
    hand.click(&format!("#people a[href='{here}']")).await?;
    hand.click("[data-part=apart]").await?;
    hand.see_gone(".same-said").await?;
    hand.click("header a[href='/']").await?;
    people(hand, PEOPLE).await?;
    hand.click(&format!("#people a[href='{here}']")).await
}

/// Words of one's own are kept at hand beside the field, and forgotten again; what was written with them stays.
async fn own_phrase(hand: &Hand) -> Result<()> {
    hand.click("#begin-exam [data-part=begin]").await?;
    hand.write("#reason", PHRASE).await?;
    hand.click("#reason-teach").await?;
    hand.see_gone("#reason-teach").await?;
    hand.see("#reason-4[aria-pressed=true]").await?;
    hand.tap("#reason-4").await?;
    hand.see("#reason-4[aria-pressed=false]").await?;
    hand.tap("#reason-4").await?;
    hand.click("#next").await?;
    to_settings(hand).await?;
    hand.read("#phrases", PHRASE).await?;
    hand.click("#forget-seen-because-0").await?;
    hand.see_gone("#forget-seen-because-0").await?;
    hand.click("header a[href='/vault']").await?;
    hand.click("header a[href='/']").await
}

async fn to_settings(hand: &Hand) -> Result<()> {
    hand.click("#to-story").await?;
    hand.click("header a[href='/']").await?;
    hand.click("#to-vault").await?;
    hand.click("#to-settings").await
}

/// A signed section's versions say what each changed.
async fn what_changed(hand: &Hand) -> Result<()> {
    hand.click(".person-who").await?;
    let signed = ".told a[href$='/sign']";
    hand.click(signed).await?;
    hand.click("#to-decision").await?;
    hand.click("#amend").await?;
    hand.write("#advice", ADVICE).await?;
    hand.write("#amend-why", "said at the door").await?;
    hand.click("#next").await?;
    hand.read("#earlier-versions", "version 2, it stands")
        .await?;
    hand.read("#earlier-versions", "because: said at the door")
        .await?;
    hand.read("#earlier-versions .changed", ADVICE).await
}

/// +3.00 / −1.00 × 90 is +2.00 / +1.00 × 180 with a plus cylinder (transposed by hand), and 3 m are 9.8 ft (a foot is 0.3048 m).
async fn as_the_reader_writes(hand: &Hand) -> Result<()> {
    to_settings(hand).await?;
    let so = "#shown-so";
    hand.read(so, "+3.00 / −1.00 × 90, chart at 3 m").await?;
    hand.click("#decimal-mark-comma").await?;
    hand.read(so, "+3,00 / −1,00 × 90").await?;
    hand.click("#written-sign-plus").await?;
    hand.read(so, "+2,00 / +1,00 × 180").await?;
    hand.click("#far-unit-feet").await?;
    hand.read(so, "chart at 9,8 ft").await?;
    hand.click("#date-order-month").await?;
    hand.until(
        "the month before the day",
        r"return /ft, [A-Z][a-z]+ \d{1,2}, \d{4}$/.test(document.querySelector('#shown-so').textContent.trim())",
    )
    .await?;
    hand.click("header a[href='/vault']").await?;
    hand.click("header a[href='/']").await?;
    hand.click(".person-who").await?;
    hand.until(
        "lenses and days of the story so written",
        r"const told = [...document.querySelectorAll('.told')].map((exam) => exam.textContent).join(' ');
        return /[+−]\d,\d\d/.test(told) && !/\d\.\d\d/.test(told) && /[A-Z][a-z]+ \d{1,2}, \d{4}/.test(told)",
    )
    .await
}

/// Locked and opened, it goes on from its snapshot; from a spoilt one nothing is taken, which is said, and another is made.
async fn from_the_snapshot(hand: &Hand) -> Result<()> {
    hand.click("header a[href='/']").await?;
    again(hand, "snapshot").await?;
    ensure!(
        !hand.is_there("#read-anew").await?,
        "there is nothing to say"
    );
    hand.click("#lock").await?;
    hand.see("#look-around-again").await?;
    let spoilt = hand.ask_later(SPOIL).await?;
    ensure!(
        spoilt.as_u64().context("pieces are counted")? > 0,
        "there is no snapshot"
    );
    opened(hand, "anew").await?;
    hand.read("#read-anew", "was damaged").await?;
    again(hand, "snapshot").await
}

async fn again(hand: &Hand, how: &str) -> Result<()> {
    hand.click("#lock").await?;
    opened(hand, how).await
}

async fn opened(hand: &Hand, how: &str) -> Result<()> {
    hand.click("#look-around-again").await?;
    hand.see(&format!("#readiness[data-opened={how}]")).await?;
    people(hand, PEOPLE).await
}
