//! For how many years records are kept here, and of whom nothing was written down for longer. Nothing goes by itself.

use super::settings::set;
use crate::edge::clock;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::keeping as say;
use leptos::prelude::*;
use optics::change::Threshold;
use record::{PersonId, Settings};
use widgets::{Stepper, TextField};

/// Where it is.
pub const PATH: &str = "/keeping";

/// What is set before anybody has said: no more than where the stepper begins.
const BEGINS_AT: f64 = 8.0;
/// No longer than anybody lives.
const MOST: f64 = 125.0;
/// How many are named at first: a list of thousands helps nobody.
const NAMED: usize = 100;

/// The page.
#[component]
pub fn KeepingPage() -> impl IntoView {
    view! {
        <TopBar title=say::heading()>
            <a class="pill" href="/vault">{say::vault()}</a>
            <a class="pill" href="/">{say::rounds()}</a>
        </TopBar>
        <main class="page">
            <Years/>
            <Past/>
        </main>
    }
    .into_any()
}

/// The way there, with how many are past it.
#[component]
pub fn ToKeeping() -> impl IntoView {
    let past = past();
    let words = move || say::way_there(past.with(Vec::len));
    view! { <p><a class="pill" id="to-keeping" href=PATH>{words}</a></p> }.into_any()
}

fn kept_for() -> Memo<Option<Threshold>> {
    let story = app().door.story();
    Memo::new(move |_| story.with(|story| story.settings().kept_for().cloned()))
}

/// One line of the list: who, and when the last thing was written.
type Named = (PersonId, String, String);

fn past() -> Memo<Vec<Named>> {
    let (story, years) = (app().door.story(), kept_for());
    Memo::new(move |_| {
        let Some(years) = years.with(|years| years.as_ref().map(Threshold::value)) else {
            return Vec::new();
        };
        story.with(|story| {
            let past = story
                .past_keeping(years, clock::today(), &clock::local)
                .into_iter();
            past.filter_map(|past| {
                let name = words::name(story.person(&past.person)?);
                Some((past.person, name, words::date(past.last)))
            })
            .collect()
        })
    })
}

/// The years, with who says so.
#[component]
fn Years() -> impl IntoView {
    let door = app().door;
    let held = kept_for();
    let before = held.get_untracked();
    let value = RwSignal::new(before.as_ref().map_or(BEGINS_AT, Threshold::value));
    let source = RwSignal::new(
        before
            .map(|held| held.source().to_owned())
            .unwrap_or_default(),
    );
    let refused = RwSignal::new(None::<String>);
    let stands = move || match held.get() {
        // The stepper keeps whole years.
        Some(held) => say::set_to(held.value() as usize, &held.source()),
        None => say::nothing_set().to_owned(),
    };
    let keep = move |_| {
        let years = Threshold::new(
            value.get_untracked(),
            source.get_untracked().trim().to_owned(),
        );
        match years {
            Ok(years) => set(door, refused, move |settings| settings.keep_for(years)),
            Err(error) => refused.set(Some(error.to_string())),
        }
    };
    let end = move |_| set(door, refused, Settings::keep_without_end);
    view! {
        <section class="sheet" id="kept-for">
            <h2>{say::for_how_many()}</h2>
            <p id="kept-for-stands">{stands}</p>
            <div class="writes figure-change">
                <Stepper id="kept-years" label=say::years_after() value=Signal::derive(move || Some(value.get())) step=1.0 min=1.0 max=MOST decimals=0
                    on_change=move |new| value.set(new)/>
                <TextField id="kept-source" label=say::which_rule() value=source on_change=move |text| { source.set(text); refused.set(None); } error=refused/>
                <div class="pills">
                    <button type="button" class="pill" id="keep-years" on:click=keep>{say::let_hold()}</button>
                    <Show when=move || held.with(Option::is_some)>
                        <button type="button" class="pill" id="forget-years" on:click=end>{say::remind_nobody()}</button>
                    </Show>
                </div>
            </div>
            <p class="soft">{say::only_reminds()}</p>
        </section>
    }
    .into_any()
}

/// Of whom nothing was written down for longer, the longest ago first.
#[component]
fn Past() -> impl IntoView {
    let (past, held) = (past(), kept_for());
    let rows = move || {
        let named = past.with(|past| past.iter().take(NAMED).cloned().collect::<Vec<_>>());
        named
            .into_iter()
            .map(|named| view! { <Row named/> })
            .collect_view()
    };
    let more = move || past.with(Vec::len).saturating_sub(NAMED);
    view! {
        <Show when=move || held.with(Option::is_some)>
            <section class="sheet" id="past-keeping">
                <h2>{say::older()}</h2>
                <Show when=move || !past.with(Vec::is_empty) fallback=|| view! { <p class="soft" id="none-past">{say::nobody_older()}</p> }>
                    <p class="soft">{say::look_at_each()}</p>
                    <ul class="changes" id="past-list">{rows}</ul>
                    <Show when=move || { more() > 0 }><p class="soft" id="past-more">{move || say::more_after_these(&more())}</p></Show>
                </Show>
            </section>
        </Show>
    }
    .into_any()
}

#[component]
fn Row(named: Named) -> impl IntoView {
    let (person, name, last) = named;
    let path = words::person_path(&person);
    view! { <li><a class="pill" id=format!("past-{person}") href=path>{name}</a>" "<span class="soft">{say::last_entry(&last)}</span></li> }
        .into_any()
}
