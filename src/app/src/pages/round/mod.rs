//! A round: who is visited on a day, in which order, and what became of it.

mod at_hand;
mod kit;
mod list;
mod new;
mod next;
mod order;
mod plan;
mod row;
mod two_versions;
mod undo;
mod visits;
mod who;

pub use at_hand::AtHand;
pub use list::ListPage;
pub use new::NewRoundPage;

use crate::edge::clock::{time_said, today};
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::round as say;
use kit::KitList;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use next::Next;
use order::Ordering;
use plan::PlanOfRound;
use record::{Place, Round, RoundId, Story};
use two_versions::TwoVersions;
use undo::{Doing, UndoStrip};
use visits::Visits;
use who::WhoElse;

/// What a round is called: its place, else the word for a day of several addresses.
pub fn called(story: &Story, round: &Round) -> String {
    let place = round.details().place.and_then(|place| story.place(&place));
    place.map_or_else(|| say::several_addresses().to_owned(), name_of)
}

fn name_of(place: &Place) -> String {
    place.details().name.clone()
}

/// "5 to see · 2 done · started 09:40".
fn at_a_glance(story: &Story, round: &Round) -> String {
    let glance = story.glance(round);
    let started = glance
        .started
        .map(|stamp| say::started(&time_said(stamp.wall_ms)));
    format!("{glance}{}", started.unwrap_or_default())
}

/// What to be reminded of before a round: a notice, what is not in the bag.
fn reminders(story: &Story, round: &Round) -> Vec<String> {
    let (details, today) = (round.details(), today());
    if details.called_off || details.date < today {
        return Vec::new();
    }
    let notice = details
        .notice
        .as_ref()
        .and_then(|notice| notice.reminder(today));
    let kit = story.kit();
    let missing = kit.missing(round.packed());
    let bag = (details.date == today && !missing.is_empty())
        .then(|| say::not_in_bag(&missing.join(", ")));
    [notice, bag].into_iter().flatten().collect()
}

/// The round that the address names.
#[component]
pub fn RoundPage() -> impl IntoView {
    let story = app().door.story();
    let params = use_params_map();
    let named = Memo::new(move |_| params.with(|params| words::round_id(&params.get("round")?)));
    let round = Memo::new(move |_| {
        let id = named.get()?;
        story.with(|story| story.round(&id).map(Round::id))
    });
    let told = move |tell: fn(&Story, &Round) -> String| {
        Memo::new(move |_| {
            story.with(|story| {
                round
                    .get()
                    .and_then(|id| story.round(&id))
                    .map(|round| tell(story, round))
            })
        })
    };
    let (name, date) = (
        told(called),
        told(|_, round| words::long_date(round.details().date)),
    );
    let title = Signal::derive(move || name.get().unwrap_or_else(|| say::no_such_round().into()));
    let beside = Signal::derive(move || date.get().unwrap_or_default());
    view! {
        <TopBar title beside><a class="pill" id="to-rounds" href="/">{say::rounds()}</a></TopBar>
        <main class="page">{move || round.get().map(|round| view! { <RoundBody round/> })}</main>
    }
}

#[component]
fn RoundBody(round: RoundId) -> impl IntoView {
    let doing = Doing::provide();
    let by_hand = RwSignal::new(false);
    let list = move || {
        if by_hand.get() {
            view! { <Ordering round/> }.into_any()
        } else {
            view! { <Visits round marks=true/> }.into_any()
        }
    };
    view! {
        <TwoVersions round/>
        <Glance round/>
        <Next round/>
        <div class="pills writes" id="round-order">
            <button type="button" class="pill" id="order-rooms" on:click=move |_| doing.order_by_room(round)>{say::order_room()}</button>
            <button type="button" class="pill" id="order-hand" aria-pressed=move || by_hand.get().to_string() on:click=move |_| by_hand.update(|by_hand| *by_hand = !*by_hand)>
                {move || if by_hand.get() { say::order_done() } else { say::order_by_hand() }}
            </button>
        </div>
        <h2 class="unseen">{say::who_visited()}</h2>
        {list}
        <div class="writes as-if-not-there">
            <WhoElse round/>
            <PlanOfRound round/>
            <KitList round/>
        </div>
        <UndoStrip/>
    }
    .into_any()
}

/// How the round stands, and what to be reminded of.
#[component]
fn Glance(round: RoundId) -> impl IntoView {
    let story = app().door.story();
    let glance = Memo::new(move |_| {
        story.with(|story| {
            story.round(&round).map(|round| {
                (
                    at_a_glance(story, round),
                    reminders(story, round),
                    round.details().note.clone(),
                    round.details().called_off,
                )
            })
        })
    });
    let part = move || glance.get().unwrap_or_default();
    view! {
        <p class="round-glance" data-part="glance">{move || part().0}</p>
        {move || part().3.then(|| view! { <p class="caution">{say::round_called_off()}</p> })}
        {move || (!part().2.trim().is_empty()).then(|| view! { <p class="caution" data-part="round-note">{part().2}</p> })}
        {move || part().1.into_iter().map(|sentence| view! { <p class="caution" data-part="reminder">{sentence}</p> }).collect_view()}
    }
}
