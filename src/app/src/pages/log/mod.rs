//! The visit log: who was seen where, by whom, and what came of it; for whoever manages the clinic.

mod columns;
mod filters;
mod plots;
mod table;
mod take_away;
mod totals;

use crate::edge::clock::today;
use crate::edge::prefs::{self, LogHabits};
use crate::shell::{TopBar, app};
use ::words::app::log as say;
use columns::Columns;
use filters::Filters;
use leptos::prelude::*;
use papers::log::{Column, Filter, Totals, Visit, visits};
use plots::Plots;
use std::sync::Arc;
use table::Rows;
use take_away::TakeAway;
use totals::TotalsOf;

/// What is looked at, and how.
#[derive(Clone, Copy)]
struct Looking {
    filter: RwSignal<Filter>,
    /// The wanted visits.
    visits: Memo<Arc<Vec<Visit>>>,
    totals: Memo<Totals>,
    habits: RwSignal<LogHabits>,
    /// The columns as they are shown and written: chosen, and without what is personal where that is left out.
    columns: Memo<Vec<Column>>,
}

impl Looking {
    fn new() -> Self {
        let story = app().door.story();
        let filter = RwSignal::new(Filter::default());
        let wanted =
            Memo::new(move |_| Arc::new(story.with(|story| filter.with(|f| visits(story, f)))));
        let habits = RwSignal::new(prefs::log());
        Effect::new(move |_| habits.with(prefs::keep_log));
        Self {
            filter,
            visits: wanted,
            totals: Memo::new(move |_| wanted.with(|visits| Totals::of(visits.iter()))),
            habits,
            columns: Memo::new(move |_| habits.with(columns_of)),
        }
    }

    /// Whether names and all that says who somebody is may be shown.
    fn names(self) -> bool {
        self.habits.with(|habits| !habits.nobody)
    }
}

fn columns_of(habits: &LogHabits) -> Vec<Column> {
    let chosen = habits.columns.iter();
    let chosen: Vec<Column> = chosen
        .filter_map(|heading| Column::named(heading))
        .collect();
    if habits.nobody {
        Column::without_personal(&chosen)
    } else {
        chosen
    }
}

/// The page.
#[component]
pub fn LogPage() -> impl IntoView {
    let looking = Looking::new();
    let count = Signal::derive(move || {
        say::visits_count(looking.totals.with(|totals| totals.visits) as usize)
    });
    view! {
        <TopBar title=say::visit_log() beside=count><a class="pill" id="log-back" href="/">{say::rounds()}</a></TopBar>
        <main class="page log-page">
            <Filters looking/>
            <Show when=move || looking.totals.with(|totals| totals.visits) != 0
                fallback=|| view! { <p class="empty" id="log-empty">{say::no_visit_goes()}</p> }>
                <TotalsOf looking/>
                <Plots looking today=today()/>
                <Columns looking/>
                <Rows looking/>
                <TakeAway looking/>
            </Show>
        </main>
    }
    .into_any()
}
