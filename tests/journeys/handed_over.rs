//! What follows a visit: papers as files, the log of visits, an exam for another system; each said before it leaves the tablet.

use crate::Stage;
use crate::looks::look;
use anyhow::Result;
use lightround_tests::bedside::{begin_exam, subjective};
use lightround_tests::bedside::{decide_and_sign, make_vault, retinoscopy_left, retinoscopy_right};
use lightround_tests::{Engine, Hand};

/// Papers that an exam with glasses to be made has at once; a referral asks for its urgency, a fitting for glasses.
const PAPERS: [&str; 4] = ["prescription", "care-staff", "person", "summary"];

/// Plays it.
pub async fn papers(stage: &mut Stage) -> Result<()> {
    let (hand, engine) = (stage.hand.clone(), stage.browser.engine);
    make_vault(&hand, stage.relay()?).await?;
    begin_exam(&hand).await?;
    hand.click("#to-retinoscopy").await?;
    retinoscopy_right(&hand).await?;
    retinoscopy_left(&hand).await?;
    hand.click("#next").await?;
    subjective(&hand).await?;
    decide_and_sign(&hand).await?;
    hand.click("#to-papers").await?;
    hand.see("#papers").await?;
    look(&hand, engine, "papers").await?;
    for paper in PAPERS {
        hand.click(&format!("#paper-{paper}")).await?;
        hand.read("main", "Orla Pennyquick").await?;
        look(&hand, engine, &format!("paper-{paper}")).await?;
        hand.click("#back-to-papers").await?;
    }
    log(&hand, engine).await?;
    // Back over log, rounds, story and signature, as the browser's own button goes.
    hand.ask("history.go(-4)").await?;
    hand.see("#papers").await?;
    files(&hand).await
}

/// A paper as a file, and the exam for another system.
async fn files(hand: &Hand) -> Result<()> {
    hand.click("#paper-prescription").await?;
    hand.click("#make-pdf").await?;
    // What was said before the log's files is not asked again.
    hand.read("#pdf-said", "Saved as").await?;
    hand.click("#back-to-papers").await?;
    hand.click("#exam-fhir").await?;
    hand.read("#whole-exam-said", "Saved as").await
}

/// One visit, as a table and as two files.
async fn log(hand: &Hand, engine: Engine) -> Result<()> {
    hand.click("#back-to-exam").await?;
    hand.click("#to-story").await?;
    hand.click("header a[href='/']").await?;
    hand.click("#to-log").await?;
    hand.read("#log-table", "Pennyquick").await?;
    look(hand, engine, "log").await?;
    hand.click("#log-csv").await?;
    hand.read("#log-files-before", "not encrypted").await?;
    hand.click("#log-files-go").await?;
    hand.read("#log-files-said", ".csv").await?;
    hand.click("#log-workbook").await?;
    hand.read("#log-files-said", ".xlsx").await?;
    hand.click("#log-nobody").await?;
    hand.until(
        "a log without names",
        "return !document.querySelector('#log-table').innerText.includes('Pennyquick')",
    )
    .await
}
