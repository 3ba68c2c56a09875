//! What must be tested inside a browser: a page of its own tries the tablet's storage and the vault's primitives there, and
//! shows what became of every case.

use crate::Stage;
use anyhow::{Context, Result, ensure};
use lightround_tests::{Place, Relay};
use serde_json::{Value, json};

/// Each set with its cases, and how many of them can't be asked because a nonce or a signature has another length than the
/// type. Of Wycheproof's sets, counted in the files that are published.
const COUNTS: [(&str, u64, u64); 12] = [
    ("RFC 8439, ChaCha20-Poly1305", 2, 0),
    ("draft-irtf-cfrg-xchacha-03, XChaCha20-Poly1305", 1, 0),
    ("RFC 9106, Argon2id", 1, 0),
    ("RFC 9180, HPKE", 1, 0),
    ("RFC 8032, Ed25519", 4, 0),
    ("RFC 5869, HKDF-SHA256", 3, 0),
    ("RFC 7748, X25519", 2, 0),
    ("Wycheproof, XChaCha20-Poly1305", 315, 9),
    ("Wycheproof, ChaCha20-Poly1305", 325, 9),
    ("Wycheproof, Ed25519", 151, 12),
    ("Wycheproof, HKDF-SHA256", 86, 0),
    ("Wycheproof, X25519", 518, 0),
];
/// What the tablet's storage is asked, and the fewest cases of it: what every place that keeps frames promises, then what only
/// a tablet's storage does.
const KEPT: [(&str, u64); 2] = [("IndexedDB, frames", 60), ("IndexedDB, beyond frames", 60)];

/// Each set: its name, how many cases it states, how many lines of each kind it has, and the lines of those that failed.
const SETS: &str = r#"
return [...document.querySelectorAll('section')].map((set) => {
  const lines = (ended) => [...set.querySelectorAll(`li[data-ended="${ended}"]`)];
  return {
    name: set.dataset.set,
    stated: Number(set.dataset.stated),
    passed: lines('passed').length,
    leftOut: lines('left-out').length,
    failed: lines('failed').map((line) => line.textContent),
  };
});"#;

/// Nothing fails, and there is as much of everything as there must be.
pub async fn every_case(stage: &mut Stage) -> Result<()> {
    let dist = std::env::var_os("LIGHTROUND_INSIDE")
        .context("LIGHTROUND_INSIDE is not set: run the journeys with `cargo xtask test`")?;
    let place = Place {
        dist: dist.into(),
        ..stage.place.clone()
    };
    let server = Relay::start(&place)?;
    stage.hand.go(server.address()).await?;
    stage.hand.see("#all").await?;
    let sets = stage.hand.ask(SETS).await?;
    let sets = sets.as_array().context("the page shows no sets")?;
    let split = sets.split_at_checked(KEPT.len());
    let (kept, published) = split.context("the page shows too few sets")?;
    for (fewest, shown) in KEPT.into_iter().zip(kept) {
        every_promise_is_kept(fewest, shown)?;
    }
    ensure!(published.len() == COUNTS.len(), "{} sets", published.len());
    for (counts, shown) in COUNTS.into_iter().zip(published) {
        let expected = expected(counts);
        ensure!(*shown == expected, "{shown}\nis not\n{expected}");
    }
    Ok(())
}

/// The browser's storage does what it promises, and is asked about enough of it.
fn every_promise_is_kept((name, fewest): (&str, u64), shown: &Value) -> Result<()> {
    let cases = shown["stated"].as_u64().context("no count of cases")?;
    ensure!(cases >= fewest, "{name}: {cases} cases are too few");
    let expected = expected((name, cases, 0));
    ensure!(*shown == expected, "{shown}\nis not\n{expected}");
    Ok(())
}

/// A set as it is shown where nothing failed.
fn expected((name, stated, left_out): (&str, u64, u64)) -> Value {
    json!({
        "name": name,
        "stated": stated,
        "passed": stated - left_out,
        "leftOut": left_out,
        "failed": [],
    })
}
