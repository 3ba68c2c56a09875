//! What every journey does: make a vault, put a person down, find something, sign it.

use crate::{Hand, Relay};
use anyhow::Result;
use thirtyfour::Key;

/// Whoever examines in these journeys; invented.
pub const EXAMINER: &str = "Maren Foxglove-Quay";
/// Whoever is examined; invented.
pub const GIVEN: &str = "Orla";
/// As above.
pub const FAMILY: &str = "Pennyquick";
/// Where she lives; invented.
pub const PLACE: &str = "Saltmarsh Court";
/// What to remember; invented.
pub const NOTE: &str = "Gannet the dog sleeps on the spare chair";

/// Makes a vault with the passphrase that is offered; gives the passphrase.
///
/// # Errors
/// As all here.
pub async fn make_vault(hand: &Hand, relay: &Relay) -> Result<String> {
    make_vault_at(hand, relay.address()).await
}

/// The same at an address that is the relay's by another name.
///
/// # Errors
/// As all here.
pub async fn make_vault_at(hand: &Hand, address: &str) -> Result<String> {
    hand.go(address).await?;
    let passphrase = hand.text("#offered").await?;
    hand.write("#examiner", EXAMINER).await?;
    hand.click("#written").await?;
    hand.click("#make-vault").await?;
    hand.see("#new-person").await?;
    Ok(passphrase)
}

/// Waits until the files are kept and this page runs from them.
///
/// # Errors
/// As all here.
pub async fn kept_for_offline(hand: &Hand) -> Result<()> {
    hand.read("#works-offline", "Yes").await?;
    // Whatever the browser promises is said, even while it still asks a person about it.
    hand.until(
        "a word on keeping",
        "return ['For good', 'May be cleared', 'No promise'].includes(document.querySelector('#kept-here').innerText)",
    )
    .await
}

/// Opens the vault again.
///
/// # Errors
/// As all here.
pub async fn unlock(hand: &Hand, passphrase: &str) -> Result<()> {
    hand.write("#passphrase", passphrase).await?;
    hand.click("#open-vault").await?;
    hand.see_gone("#unlock").await
}

/// Puts Orla Pennyquick down, stated to be 86, and begins her exam.
///
/// # Errors
/// As all here: where the page does not do what is expected.
pub async fn begin_exam(hand: &Hand) -> Result<()> {
    begin_exam_of(hand, GIVEN, 86).await
}

/// Puts somebody down by a given name and a stated age, and begins an exam.
///
/// # Errors
/// As all here.
pub async fn begin_exam_of(hand: &Hand, given: &str, age: u8) -> Result<()> {
    hand.click("#new-person").await?;
    hand.write("#given", given).await?;
    hand.write("#family", FAMILY).await?;
    hand.write("#age", &age.to_string()).await?;
    hand.write("#place", PLACE).await?;
    hand.write("#room", "14").await?;
    hand.write("#note", NOTE).await?;
    hand.click_twice("#keep-person").await?;
    hand.see("#begin-exam").await?;
    hand.click("#begin-exam [data-part=begin]").await?;
    hand.see("#reason").await?;
    hand.click("#to-acuity").await?;
    hand.see("#read-line-6-36").await?;
    Ok(())
}

/// Types a number into a stepper and presses Enter.
///
/// # Errors
/// As all here.
pub async fn put_number(hand: &Hand, id: &str, text: &str) -> Result<()> {
    let field = format!("#{id}");
    hand.click(&field).await?;
    // The number takes the focus when the finger has lifted, and selects itself: keys sent sooner would be lost.
    let focused = format!("return document.activeElement?.id === '{id}'");
    hand.until(&format!("{field} with the focus"), &focused)
        .await?;
    hand.keys(&field, text).await?;
    // A window that another journey's window covers loses the focus, and so takes the number before Enter does.
    let typed = format!(
        "return parseFloat(document.getElementById('{id}').value.replace('\u{2212}', '-')) === {text}"
    );
    hand.until(&format!("{text} in {field}"), &typed).await?;
    hand.keys(&field, Key::Enter + "").await
}

