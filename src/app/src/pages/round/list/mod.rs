//! The list that a home sends: picked, its columns named, its rows looked at, then taken in one go.

mod rows;

use crate::edge::clock::today;
use crate::pages::table::{Columns, Dates, KeptAside, Opened, PickFile, faults};
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::round as say;
use leptos::prelude::*;
use leptos_router::hooks::{use_navigate, use_params_map};
use record::home_list::{Field, Judged, Listed, Mapping, Table, judge, kept_aside};
use record::{PlaceId, RoundId};
use rows::Rows;
use std::sync::Arc;

/// A list that is being looked at. Nothing of it is kept before it is taken.
#[derive(Clone, Copy)]
struct Looking {
    /// The place that sent it, by its name.
    place: Memo<String>,
    table: RwSignal<Opened>,
    mapping: RwSignal<Option<Mapping>>,
    judged: Memo<Arc<Vec<Judged>>>,
}

impl Looking {
    fn new(place: Memo<String>) -> Self {
        let story = app().door.story();
        let table = RwSignal::new(Opened::None);
        let mapping = RwSignal::new(None::<Mapping>);
        let judged = Memo::new(move |_| {
            let (Some(table), Some(mapping)) = (table.get(), mapping.get()) else {
                return Arc::default();
            };
            if !mapping.check().is_empty() {
                return Arc::default();
            }
            Arc::new(story.with(|story| judge(&table, &mapping, story, &place.get(), today())))
        });
        Self {
            place,
            table,
            mapping,
            judged,
        }
    }

    /// The rows that can be taken.
    fn good(self) -> Vec<Listed> {
        self.judged.with(|judged| {
            let good = judged.iter().filter_map(|each| each.verdict.as_ref().ok());
            good.cloned().collect()
        })
    }

    fn open(self, bytes: &[u8]) -> Result<(), String> {
        self.table.set(None);
        let table = Table::read(bytes).map_err(|error| error.to_string())?;
        self.mapping.set(Some(Mapping::guess(&table)));
        self.table.set(Some(Arc::new(table)));
        Ok(())
    }
}

/// Whose list it is: the address names a round, or a place.
fn whose() -> (Memo<Option<PlaceId>>, Memo<Option<RoundId>>) {
    let (story, params) = (app().door.story(), use_params_map());
    let round = Memo::new(move |_| params.with(|params| words::round_id(&params.get("round")?)));
    let place = Memo::new(move |_| {
        let named = params.with(|params| words::place_id(&params.get("place")?));
        let of_round = || story.with(|story| story.round(&round.get()?)?.details().place);
        named.or_else(of_round)
    });
    (place, round)
}

/// The page.
#[component]
pub fn ListPage() -> impl IntoView {
    let (door, (place, round)) = (app().door, whose());
    let name = Memo::new(move |_| {
        door.story()
            .with(|story| {
                let known = story.place(&place.get()?)?;
                Some(known.details().name.clone())
            })
            .unwrap_or_default()
    });
    let looking = Looking::new(name);
    let trouble = RwSignal::new(None::<String>);
    let open = move |bytes: Vec<u8>| looking.open(&bytes);
    let back = Signal::derive(move || match (round.get(), place.get()) {
        (Some(round), _) => words::round_path(&round),
        (None, Some(place)) => words::place_path(&place),
        (None, None) => "/places".to_owned(),
    });
    view! {
        <TopBar title=say::list_home() beside=name><a class="pill" id="list-back" href=back>{say::back()}</a></TopBar>
        <main class="page">
            <Show when=move || place.get().is_some() fallback=|| view! { <p class="empty">{say::list_needs_place()}</p> }>
                <section class="sheet">
                    <p>{say::list_pick()}</p>
                    <PickFile id="list" on_bytes=open trouble/>
                </section>
                <Show when=move || looking.table.with(Option::is_some)>
                    <WhatHolds looking/>
                    <Rows looking/>
                    <Aside looking/>
                    <Take looking place round back trouble/>
                </Show>
            </Show>
        </main>
    }
    .into_any()
}

