//! The visits, one a row, newest last as they came.

use super::Looking;
use crate::words;
use ::words::app::log as say;
use leptos::prelude::*;
use papers::log::{Column, Value, Visit};
use std::sync::Arc;

/// So many rows are drawn before somebody asks for more.
const AT_FIRST: usize = 100;

/// The table.
#[component]
pub fn Rows(looking: Looking) -> impl IntoView {
    let shown = RwSignal::new(AT_FIRST);
    let heads = move || {
        let columns = looking.columns.get().into_iter();
        columns
            .map(|column| view! { <th scope="col" class:log-count=is_count(column)>{column.said()}</th> })
            .collect_view()
    };
    let rows = move || rows(&looking.visits.get(), &looking.columns.get(), shown.get());
    let more = move || {
        let all = looking.visits.with(|visits| visits.len());
        all.saturating_sub(shown.get())
    };
    view! {
        <div class="log-frame" role="region" aria-label=say::visits() tabindex="0">
            <table class="log-table" id="log-table"><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>
        </div>
        <Show when=move || more() != 0>
            <button class="pill log-more" type="button" id="log-more" on:click=move |_| shown.update(|shown| *shown += 10 * AT_FIRST)>
                {move || say::show_more(more())}
            </button>
        </Show>
    }
    .into_any()
}

fn rows(visits: &Arc<Vec<Visit>>, columns: &[Column], shown: usize) -> AnyView {
    let each = visits.iter().take(shown).map(|visit| {
        let cells = columns.iter().map(
            |column| view! { <td class:log-count=is_count(*column)>{cell(column.of(visit))}</td> },
        );
        view! { <tr>{cells.collect_view()}</tr> }
    });
    each.collect_view().into_any()
}

const fn is_count(column: Column) -> bool {
    matches!(column, Column::Pairs | Column::Minutes | Column::Age)
}

fn cell(value: Value<'_>) -> String {
    match value {
        Value::Blank => String::new(),
        Value::Text(words) => words.to_owned(),
        Value::Day(day) => words::date(day),
        Value::Count(count) => count.to_string(),
    }
}