/// The same where a number was refused before: it still stands there, and Escape puts it away.
///
/// # Errors
/// As all here.
pub async fn put_number_instead(hand: &Hand, id: &str, text: &str) -> Result<()> {
    hand.keys(&format!("#{id}"), Key::Escape + "").await?;
    put_number(hand, id, text).await
}

/// Both eyes' acuity: 6/36 right and 6/18 left, read at 3 m from a chart made for 6 m.
///
/// # Errors
/// As all here.
pub async fn acuity(hand: &Hand) -> Result<()> {
    hand.tap("#read-line-6-36").await?;
    // 6/36 at 3 m is 3/36, 6/72 and logMAR 1.08: V = d / letter size, logMAR = log10(MAR), as the DICOM standard's
    // ophthalmic annex (PS3.17) defines them; arithmetic by hand.
    hand.read("#eye-right", "is 3/36 = 6/72").await?;
    hand.read("#eye-right", "1.08").await?;
    hand.click("#work-left").await?;
    hand.tap("#read-line-6-18").await?;
    hand.tap("#read-letters-minus-1").await?;
    hand.read("#acuity-left", "6/18").await?;
    hand.click("#next").await?;
    hand.click("#to-retinoscopy").await?;
    hand.see("#lens-right-first").await?;
    Ok(())
}

/// The right eye by its two meridians, the left as it stands in the frame.
///
/// # Errors
/// As all here.
pub async fn retinoscopy_right(hand: &Hand) -> Result<()> {
    put_number(hand, "lens-right-first", "4").await?;
    put_number(hand, "lens-right-second", "2.5").await?;
    // An upright streak (testing 180) neutral with +4.00 and a lying one (testing 90) with +2.50 is +4.00/−1.50×180 at
    // neutral and +2.50/−1.50×180 with 67 cm off: common practice, no source; the subtraction by hand.
    hand.read("#net-right", "+4.00 / −1.50 × 180").await?;
    hand.read("#net-off-right", "+2.50 / −1.50 × 180").await?;
    hand.read("#hand-right", "change the sphere +4.00 to +2.50")
        .await
}

/// See [`retinoscopy_right`].
///
/// # Errors
/// As all here.
pub async fn retinoscopy_left(hand: &Hand) -> Result<()> {
    hand.click("#work-left").await?;
    hand.click("#way-left-frame").await?;
    put_number(hand, "frame-left-sphere", "3.75").await?;
    put_number(hand, "frame-left-cylinder", "-1.00").await?;
    put_number(hand, "frame-left-axis-number", "85").await?;
    hand.read("#net-off-left", "+2.25 / −1.00 × 85").await
}

/// Each eye's lens taken over from retinoscopy, the addition, and what is read.
///
/// # Errors
/// As all here.
pub async fn subjective(hand: &Hand) -> Result<()> {
    hand.click("#start-right-0").await?;
    hand.tap("#reached-right-6-12").await?;
    hand.click("#work-left").await?;
    hand.click("#start-left-0").await?;
    hand.tap("#reached-left-6-9").await?;
    hand.click("#add").await?;
    put_number(hand, "add-power", "2.25").await?;
    hand.click("#add-sheet-close").await?;
    hand.click("#next").await?;
    hand.see("#task").await?;
    hand.click("#to-decision").await?;
    hand.see("#glasses-prescribe").await?;
    Ok(())
}

/// Decides to prescribe, and signs.
///
/// # Errors
/// As all here.
pub async fn decide_and_sign(hand: &Hand) -> Result<()> {
    hand.click("#glasses-prescribe").await?;
    hand.click("#next").await?;
    hand.click("#sign").await?;
    hand.read("#signatures", EXAMINER).await
}

/// Presses a key with the focus on nothing that writes.
///
/// # Errors
/// As all here.
pub async fn press(hand: &Hand, key: &str) -> Result<()> {
    hand.keys("body", key).await
}
