//! What somebody else found, as a file: its columns named, its dates put in order, its bad rows kept aside and the good ones
//! taken once; how it was read is kept for the next file, and forgotten again.

use crate::Stage;
use crate::looks::look;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{make_vault, unlock};
use lightround_tests::{Engine, Hand};
use std::path::{Path, PathBuf};

/// Who is on record: given name and number. Invented, as everything in the file.
const PEOPLE: [(&str, &str); 2] = [("Orla", "QR 1042"), ("Tamsin", "QR 1043")];

/// Two good rows whose dates could be read either way, somebody who is not on record, and a day that is none. The column `P1` is
/// a pressure, which only a person can know.
const FILE: &str = "\
Number;Seen on;R lens;L lens;Add;VA R;VA L;P1
QR 1042;03/04/2019;+2.50/-1.00x90;+2.25;+2.50;6/12;6/9;15
QR 1043;05/06/2019;-1.25;-1.75/-0.50x170;;6/18;6/9;17
QR 9999;05/06/2019;+0.50;+0.75;;6/6;6/6;14
QR 1043;in spring;-1.25;-1.50;;6/18;6/9;16
";
/// The column of `P1`, from 0.
const PRESSURES: &str = "column-7";
/// What it is kept as.
const KEPT_AS: &str = "the old card index";

/// Plays it.
pub async fn taken_once(stage: &mut Stage) -> Result<()> {
    let (hand, engine) = (stage.hand.clone(), stage.browser.engine);
    let address = stage.relay()?.address().to_owned();
    let passphrase = make_vault(&hand, stage.relay()?).await?;
    for (given, number) in PEOPLE {
        put_down(&hand, given, number).await?;
    }
    let file = File::write(engine)?;
    open(&hand, &file).await?;
    columns(&hand).await?;
    dates(&hand).await?;
    hand.read("#earlier-bad", "nobody on record is this")
        .await?;
    hand.read("#earlier-bad", "“in spring” is no date").await?;
    hand.click("#aside-save").await?;
    keep(&hand).await?;
    look(&hand, engine, "earlier").await?;
    take(&hand, engine).await?;

    // The mapping is kept in the vault, so it is there after the vault was opened anew; and the file has nothing new any more.
    hand.go(&address).await?;
    unlock(&hand, &passphrase).await?;
    open(&hand, &file).await?;
    hand.read("#earlier-read-as", KEPT_AS).await?;
    hand.read("#earlier-good", "0 can be taken").await?;
    hand.read("#earlier-bad", "were taken over already").await?;
    ensure!(
        !hand.is_there("#earlier-take").await?,
        "there is something to take a second time"
    );
    hand.click("#earlier-forget").await?;
    hand.see_gone("#earlier-read-as").await?;
    holds(&hand, "left alone").await
}

async fn put_down(hand: &Hand, given: &str, number: &str) -> Result<()> {
    hand.click("#new-person").await?;
    hand.write("#given", given).await?;
    hand.write("#family", "Pennyquick").await?;
    hand.click("#more-numbers summary").await?;
    hand.click("#number-add").await?;
    hand.write("#number-0-0", number).await?;
    hand.write("#number-0-1", "the harbour registry").await?;
    hand.click("#keep-person").await?;
    hand.see("#begin-exam").await?;
    hand.click("header a[href='/']").await
}

async fn open(hand: &Hand, file: &File) -> Result<()> {
    hand.click("#to-vault").await?;
    hand.click("#vault-to-earlier").await?;
    hand.keys("#earlier-file", file.path()?).await?;
    hand.see("#earlier-columns").await?;
    Ok(())
}

/// What no heading tells is said by hand.
async fn columns(hand: &Hand) -> Result<()> {
    holds(hand, "left alone").await?;
    let place = hand
        .ask(&format!(
            "return [...document.getElementById('{PRESSURES}').options].find((one) => one.text === 'right pressure').value"
        ))
        .await?;
    let place = place.as_str().context("pressures are offered")?;
    hand.click(&format!("#{PRESSURES} option[value='{place}']"))
        .await?;
    holds(hand, "right pressure").await?;
    hand.read("#earlier-good", "15 mmHg").await
}

/// Waits until the column of pressures is said to hold this.
async fn holds(hand: &Hand, what: &str) -> Result<()> {
    hand.until(
        &format!("a column that holds “{what}”"),
        &format!(
            "return document.getElementById('{PRESSURES}').selectedOptions[0].text === '{what}'"
        ),
    )
    .await
}

/// 03/04 is the third of April or the fourth of March: nothing in the file tells.
async fn dates(hand: &Hand) -> Result<()> {
    hand.see("#dates-open").await?;
    hand.click("#date-order-month-first").await?;
    hand.read("#earlier-good", "4 March 2019").await?;
    hand.click("#date-order-day-first").await?;
    hand.read("#earlier-good", "3 April 2019").await?;
    hand.read("#earlier-good", "2 can be taken").await
}

async fn keep(hand: &Hand) -> Result<()> {
    hand.write("#earlier-keep-name", KEPT_AS).await?;
    hand.click("#earlier-keep").await?;
    hand.read("#earlier-read-as", KEPT_AS).await
}

/// Takes the good rows; they stand with their people.
async fn take(hand: &Hand, engine: Engine) -> Result<()> {
    hand.click("#earlier-take").await?;
    hand.read("#earlier-report", "2 exams of 2 people").await?;
    hand.read("#earlier-report", "2 rows were kept aside")
        .await?;
    hand.see("#earlier-bad").await?;
    look(hand, engine, "earlier-report").await?;
    hand.click("#earlier-report a").await?;
    hand.read("main", "2019").await?;
    hand.click("header a[href='/']").await?;
    hand.read("#people", "R +2.50 / −1.00 × 90").await?;
    hand.read("#people", "L −1.75 / −0.50 × 170").await
}

/// The file where a browser can pick it up; gone with the journey.
struct File(PathBuf);

impl File {
    fn write(engine: Engine) -> Result<Self> {
        let name = format!("lightround-{}-{}.csv", engine.name(), std::process::id());
        let path = std::env::temp_dir().join(name);
        std::fs::write(&path, FILE)?;
        Ok(Self(path))
    }

    fn path(&self) -> Result<&str> {
        let path: &Path = &self.0;
        path.to_str().context("the file's path is no text")
    }
}

impl Drop for File {
    fn drop(&mut self) {
        let _ = std::fs::remove_file(&self.0);
    }
}