/// The columns, and the order of dates where there are any.
#[component]
fn WhatHolds(looking: Looking) -> impl IntoView {
    let mapping = looking.mapping;
    let held = Signal::derive(move || {
        mapping.with(|mapping| {
            let mapping = mapping.as_ref();
            mapping.map_or_else(Vec::new, |mapping| mapping.columns.clone())
        })
    });
    let hold = Callback::new(move |(at, field): (usize, Option<Field>)| {
        mapping.update(|mapping| {
            let columns = mapping.as_mut().map(|mapping| &mut mapping.columns);
            if let Some(column) = columns.and_then(|columns| columns.get_mut(at)) {
                *column = field;
            }
        })
    });
    let said = Signal::derive(move || {
        let faults = mapping.with(|mapping| mapping.as_ref().map(Mapping::check));
        let faults = faults.unwrap_or_default().into_iter();
        let said: Vec<String> = faults.map(|fault| fault.sentence).collect();
        said.join("; ")
    });
    let has_dates = move || held.with(|held| held.contains(&Some(Field::Born)));
    let open = Memo::new(move |_| {
        looking.table.with(|table| {
            let table = table.as_deref();
            let open = |mapping: &Mapping| table.is_some_and(|table| mapping.dates_are_open(table));
            mapping.with(|mapping| mapping.as_ref().is_some_and(open))
        })
    });
    let dates = Signal::derive(move || mapping.with(|m| m.as_ref().map(|mapping| mapping.dates)));
    let write = Callback::new(move |order| {
        mapping.update(|mapping| {
            if let Some(mapping) = mapping {
                mapping.dates = order;
            }
        })
    });
    view! {
        <Columns id="list-columns" table=looking.table held on_change=hold said>
            <Show when=has_dates><Dates value=dates on_change=write open ask=say::ask_home()/></Show>
        </Columns>
    }
    .into_any()
}

/// What can't be taken.
#[component]
fn Aside(looking: Looking) -> impl IntoView {
    let manner = app().manner;
    let text = move |()| {
        let judged = looking.judged.get_untracked();
        let table = looking.table.get_untracked();
        let dates = manner.get_untracked().dates;
        table.map_or_else(String::new, |table| kept_aside(&table, &judged, dates))
    };
    view! {
        <KeptAside id="list-bad" faults=Signal::derive(move || looking.judged.with(|judged| faults(judged)))
            then=say::aside_why()
            name=Signal::derive(move || format!("kept aside {}.csv", looking.place.get())) text/>
    }
    .into_any()
}

/// The one button that writes.
#[component]
fn Take(
    looking: Looking,
    place: Memo<Option<PlaceId>>,
    round: Memo<Option<RoundId>>,
    back: Signal<String>,
    trouble: RwSignal<Option<String>>,
) -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let taking = RwSignal::new(false);
    let count = Memo::new(move |_| looking.good().len());
    let take = move |_| {
        let Some(place) = place.get_untracked().filter(|_| !taking.get_untracked()) else {
            return;
        };
        taking.set(true);
        let (rows, navigate, back) = (looking.good(), navigate.clone(), back.get_untracked());
        leptos::task::spawn_local(async move {
            match door.take_list(place, rows, round.get_untracked()).await {
                Ok(()) => navigate(&back, leptos_router::NavigateOptions::default()),
                Err(sentence) => {
                    trouble.set(Some(say::nothing_taken(&sentence)));
                    taking.set(false);
                }
            }
        });
    };
    let words = move || say::take_people(count.get());
    view! {
        <Show when=move || count.get() != 0>
            <button type="button" class="act" id="take-list" disabled=move || taking.get() on:click=take.clone()>{words}</button>
        </Show>
    }
}
