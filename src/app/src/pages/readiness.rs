//! Readiness before people: does it work offline, is what is written kept, how much is on this tablet.

use crate::edge::keep::Keeping;
use crate::session::snapshot;
use crate::shell::app;
use ::words::app::pages as say;
use leptos::prelude::*;
use said::InWords;

/// The strip above the list, and a plain sentence where the tablet is not ready for a visit.
#[component]
pub fn Readiness() -> impl IntoView {
    let app = app();
    let offline = move || {
        if app.offline.ready.get() {
            say::yes()
        } else {
            say::not_yet()
        }
    };
    let kept = move || match app.keeping.get() {
        None => "\u{2026}",
        Some(Keeping::ForGood) => say::good(),
        Some(Keeping::MayBeCleared) => say::may_cleared(),
        Some(Keeping::NoPromise) => say::no_promise(),
    };
    let entries = move || app.door.story().with(record::Story::len).to_string();
    let opened = move || snapshot::slug(app.door.resumed.get());
    let passed_over = move || snapshot::passed_over(app.door.resumed.get());
    view! {
        <dl class="readiness" id="readiness" data-opened=opened>
            <div><dt>{say::works_offline()}</dt><dd id="works-offline">{offline}</dd></div>
            <div><dt>{say::kept_tablet()}</dt><dd id="kept-here">{kept}</dd></div>
            <div><dt>{say::entries_here()}</dt><dd id="entries-here">{entries}</dd></div>
        </dl>
        {move || not_ready().into_iter().map(|sentence| view! { <p class="caution not-ready">{sentence}</p> }).collect_view()}
        {move || app.door.damaged.get().into_iter().map(|sentence| view! { <p class="caution damaged" role="alert">{sentence}</p> }).collect_view()}
        {move || passed_over().map(|why| view! { <p class="soft" id="read-anew" role="status">{say::opening_took_longer(&why.in_words())}</p> })}
    }
}

/// Why the tablet is not ready for a visit, a sentence each.
fn not_ready() -> Vec<String> {
    let app = app();
    let keeping = match app.keeping.get() {
        Some(Keeping::MayBeCleared) => Some(say::may_be_cleared_why().to_owned()),
        Some(Keeping::NoPromise) => Some(say::no_promise_why().to_owned()),
        Some(Keeping::ForGood) | None => None,
    };
    let trouble = app.offline.trouble.get().map(|why| say::not_ready(&why));
    [keeping, trouble].into_iter().flatten().collect()
}
