//! Files that somebody picks, and files that are handed over to be saved.

use ::words::app::session as say;
use js_sys::{Array, Reflect, Uint8Array};
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{File, FilePropertyBag, HtmlAnchorElement, ShareData, Url};

/// The bytes of a file that was picked.
///
/// # Errors
/// One sentence, where the file has gone or may not be read.
pub async fn read(file: File) -> Result<Vec<u8>, String> {
    let read = JsFuture::from(file.array_buffer()).await;
    read.map(|buffer| Uint8Array::new(&buffer).to_vec())
        .map_err(|_| say::file_unreadable(&file.name()))
}

/// Hands text over to be saved under a name. It begins with a byte order mark, by which spreadsheets know UTF-8.
///
/// # Errors
/// One sentence, where the browser refuses.
pub fn save(name: &str, text: &str) -> Result<(), String> {
    let bytes = format!("\u{feff}{text}").into_bytes();
    file(name, "text/csv", &bytes).and_then(|file| save_file(&file))
}

/// Hands bytes over to be saved under a name.
///
/// # Errors
/// As [`save`].
pub fn save_bytes(name: &str, bytes: &[u8]) -> Result<(), String> {
    file(name, BYTES, bytes).and_then(|file| save_file(&file))
}

/// A file that no program is named for (RFC 2046).
pub const BYTES: &str = "application/octet-stream";

/// Bytes as a file of a name and a kind (RFC 6838).
///
/// # Errors
/// One sentence, where the browser refuses.
pub fn file(name: &str, kind: &str, bytes: &[u8]) -> Result<File, String> {
    let options = FilePropertyBag::new();
    options.set_type(kind);
    let parts = Array::of1(&Uint8Array::from(bytes));
    File::new_with_u8_array_sequence_and_options(&parts, name, &options)
        .map_err(|_| say::file_not_made(&name))
}

/// Hands a file over to be saved.
///
/// # Errors
/// One sentence, where the browser refuses.
pub fn save_file(file: &File) -> Result<(), String> {
    hand_over(file).map_err(|_| say::file_not_saved(&file.name()))
}

/// What the browser's own sheet for sharing is given.
fn to_share(file: &File) -> ShareData {
    let data = ShareData::new();
    data.set_files(&Array::of1(file));
    data
}

/// Whether this browser has a sheet for sharing that takes the file.
pub fn can_share(file: &File) -> bool {
    let navigator = window().navigator();
    let has = Reflect::has(&navigator, &"canShare".into()).unwrap_or(false);
    has && navigator.can_share_with_data(&to_share(file))
}

/// Opens the browser's sheet for sharing. Whoever closes it has changed their mind: nothing is said then.
pub async fn share(file: &File) {
    let asked = window().navigator().share_with_data(&to_share(file));
    drop(JsFuture::from(asked).await);
}

fn hand_over(file: &File) -> Result<(), JsValue> {
    let address = Url::create_object_url_with_blob(file)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(&file.name());
    link.click();
    // Some browsers fetch it only after the click was dealt with.
    set_timeout(
        move || drop(Url::revoke_object_url(&address)),
        Duration::from_mins(1),
    );
    Ok(())
}
