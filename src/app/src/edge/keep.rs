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

/// Asks for persistent storage, once; a browser that has promised before answers at once.
pub async fn ask() -> Keeping {
    let navigator = leptos::prelude::window().navigator();
    let Ok(storage) = Reflect::get(&navigator, &"storage".into()) else {
        return Keeping::NoPromise;
    };
    let can_ask = |name: &str| Reflect::has(&storage, &name.into()).unwrap_or(false);
    if !storage.is_object() || !can_ask("persist") || !can_ask("persisted") {
        return Keeping::NoPromise;
    }
    let storage: StorageManager = storage.unchecked_into();
    if yes(storage.persisted()).await || yes(storage.persist()).await {
        Keeping::ForGood
    } else {
        Keeping::MayBeCleared
    }
}

async fn yes(asked: Result<Promise, JsValue>) -> bool {
    match asked {
        Ok(promise) => JsFuture::from(promise)
            .await
            .is_ok_and(|answer| answer.is_truthy()),
        Err(_) => false,
    }
}
