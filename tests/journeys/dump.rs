//! Everything that the browser has at rest for this address, as text and as bytes, to look for what must not be there.

use anyhow::{Context, Result};
use lightround_tests::Hand;

/// Every IndexedDB store, local and session storage and every cached response, each byte as one character (Latin-1), so
/// that a search finds a name in bytes as well as in text.
const DUMP: &str = r"
const done = arguments[arguments.length - 1];
const bytes = (value) => Array.from(value, (byte) => String.fromCharCode(byte)).join('');
const flat = (value) => {
  if (value instanceof ArrayBuffer) return bytes(new Uint8Array(value));
  if (ArrayBuffer.isView(value)) return bytes(new Uint8Array(value.buffer, value.byteOffset, value.byteLength));
  if (value && typeof value === 'object') return Object.entries(value).map(([name, inner]) => name + '=' + flat(inner)).join(';');
  return String(value);
};
const asked = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});
(async () => {
  const found = [];
  let records = 0;
  const names = indexedDB.databases ? (await indexedDB.databases()).map((each) => each.name) : ['lightround'];
  for (const name of names) {
    const database = await asked(indexedDB.open(name));
    for (const store of database.objectStoreNames) {
      const objects = database.transaction(store).objectStore(store);
      const [keys, values] = await Promise.all([asked(objects.getAllKeys()), asked(objects.getAll())]);
      records += values.length;
      keys.forEach((key, at) => found.push(`${name}/${store}: ${flat(key)} ${flat(values[at])}`));
    }
    database.close();
  }
  for (const storage of [localStorage, sessionStorage]) found.push(JSON.stringify(storage));
  const written = found.join('\n');
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      found.push(request.url);
      const response = await cache.match(request);
      const type = response.headers.get('content-type') ?? '';
      // The built files hold no person; what would betray one is a cached page or answer, which is text.
      if (!/wasm|font|image/.test(type)) found.push(await response.text());
    }
  }
  done({ records, written, text: found.join('\n') });
})().catch((error) => done({ error: String(error) }));
";

/// What is at rest, and how many IndexedDB records it holds.
pub struct AtRest {
    /// IndexedDB records.
    pub records: u64,
    /// The stores alone, without the app's own files, which name sections and lines of the chart.
    pub written: String,
    /// Everything, joined.
    pub text: String,
}

/// Reads it all out.
pub async fn at_rest(hand: &Hand) -> Result<AtRest> {
    let found = hand.ask_later(DUMP).await?;
    anyhow::ensure!(
        found["error"].is_null(),
        "the dump failed: {}",
        found["error"]
    );
    Ok(AtRest {
        records: found["records"]
            .as_u64()
            .context("the dump counts no records")?,
        written: found["written"]
            .as_str()
            .context("the dump holds no stores")?
            .to_owned(),
        text: found["text"]
            .as_str()
            .context("the dump holds no text")?
            .to_owned(),
    })
}

impl AtRest {
    /// Fails where any of these words stands in it, as UTF-8 or as UTF-16, in any case.
    pub fn holds_none_of(&self, words: &[&str]) -> Result<()> {
        let text = self.text.to_lowercase();
        for word in words {
            let word = word.to_lowercase();
            let narrow: String = word.bytes().map(char::from).collect();
            let wide: String = word
                .encode_utf16()
                .flat_map(u16::to_le_bytes)
                .map(char::from)
                .collect();
            for form in [&word, &narrow, &wide] {
                anyhow::ensure!(
                    !text.contains(form.as_str()),
                    "“{word}” is at rest in the clear"
                );
            }
        }
        Ok(())
    }
}
