//! Whether tablets of one vault show the same: everybody, what was found of them, the log, and how many entries tell it.

use anyhow::{Context, Result, bail, ensure};
use lightround_tests::Hand;
use std::time::Duration;
use tokio::time::{Instant, sleep};

/// How long tablets may take to become equal once everything was sent.
const PATIENCE: Duration = Duration::from_secs(45);

/// The list of people without what may be done next, which a viewer is not offered.
const PEOPLE: &str = "return [...document.querySelectorAll('#people .person-row')].map((row) =>
    ['.person-room', '.person-who', '.person-last'].map((part) => row.querySelector(part).textContent).join(' | ')).join('\\n')";

/// How today's rounds stand.
const ROUNDS: &str = "return [...document.querySelectorAll('[data-part=round]')].map((round) =>
    ['h2', '[data-part=glance]'].map((part) => round.querySelector(part).textContent).join(': ')).join('\\n')";

/// Everything that is written down in the exam that is open, with its signatures and amendments.
const EXAM: &str = "return [...document.querySelectorAll('.exam-middle > .sheet, #signatures')].map((part) => part.textContent).join('\\n')";

/// The log's figures and rows.
const LOG: &str = "return ['#log-totals', '#log-table tbody'].map((part) => document.querySelector(part).textContent).join('\\n')";

/// What one tablet shows.
#[derive(Debug, PartialEq)]
pub struct Shown {
    people: String,
    rounds: String,
    exam: String,
    log: String,
}

impl Shown {
    /// Goes through the pages of a tablet, beginning and ending at the list. The exam is that of this person.
    pub async fn of(hand: &Hand, person: &str) -> Result<Self> {
        to_the_list(hand).await?;
        let (people, rounds) = (said(hand, PEOPLE).await?, said(hand, ROUNDS).await?);
        to_the_exam(hand, person).await?;
        hand.see("#signatures").await?;
        let exam = said(hand, EXAM).await?;
        to_the_list(hand).await?;
        hand.click("#to-log").await?;
        hand.see("#log-table").await?;
        let log = said(hand, LOG).await?;
        hand.click("#log-back").await?;
        Ok(Self {
            people,
            rounds,
            exam,
            log,
        })
    }

    /// Whether these words stand in the list.
    pub fn knows(&self, person: &str) -> bool {
        self.people.contains(person)
    }
}

async fn said(hand: &Hand, script: &str) -> Result<String> {
    let said = hand.ask(script).await?;
    let said = said.as_str().context("the page says nothing")?;
    ensure!(!said.trim().is_empty(), "nothing is shown: {script}");
    Ok(said.to_owned())
}

/// To the list of people, from wherever the tablet is.
pub async fn to_the_list(hand: &Hand) -> Result<()> {
    if hand.is_there("#find").await? {
        return Ok(());
    }
    if hand.is_there("#to-story").await? {
        hand.click("#to-story").await?;
    }
    if hand.is_there("#back-to-vault").await? {
        hand.click("#back-to-vault").await?;
    }
    hand.click("header a[href='/']").await?;
    hand.see("#find").await.map(drop)
}

/// To the last page of a person's one exam, from the list.
pub async fn to_the_exam(hand: &Hand, person: &str) -> Result<()> {
    to_the_list(hand).await?;
    hand.click(&format!("#people a[href='{person}']")).await?;
    hand.click(".told h2 a").await
}

/// Goes to the relay now, and waits until what was written here is there.
async fn exchange(hand: &Hand) -> Result<()> {
    hand.click("#home-state").await?;
    hand.click("#go-home").await?;
    hand.read("#home-status", "The relay answers").await?;
    hand.see("#home-state[data-home='all']").await.map(drop)
}

/// Exchanges on all of them until each has as many entries as the others; gives how many.
pub async fn until_equal(hands: &[&Hand]) -> Result<u64> {
    let until = Instant::now() + PATIENCE;
    for hand in hands {
        exchange(hand).await?;
    }
    loop {
        let mut counts = Vec::new();
        for hand in hands {
            counts.push(entries(hand).await?);
        }
        if counts.iter().all(|count| *count == counts[0]) {
            return Ok(counts[0]);
        }
        if Instant::now() > until {
            bail!("they hold {counts:?} entries");
        }
        for hand in hands {
            hand.click("#go-home").await?;
        }
        sleep(Duration::from_millis(100)).await;
    }
}

async fn entries(hand: &Hand) -> Result<u64> {
    let count = hand.text("#entries-here").await?;
    count.parse().with_context(|| format!("{count} entries"))
}
