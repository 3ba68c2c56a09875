//! The whole of it in German: chosen at the gate, an exam of all sections by the same ids as in English, the papers and every
//! page about. Nothing on any of them is English, and every figure has the comma.

use crate::Stage;
use crate::ordinary::SECTIONS;
use anyhow::{Result, ensure};
use lightround_tests::Hand;
use lightround_tests::bedside::{EXAMINER, FAMILY, GIVEN, make_vault};

/// What English can hardly do without and German never has, and a figure with a point. Names, passphrases and addresses are
/// nobody's language; a day has a point on either side of its month; and a mark to choose shows itself.
const FOREIGN: &str = r"
const page = document.querySelector('main') ?? document.body;
const nobodys = ['#offered', '#decimal-mark-point'].map((id) => document.querySelector(id)?.innerText).filter(Boolean);
const text = nobodys.reduce((text, word) => text.replace(word, ''), page.innerText);
const found = text.match(/.{0,30}(\b(the|and|with|of|you|your|this|that|from|which|when|are|is|not yet|last time)\b|(?<![\d.-])\d+\.\d\d?(?![\d.])).{0,30}/);
return found && found[0];";

/// Somebody who looks at every page, and notes what is not German there.
struct Reader {
    hand: Hand,
    foreign: Vec<String>,
}

/// Nobody was seen before: what is taken over from last time elsewhere is put in by hand here.
const INSTEAD: [(&str, &[&str]); 1] = [(
    "Retinoscopy",
    &[
        "lens-right-first-more",
        "lens-right-second-more",
        "work-left",
        "lens-left-first-more",
        "lens-left-second-more",
    ],
)];

/// Pages about, by the taps that lead there.
const ABOUT: [(&str, &[&str]); 7] = [
    ("sums", &["#to-sums"]),
    ("log", &["#to-log"]),
    ("vault", &["#to-vault"]),
    ("settings", &["#to-vault", "#to-settings"]),
    ("keeping", &["#to-vault", "#to-keeping"]),
    ("earlier", &["#to-vault", "#vault-to-earlier"]),
    ("carry", &["#to-vault", "#to-carry"]),
];

/// Plays it.
pub async fn everything(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    hand.go(stage.relay()?.address()).await?;
    hand.click("#speak-de").await?;
    hand.see("#speak-en").await?;
    hand.until(
        "a page that says that it is German",
        "return document.documentElement.lang === 'de'",
    )
    .await?;
    let mut reader = Reader {
        hand: hand.clone(),
        foreign: Vec::new(),
    };
    reader.read("gate").await?;
    hand.click("#to-practice").await?;
    hand.see("#leave-practice").await?;
    reader.read("practice").await?;
    make_vault(&hand, stage.relay()?).await?;
    reader.read("rounds").await?;
    somebody(&hand, &mut reader).await?;
    sections(&hand, &mut reader).await?;
    papers(&hand, &mut reader).await?;
    about(&hand, &mut reader).await?;
    let foreign = reader.foreign.join("\n");
    ensure!(foreign.is_empty(), "not German:\n{foreign}");
    Ok(())
}

async fn somebody(hand: &Hand, reader: &mut Reader) -> Result<()> {
    hand.click("#new-person").await?;
    hand.write("#given", GIVEN).await?;
    hand.write("#family", FAMILY).await?;
    hand.write("#age", "86").await?;
    reader.read("new-person").await?;
    hand.click_twice("#keep-person").await?;
    hand.see("#begin-exam").await?;
    reader.read("person").await?;
    hand.click("#begin-exam [data-part=begin]").await
}

async fn sections(hand: &Hand, reader: &mut Reader) -> Result<()> {
    for (title, usual) in SECTIONS {
        let instead = INSTEAD.iter().find(|(of, _)| *of == title);
        for id in instead.map_or(usual, |(_, taps)| *taps) {
            hand.tap(&format!("#{id}")).await?;
        }
        reader.read(&title.to_lowercase().replace(' ', "-")).await?;
        if title == "Retinoscopy" {
            hand.until(
                "a net with its comma",
                r"return /^[+−]?\d+,\d\d/.test(document.querySelector('#net-off-left').innerText)",
            )
            .await?;
        }
        let before = hand.text(".section-title").await?;
        hand.click("#next").await?;
        hand.until(
            "the next section",
            &format!("return document.querySelector('.section-title')?.innerText !== '{before}'"),
        )
        .await?;
    }
    reader.read("sign").await?;
    hand.click("#sign").await?;
    hand.read("#signatures", EXAMINER).await?;
    reader.read("signed").await
}

async fn papers(hand: &Hand, reader: &mut Reader) -> Result<()> {
    hand.click("#to-papers").await?;
    hand.see("#paper-summary").await?;
    reader.read("papers").await?;
    hand.click("#paper-summary").await?;
    hand.see("#make-pdf").await?;
    reader.read("visit-summary").await?;
    hand.click("#back-to-papers").await?;
    hand.click("header a[href^='/exams']").await?;
    hand.click("#to-story").await?;
    hand.click("header a[href='/']").await?;
    hand.read("#people", FAMILY).await
}

async fn about(hand: &Hand, reader: &mut Reader) -> Result<()> {
    for (name, taps) in ABOUT {
        for tap in taps {
            hand.click(tap).await?;
        }
        hand.see("main").await?;
        reader.read(name).await?;
        hand.ask(&format!("history.go(-{})", taps.len())).await?;
        hand.see("#people").await?;
    }
    Ok(())
}

impl Reader {
    /// What stands on the page now.
    async fn read(&mut self, page: &str) -> Result<()> {
        self.hand.shot(&format!("german-{page}")).await?;
        let foreign = self.hand.ask(FOREIGN).await?;
        if let Some(words) = foreign.as_str() {
            self.foreign.push(format!("{page}: {words}"));
        }
        Ok(())
    }
}
