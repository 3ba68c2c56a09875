//! The rows as they would be taken.

use super::Looking;
use crate::pages::table::{SHOWN, more};
use crate::words;
use ::words::app::round as say;
use leptos::prelude::*;
use record::home_list::Listed;

/// What can be taken.
#[component]
pub fn Rows(looking: Looking) -> impl IntoView {
    let good = Memo::new(move |_| looking.good());
    let counted = move || {
        let (all, known) = good.with(|good| {
            (
                good.len(),
                good.iter().filter(|row| row.known.is_some()).count(),
            )
        });
        say::new_and_known(&(all - known), &known)
    };
    let lines = move || {
        good.with(|good| {
            good.iter()
                .take(SHOWN)
                .cloned()
                .map(|row| view! { <GoodRow row/> })
                .collect_view()
        })
    };
    view! {
        <section class="sheet" id="list-good">
            <h2>{move || say::can_be_taken(&good.with(Vec::len))}</h2>
            <p class="soft">{counted}</p>
            <ul class="people">{lines}</ul>
            <p class="soft">{move || more(good.with(Vec::len))}</p>
        </section>
    }
    .into_any()
}

#[component]
fn GoodRow(row: Listed) -> impl IntoView {
    let born = row.born.map(|born| say::born(&words::date(born)));
    let parts = [born, Some(row.unit), Some(row.note), row.identifier];
    let told: Vec<String> = parts
        .into_iter()
        .flatten()
        .filter(|part| !part.is_empty())
        .collect();
    view! {
        <li class="other-row">
            <span class="person-room">{row.room}</span>
            <span class="person-who"><b>{row.name.to_string()}</b><span class="soft">{told.join(" \u{b7} ")}</span></span>
            <span class="soft">{if row.known.is_some() { say::known() } else { say::new() }}</span>
        </li>
    }
}
