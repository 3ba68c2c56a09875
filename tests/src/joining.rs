//! Bringing another tablet into a vault: four codes as letters, the same words on both, a role.

use crate::Hand;
use anyhow::{Result, ensure};

/// Who comes in, and as what.
#[derive(Clone, Copy, Debug)]
pub struct Newcomer<'a> {
    /// Whose name goes under what is written there; invented.
    pub examiner: &'a str,
    /// What the tablet is called.
    pub tablet: &'a str,
    /// The role, as the lead's page words it.
    pub role: &'a str,
}

/// Brings the tablet of `hand` into the lead's vault, and opens it there; gives its passphrase.
///
/// # Errors
/// As all here: where a page does not do what is expected, or the two show different words.
pub async fn join(
    lead: &Hand,
    hand: &Hand,
    address: &str,
    newcomer: Newcomer<'_>,
) -> Result<String> {
    hand.go(address).await?;
    hand.click("#to-join").await?;
    hand.write("#examiner", newcomer.examiner).await?;
    hand.write("#tablet-name", newcomer.tablet).await?;
    hand.click("#begin-join").await?;
    lead.click("header a[href='/vault']").await?;
    lead.click("#to-tablets").await?;
    lead.click("#add-tablet").await?;
    handed(hand, lead, "request").await?;
    handed(lead, hand, "offer").await?;
    handed(hand, lead, "reveal").await?;
    let (here, there) = (
        lead.text("#check-words").await?,
        hand.text("#check-words").await?,
    );
    ensure!(here == there, "the lead shows {here}, the other {there}");
    lead.click(&format!("#enrol-role-{}", newcomer.role))
        .await?;
    lead.click("#words-same").await?;
    handed(lead, hand, "packet").await?;
    let passphrase = hand.text("#offered").await?;
    hand.click("#written").await?;
    hand.click("#finish-join").await?;
    hand.see_gone("#join").await?;
    hand.see("#find").await?;
    lead.click("#enrolled").await?;
    Ok(passphrase)
}

/// One code is read off one tablet and typed into the other.
async fn handed(from: &Hand, to: &Hand, code: &str) -> Result<()> {
    from.click(&format!("#{code}-as-letters summary")).await?;
    let letters = from.text(&format!("#{code}-letters")).await?;
    to.write(&format!("#{code}"), &letters).await?;
    to.click(&format!("#{code}-go")).await
}
