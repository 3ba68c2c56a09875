//! Notices that there may be a network again, or that the app has come to the front. Neither proves anything.

use super::offline::container;
use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::MessageEvent;

/// What the service worker is to hear when there is a network again; `sw.js` knows it by this name.
const TAG: &str = "exchange";
/// What it says then.
const NOW: &str = "exchange-now";

/// Calls `then` at each.
pub fn watch(then: impl Fn() + Clone + 'static) {
    let online = {
        let then = then.clone();
        window_event_listener_untyped("online", move |_| then())
    };
    on_cleanup(move || online.remove());
    // It is the document's event; it bubbles to the window.
    let seen = {
        let then = then.clone();
        window_event_listener_untyped("visibilitychange", move |_| {
            if !document().hidden() {
                then();
            }
        })
    };
    on_cleanup(move || seen.remove());
    hear_the_worker(then);
}

/// For as long as the app lives. Where there is still no network, the worker was wrong, and nothing is tried.
fn hear_the_worker(then: impl Fn() + 'static) {
    let Some(worker) = container() else { return };
    let hear = Closure::<dyn Fn(MessageEvent)>::new(move |message: MessageEvent| {
        let kind = Reflect::get(&message.data(), &"kind".into());
        if kind.is_ok_and(|kind| kind == NOW) && window().navigator().on_line() {
            then();
        }
    });
    let _ = worker.add_event_listener_with_callback("message", hear.as_ref().unchecked_ref());
    hear.forget();
}

/// Without a network: has the browser wake this page once there is one, even behind others. Some engines can't, and the page
/// goes by the signs above alone.
pub fn ask_to_be_woken() {
    if !window().navigator().on_line() {
        leptos::task::spawn_local(async {
            let _ = register().await;
        });
    }
}

async fn register() -> Result<(), JsValue> {
    let worker = container().ok_or(JsValue::NULL)?;
    let registration = JsFuture::from(worker.get_registration()).await?;
    let sync = Reflect::get(&registration, &"sync".into())?;
    let register: Function = Reflect::get(&sync, &"register".into())?.dyn_into()?;
    let registered: Promise = register.call1(&sync, &TAG.into())?.dyn_into()?;
    JsFuture::from(registered).await.map(drop)
}
