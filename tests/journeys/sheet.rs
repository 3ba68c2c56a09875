//! The passphrase is forgotten: the sheet that was made at the beginning opens the vault, and a new passphrase stands in its place.

use crate::Stage;
use crate::looks::look;
use anyhow::{Result, ensure};
use lightround_tests::bedside::{begin_exam, make_vault, unlock};

/// Plays it.
pub async fn recovered(stage: &mut Stage) -> Result<()> {
    let (hand, engine) = (stage.hand.clone(), stage.browser.engine);
    let old = make_vault(&hand, stage.relay()?).await?;
    hand.click("#sheet-now").await?;
    hand.click("#show-sheet").await?;
    hand.see("#recovery-sheet").await?;
    look(&hand, engine, "recovery-sheet").await?;
    let groups = hand
        .ask("return [...document.querySelectorAll('.sheet-group')].map((group) => group.innerText).join(' ')")
        .await?;
    let code = groups.as_str().unwrap_or_default().to_owned();
    ensure!(
        code.split(' ').count() == 7,
        "seven groups are on it: {code}"
    );
    hand.click("#sheet-kept").await?;
    hand.click("header a[href='/']").await?;
    begin_exam(&hand).await?;
    hand.tap("#read-line-6-24").await?;
    let here = hand.driver().current_url().await?.to_string();

    hand.click("#lock").await?;
    hand.click("#forgotten").await?;
    hand.see("#by-sheet").await?;
    look(&hand, engine, "by-sheet").await?;
    // One letter of the code wrong: it is said, and nothing is changed.
    let wrong = if code.starts_with('A') { "B" } else { "A" };
    hand.write("#recovery-code", &format!("{wrong}{}", &code[1..]))
        .await?;
    hand.click("#try-code").await?;
    hand.see("#recovery-code-error").await?;
    hand.write("#recovery-code", &code.to_lowercase()).await?;
    hand.click("#try-code").await?;
    let new = hand.text("#offered").await?;
    ensure!(new != old, "a new passphrase is offered");
    hand.click("#written").await?;
    hand.click("#open-anew").await?;
    hand.read("#acuity-right", "6/24").await?;

    hand.go(&here).await?;
    hand.write("#passphrase", &old).await?;
    hand.click("#open-vault").await?;
    hand.read("#unlock-said", "passphrase").await?;
    unlock(&hand, &new).await?;
    hand.read("#acuity-right", "6/24").await
}
