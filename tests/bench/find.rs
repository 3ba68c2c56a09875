//! Finding somebody among ten thousand, with the processor slowed fourfold: from a letter typed to the frame that shows who goes
//! with it. The people come in as a home's people do, from lists.

use crate::median;
use anyhow::{Context, Result, ensure};
use lightround_tests::Hand;
use serde_json::{Value, json};
use std::fmt::Write as _;

/// The aim, in milliseconds.
const AIM: f64 = 50.0;
/// How often a name is typed.
const TYPED: usize = 3;
/// Beginnings and endings of invented names.
const GIVEN: [[&str; 10]; 2] = [
    [
        "Al", "Ber", "Cor", "Da", "El", "Fa", "Gre", "Ha", "Is", "Jo",
    ],
    [
        "ra", "lin", "ven", "mir", "tas", "dan", "win", "bel", "ko", "sa",
    ],
];
const FAMILY: [[&str; 10]; 2] = [
    [
        "Anchor", "Buoy", "Cove", "Drift", "Eider", "Fenn", "Gull", "Harbour", "Inlet", "Jetty",
    ],
    [
        "fold", "wick", "ton", "mere", "ling", "holm", "stead", "croft", "quay", "shaw",
    ],
];
/// As it is typed: a name as it is written, and one as it sounds, with a room.
const ASKED: [&str; 2] = ["corven gullwick", "ankerfold 101"];

/// From typing so far to the frame that shows it, as the tap's measure does.
const TYPE: &str = r"
const done = arguments[arguments.length - 1];
const find = document.querySelector('#find');
setTimeout(() => {
  const began = performance.now();
  find.value = TYPED;
  find.dispatchEvent(new InputEvent('input', { bubbles: true }));
  requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => done(performance.now() - began);
    channel.port2.postMessage(0);
  });
}, 150);";

/// Measures it at the list of people, within the aim.
pub async fn find(hand: &Hand) -> Result<Vec<Value>> {
    taken_in(hand).await?;
    let cdp = hand.driver().cdp();
    cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": 4 }))
        .await?;
    let (mut first, mut later) = (Vec::new(), Vec::new());
    for _ in 0..TYPED {
        for asked in ASKED {
            for letters in 1..=asked.len() {
                let script = TYPE.replace("TYPED", &json!(asked[..letters]).to_string());
                let took = hand.ask_later(&script).await?;
                let took = took.as_f64().context("no time came back")?;
                if letters == 1 { &mut first } else { &mut later }.push(took);
            }
            found(hand, asked).await?;
            hand.ask_later(&TYPE.replace("TYPED", "''")).await?;
        }
    }
    cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": 1 }))
        .await?;
    let within = |letter: &str, took| {
        json!({
            "name": format!("finding among 10,000 people, slowed fourfold: {letter}"),
            "unit": "ms",
            "ours": took,
            "budget": AIM,
        })
    };
    Ok(vec![
        within("the first letter", median(first)?),
        within("each letter after it", median(later)?),
    ])
}

/// Whoever was asked for is among those shown: otherwise nothing was measured.
async fn found(hand: &Hand, asked: &str) -> Result<()> {
    let rows = hand
        .ask("return document.querySelectorAll('#found-people .person-row').length")
        .await?;
    ensure!(rows.as_u64().unwrap_or(0) > 0, "nobody goes by {asked}");
    Ok(())
}

/// Ten thousand, in two lists: one takes half as many.
async fn taken_in(hand: &Hand) -> Result<()> {
    for (at, half) in GIVEN[0].chunks(5).enumerate() {
        let path =
            std::env::temp_dir().join(format!("lightround-list-{}-{at}.csv", std::process::id()));
        std::fs::write(&path, list(half))?;
        hand.click("#to-places").await?;
        hand.click("#new-place").await?;
        hand.write("#place-name", ["Tern House", "The Capstan"][at])
            .await?;
        hand.click("#keep-place").await?;
        hand.click("#list-here").await?;
        hand.keys("#list-file", path.to_string_lossy().into_owned())
            .await?;
        hand.click("#take-list").await?;
        hand.see("#list-here").await?;
        std::fs::remove_file(path)?;
        hand.click("#to-rounds").await?;
        hand.see("#find").await?;
    }
    Ok(())
}

fn list(beginnings: &[&str]) -> String {
    let mut rows = "surname,first name,room\n".to_owned();
    let mut room = 0;
    for given in beginnings {
        for given_end in GIVEN[1] {
            for family in FAMILY[0] {
                for family_end in FAMILY[1] {
                    room = room % 200 + 1;
                    let _ = writeln!(rows, "{family}{family_end},{given}{given_end},{room}");
                }
            }
        }
    }
    rows
}
