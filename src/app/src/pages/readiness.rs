//! Readiness before people: does it work offline, is what is written kept, how much is on this tablet.

use crate::edge::keep::Keeping;
use crate::shell::app;
use leptos::prelude::*;

/// The strip above the list, and a plain sentence where the tablet is not ready for a visit.
#[component]
pub fn Readiness() -> impl IntoView {
    let app = app();
    let offline = move || {
        if app.offline.ready.get() {
            "Yes"
        } else {
            "Not yet"
        }
    };
    let kept = move || match app.keeping.get() {
        None => "\u{2026}",
        Some(Keeping::ForGood) => "For good",
        Some(Keeping::MayBeCleared) => "May be cleared",
        Some(Keeping::NoPromise) => "No promise",
    };
    let entries = move || app.door.story().with(record::Story::len).to_string();
    view! {
        <dl class="readiness" id="readiness">
            <div><dt>"works offline"</dt><dd id="works-offline">{offline}</dd></div>
            <div><dt>"kept on this tablet"</dt><dd id="kept-here">{kept}</dd></div>
            <div><dt>"entries here"</dt><dd id="entries-here">{entries}</dd></div>
        </dl>
        {move || not_ready().into_iter().map(|sentence| view! { <p class="caution not-ready">{sentence}</p> }).collect_view()}
        {move || app.door.damaged.get().into_iter().map(|sentence| view! { <p class="caution damaged" role="alert">{sentence}</p> }).collect_view()}
    }
}

/// Why the tablet is not ready for a visit, a sentence each.
fn not_ready() -> Vec<String> {
    let app = app();
    let keeping = match app.keeping.get() {
        Some(Keeping::MayBeCleared) => {
            Some("Not ready for a visit: this browser may clear the records when the tablet runs short of room. Install the app, or ask it to keep this site\u{2019}s data.".to_owned())
        }
        Some(Keeping::NoPromise) => {
            Some("Not ready for a visit: this browser can\u{2019}t promise to keep the records. Install the app, or use a browser that can.".to_owned())
        }
        Some(Keeping::ForGood) | None => None,
    };
    let trouble = app
        .offline
        .trouble
        .get()
        .map(|why| format!("Not ready for a visit: {why}."));
    [keeping, trouble].into_iter().flatten().collect()
}
