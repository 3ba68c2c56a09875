//! What somebody else found, as a file: picked, its columns named, its rows looked at, then taken in one go.

mod kept;
mod report;
mod rows;
mod take;

use crate::edge::clock::today;
use crate::pages::table::{Columns, Dates, KeptAside, Opened, PickFile, faults};
use crate::shell::{TopBar, app};
use ::words::app::earlier as say;
use kept::{KeepMapping, ReadAs};
use leptos::prelude::*;
use record::earlier_list::{
    Bare, DateOrder, Earlier, Field, Judged, Mapping, Table, judge, kept_aside,
};
use record::{Manner, OneOf, Story};
use report::{Report, Taken};
use rows::Rows;
use std::sync::Arc;
use take::Take;
use widgets::{Choice, Pick};

/// The name of the file with the rows that were kept aside.
const ASIDE: &str = "findings kept aside.csv";

/// A file that is being looked at. Nothing of it is kept before it is taken.
#[derive(Clone, Copy)]
struct Looking {
    story: RwSignal<Story>,
    /// How the reader writes days.
    manner: Memo<Manner>,
    table: RwSignal<Opened>,
    mapping: RwSignal<Option<Mapping>>,
    /// The name of the kept mapping by which it is read.
    read_as: RwSignal<Option<String>>,
    judged: Memo<Arc<Vec<Judged>>>,
    /// What came of the file that was taken last.
    taken: RwSignal<Option<Taken>>,
}

impl Looking {
    fn new() -> Self {
        let manner = app().manner;
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
            Arc::new(story.with(|story| judge(&table, &mapping, story, today())))
        });
        Self {
            story,
            manner,
            table,
            mapping,
            read_as: RwSignal::new(None),
            judged,
            taken: RwSignal::new(None),
        }
    }

    /// The rows that can be taken.
    fn good(self) -> Vec<Earlier> {
        self.judged.with(|judged| {
            let good = judged.iter().filter_map(|each| each.verdict.as_ref().ok());
            good.cloned().collect()
        })
    }

    /// The rows that can't, as a file again.
    fn aside(self) -> String {
        let judged = self.judged.get_untracked();
        let table = self.table.get_untracked();
        let dates = self.manner.get_untracked().dates;
        table.map_or_else(String::new, |table| kept_aside(&table, &judged, dates))
    }

    /// Reads a file by what was kept for its kind, else by its headings.
    fn open(self, bytes: &[u8]) -> Result<(), String> {
        self.table.set(None);
        self.taken.set(None);
        let table = Table::read(bytes).map_err(|error| error.to_string())?;
        let settings = self.story.with_untracked(Story::settings);
        let kept = settings.mapping_for(&table);
        let (name, mapping) = kept.map_or_else(
            || (None, Mapping::guess(&table)),
            |(name, mapping)| (Some(name.to_owned()), mapping),
        );
        self.read_as.set(name);
        self.mapping.set(Some(mapping));
        self.table.set(Some(Arc::new(table)));
        Ok(())
    }

    fn guess(self) {
        let guessed = self
            .table
            .with_untracked(|table| table.as_deref().map(Mapping::guess));
        self.read_as.set(None);
        self.mapping.set(guessed);
    }

    fn change(self, change: impl FnOnce(&mut Mapping)) {
        self.mapping.update(|mapping| {
            if let Some(mapping) = mapping {
                change(mapping);
            }
        });
    }

    /// What the mapping says, where there is one.
    fn told<T>(self, tell: impl FnOnce(&Mapping) -> T) -> Option<T> {
        self.mapping.with(|mapping| mapping.as_ref().map(tell))
    }

    /// Whether the file itself leaves something open.
    fn is_open(self, open: fn(&Mapping, &Table) -> bool) -> bool {
        self.table.with(|table| {
            let table = table.as_deref();
            let open = |mapping: &Mapping| table.is_some_and(|table| open(mapping, table));
            self.told(open).unwrap_or_default()
        })
    }
}

/// The page.
#[component]
pub fn EarlierPage() -> impl IntoView {
    let looking = Looking::new();
    let trouble = RwSignal::new(None::<String>);
    let open = move |bytes: Vec<u8>| looking.open(&bytes);
    view! {
        <TopBar title=say::heading() beside=say::from_file().to_owned()><a class="pill" id="earlier-back" href="/vault">{say::vault()}</a></TopBar>
        <main class="page">
            <section class="sheet">
                <p>{say::pick_file()}</p>
                <PickFile id="earlier" on_bytes=open trouble/>
                <ReadAs looking/>
            </section>
            {move || looking.taken.get().map(|taken| view! { <Report taken/> })}
            <Show when=move || looking.table.with(Option::is_some)>
                <WhatHolds looking/>
                <Rows looking/>
                <Aside looking/>
                <Take looking trouble/>
            </Show>
        </main>
    }
    .into_any()
}

/// The columns, how dates and bare numbers are written, and whether all that is kept.
#[component]
fn WhatHolds(looking: Looking) -> impl IntoView {
    let held = Signal::derive(move || {
        looking
            .told(|mapping| mapping.columns.clone())
            .unwrap_or_default()
    });
    let hold = Callback::new(move |(at, field): (usize, Option<Field>)| {
        looking.change(|mapping| {
            if let Some(column) = mapping.columns.get_mut(at) {
                *column = field;
            }
        })
    });
    let said = Signal::derive(move || {
        let faults = looking.told(Mapping::check).unwrap_or_default().into_iter();
        let said: Vec<String> = faults.map(|fault| fault.sentence).collect();
        said.join("; ")
    });
    let dates = Signal::derive(move || looking.told(|mapping| mapping.dates));
    let write = Callback::new(move |order: DateOrder| looking.change(|m| m.dates = order));
    let dates_open = Memo::new(move |_| looking.is_open(Mapping::dates_are_open));
    view! {
        <Columns id="earlier-columns" table=looking.table held on_change=hold said>
            <Dates value=dates on_change=write open=dates_open ask=::words::app::round::ask_sender()/>
            <BareNumbers looking/>
            <KeepMapping looking/>
        </Columns>
    }
    .into_any()
}

/// What 0.3 is, where acuities are written so.
#[component]
fn BareNumbers(looking: Looking) -> impl IntoView {
    let asked = Memo::new(move |_| looking.is_open(Mapping::bare_is_open));
    let value = Signal::derive(move || looking.told(|mapping| mapping.bare).flatten());
    let picks = || -> Vec<Pick<Bare>> {
        let all = Bare::all().into_iter();
        all.map(|bare| Pick::new(bare, || bare.in_words()))
            .collect()
    };
    view! {
        <Show when=move || asked.get()>
            <Choice id="bare" label=say::bare_number() picks=picks() value on_change=move |bare| looking.change(|m| m.bare = Some(bare))/>
        </Show>
    }
    .into_any()
}

/// What can't be taken.
#[component]
fn Aside(looking: Looking) -> impl IntoView {
    view! {
        <KeptAside id="earlier-bad" faults=Signal::derive(move || looking.judged.with(|judged| faults(judged)))
            then=::words::app::round::aside_why_findings()
            name=ASIDE.to_owned() text=move |()| looking.aside()/>
    }
    .into_any()
}
