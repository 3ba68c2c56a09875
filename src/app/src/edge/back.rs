//! Notices that there may be a network again, or that the app has come to the front. Neither proves anything.

use leptos::prelude::*;

/// Calls `then` at each.
pub fn watch(then: impl Fn() + Clone + 'static) {
    let online = {
        let then = then.clone();
        window_event_listener_untyped("online", move |_| then())
    };
    on_cleanup(move || online.remove());
    // It is the document's event; it bubbles to the window.
    let seen = window_event_listener_untyped("visibilitychange", move |_| {
        if !document().hidden() {
            then();
        }
    });
    on_cleanup(move || seen.remove());
}
