//! A change on the screen until it is on disk, beside a bare write of as many bytes to the same database engine.

use crate::{ROUNDS, measure, median};
use anyhow::{Context, Result};
use lightround_tests::Hand;
use serde_json::Value;

/// Changes a finding and waits until the page says that it is kept.
fn change_until_kept(selector: &str) -> String {
    format!(
        "const done = arguments[arguments.length - 1];
         const kept = document.querySelector('#kept');
         const began = performance.now();
         document.querySelector('{selector}').click();
         const look = new MutationObserver(() => {{
           if (kept.dataset.keeping === 'kept') {{ look.disconnect(); done(performance.now() - began); }}
         }});
         look.observe(kept, {{ attributes: true }});"
    )
}

/// A strict write of 1 KiB, the class that a sealed section is padded to, to a database of its own.
const BARE: &str = r"
const done = arguments[arguments.length - 1];
const request = indexedDB.open('bare', 1);
request.onupgradeneeded = () => request.result.createObjectStore('bytes');
request.onsuccess = () => {
  const database = request.result;
  const bytes = crypto.getRandomValues(new Uint8Array(1024));
  const began = performance.now();
  const transaction = database.transaction('bytes', 'readwrite', { durability: 'strict' });
  transaction.objectStore('bytes').put(bytes, 1);
  transaction.oncomplete = () => { const took = performance.now() - began; database.close(); done(took); };
};";

/// Measures it in the exam that is open.
pub async fn save(hand: &Hand) -> Result<Value> {
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for round in 0..ROUNDS {
        let selector = ["#read-line-6-36", "#read-line-6-24"][round % 2];
        ours.push(
            hand.ask_later(&change_until_kept(selector))
                .await?
                .as_f64()
                .context("no time came back")?,
        );
        theirs.push(
            hand.ask_later(BARE)
                .await?
                .as_f64()
                .context("no time came back")?,
        );
    }
    Ok(measure(
        "a section's change, from tap to disk",
        median(ours)?,
        "bare strict write of 1 KiB",
        median(theirs)?,
    ))
}
