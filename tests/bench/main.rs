//! What only a browser can measure, each beside something measured in the same run. `cargo xtask bench` runs it and puts the
//! numbers into its table; nothing here asserts a time.

mod find;
mod open;
mod retinoscopy;
mod save;
mod speed;
mod tap;

use anyhow::{Context, Result};
use lightround_tests::{Browser, Engine, Hand, Place, Relay};
use serde_json::{Value, json};
use std::path::PathBuf;

/// How often each thing is measured; the median counts.
const ROUNDS: usize = 9;

#[tokio::test]
#[ignore = "it measures: `cargo xtask bench` runs it"]
async fn measured_in_a_browser() -> Result<()> {
    let place = Place::from_env()?;
    let report = std::env::var_os("LIGHTROUND_BENCH")
        .map(PathBuf::from)
        .context("LIGHTROUND_BENCH is not set: run `cargo xtask bench`")?;
    let button = Place {
        dist: report.with_file_name("one-button").join("dist"),
        ..place.clone()
    };
    let speed = Place {
        dist: report.with_file_name("speed").join("dist"),
        ..place.clone()
    };
    let profile = std::env::temp_dir().join(format!("lightround-bench-{}", std::process::id()));
    let browser = Browser::open(Engine::Chromium, &profile).await?;
    let hand = Hand::on(&browser, &place);
    hand.size(820, 1180).await?;
    let button = Relay::start(&button)?;
    let relay = Relay::start(&place)?;
    let mut measures = speed::speed(&hand, &Relay::start(&speed)?).await?;
    measures.push(tap::tap(&hand, &relay, &button).await?);
    measures.push(save::save(&hand).await?);
    measures.extend(retinoscopy::retinoscopy(&hand).await?);
    hand.click("#leave-practice").await?;
    measures.extend(find::find(&hand).await?);
    measures.push(open::open(&hand, relay, &button).await?);
    std::fs::write(&report, Value::Array(measures).to_string())?;
    browser.close().await?;
    let _ = std::fs::remove_dir_all(profile);
    Ok(())
}

/// One measure in the shape that the task reads.
fn measure(name: &str, ours: f64, against: &str, theirs: f64) -> Value {
    counted("ms", name, ours, against, theirs)
}

/// The same in another unit.
fn counted(unit: &str, name: &str, ours: f64, against: &str, theirs: f64) -> Value {
    json!({ "name": name, "unit": unit, "ours": ours, "against": against, "theirs": theirs })
}

fn median(mut times: Vec<f64>) -> Result<f64> {
    anyhow::ensure!(!times.is_empty(), "nothing was measured");
    times.sort_by(f64::total_cmp);
    Ok(times[times.len() / 2])
}
