//! First visit online, then the server is gone: a new person is examined start to finish, the tablet dies in
//! mid-section, comes back, the exam is signed, printed and amended.

use crate::Stage;
use crate::dump::at_rest;
use crate::prints::on_both_papers;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{self, EXAMINER, FAMILY, GIVEN, NOTE, PLACE};
use lightround_tests::{Engine, Hand};

/// What the prescription says, on the screen's rows and on paper; the powers are worked out in [`bedside`].
const RIGHT: [&str; 5] = ["+2.50", "−1.50", "180", "+2.25", "3/12"];
const LEFT: [&str; 5] = ["+2.25", "−1.00", "85", "+2.25", "3/9"];

/// Plays it.
pub async fn whole_visit(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    let passphrase = bedside::make_vault(&hand, stage.relay()?).await?;
    bedside::kept_for_offline(&hand).await?;
    let address = stage.lose_the_server()?;

    bedside::begin_exam(&hand).await?;
    bedside::acuity(&hand).await?;
    bedside::retinoscopy_right(&hand).await?;
    hand.read("#kept", "kept as you type").await?;
    let here = hand.driver().current_url().await?.to_string();
    hand.shot("visit-1-retinoscopy").await?;

    stage.tablet_dies().await?;
    let hand = stage.hand.clone();
    hand.go(&here).await?;
    bedside::unlock(&hand, &passphrase).await?;
    hand.read("#net-off-right", "+2.50 / −1.50 × 180")
        .await
        .context("the draft after the tablet died")?;
    hand.read("#to-retinoscopy", "draft").await?;
    hand.read("#to-acuity", "kept").await?;

    bedside::retinoscopy_left(&hand).await?;
    hand.click("#next").await?;
    bedside::subjective(&hand).await?;
    bedside::decide_and_sign(&hand).await?;
    hand.shot("visit-2-signed").await?;
    prescription(&hand).await?;
    hand.shot("visit-3-prescription").await?;
    if stage.browser.engine.prints() {
        let mut lines = vec!["Orla Pennyquick", EXAMINER];
        // Firefox's file does not tell which figure a drawn figure is.
        if stage.browser.engine == Engine::Chromium {
            lines.extend(RIGHT.into_iter().chain(LEFT));
        }
        on_both_papers(&hand, &lines).await?;
    }

    amend(&hand).await?;
    hand.shot("visit-4-amended").await?;
    nothing_at_rest(&hand, &passphrase).await?;

    // The address holds the place, and the files are here: the same page comes back with the server still gone.
    hand.go(&format!("{address}/vault")).await?;
    bedside::unlock(&hand, &passphrase).await?;
    hand.read("#signer", EXAMINER).await?;
    written_down_once(&hand).await?;
    Ok(())
}

async fn prescription(hand: &Hand) -> Result<()> {
    hand.click("#to-prescription").await?;
    hand.read("#rx-name", "Orla Pennyquick").await?;
    for (row, cells) in [("#rx-right", RIGHT), ("#rx-left", LEFT)] {
        for cell in cells {
            hand.read(row, cell).await?;
        }
    }
    hand.read("#rx-signed", EXAMINER).await?;
    ensure!(
        !hand.text("#rx-cautions").await?.is_empty(),
        "a prescription carries its cautions"
    );
    ensure!(
        !hand.is_there("#rx-amended").await?,
        "nothing was amended yet"
    );
    Ok(())
}

async fn amend(hand: &Hand) -> Result<()> {
    hand.click("#back-to-exam").await?;
    hand.click("#to-subjective").await?;
    hand.click("#amend").await?;
    hand.tap("#subjective-right-sphere-more").await?;
    hand.click("#next").await?;
    hand.read("#refused", "say why")
        .await
        .context("an amendment without a reason is refused")?;
    hand.write("#amend-why", "read the smaller line with a quarter more")
        .await?;
    hand.click("#next").await?;
    hand.see("#signed-section").await?;
    hand.read("#signed-section", "+2.75 / −1.50 × 180").await?;
    hand.read("#earlier-versions", "+2.50 / −1.50 × 180")
        .await?;
    hand.click("#to-sign").await?;
    hand.click("#to-prescription").await?;
    hand.read("#rx-right", "+2.75").await?;
    hand.read("#rx-amended", "read the smaller line with a quarter more")
        .await
}

/// The person was kept with an impatient second press; one person and one exam came of it.
async fn written_down_once(hand: &Hand) -> Result<()> {
    hand.click("header a[href='/']").await?;
    hand.read("#people", FAMILY).await?;
    let rows = hand
        .ask("return document.querySelectorAll('.person-row').length")
        .await?;
    ensure!(rows == 1, "{rows} people came of one");
    hand.click(".person-who").await?;
    hand.see("#story").await?;
    let exams = hand
        .ask("return document.querySelectorAll('.told').length")
        .await?;
    ensure!(exams == 1, "{exams} exams came of one");
    Ok(())
}

async fn nothing_at_rest(hand: &Hand, passphrase: &str) -> Result<()> {
    let at_rest = at_rest(hand).await?;
    // Fewer records than this would mean that the dump looked in the wrong place.
    ensure!(
        at_rest.records >= 8,
        "only {} records were found at rest",
        at_rest.records
    );
    let findings = [
        "6/36",
        "+4.00",
        "-1.50",
        "smaller line",
        "retinoscopy-",
        "section-",
    ];
    let words = [GIVEN, FAMILY, PLACE, NOTE, EXAMINER, passphrase];
    at_rest.holds_none_of(&words)?;
    for finding in findings {
        ensure!(
            !at_rest.written.contains(finding),
            "“{finding}” is at rest in the clear"
        );
    }
    Ok(())
}
