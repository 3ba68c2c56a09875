//! Whether the browser promises to keep what is written on this tablet.

use js_sys::{Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageManager;

/// The browser's promise, in the words that a page shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// It never clears this storage by itself.
    ForGood,
    /// It may clear it when the tablet runs short of room.
    MayBeCleared,
    /// It can't be asked.
    NoPromise,
}

/// Asks for persistent storage and tells what is promised: at once, and again once the browser has answered. Some ask a
/// person first, and until that person says yes nothing is promised.
pub async fn ask(tell: impl Fn(Keeping)) {
    let navigator = leptos::prelude::window().navigator();
    let storage = Reflect::get(&navigator, &"storage".into()).unwrap_or_default();
    let can_ask = |name: &str| Reflect::has(&storage, &name.into()).unwrap_or(false);
    if !storage.is_object() || !can_ask("persist") || !can_ask("persisted") {
        return tell(Keeping::NoPromise);
    }
    let storage: StorageManager = storage.unchecked_into();
    if !yes(storage.persisted()).await {
        tell(Keeping::MayBeCleared);
        if !yes(storage.persist()).await {
            return;
        }
    }
    tell(Keeping::ForGood);
}

async fn yes(asked: Result<Promise, JsValue>) -> bool {
    match asked {
        Ok(promise) => JsFuture::from(promise)
            .await
            .is_ok_and(|answer| answer.is_truthy()),
        Err(_) => false,
    }
}
