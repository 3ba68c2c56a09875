//! The rounds on the first page: today's on top, then the ways to other days and to places.

use super::next::Next;
use super::undo::{Doing, UndoStrip};
use super::visits::Visits;
use super::{at_a_glance, called, reminders};
use crate::edge::clock::today;
use crate::shell::app;
use crate::words;
use ::words::app::round as say;
use leptos::prelude::*;
use record::{Round, RoundId, Story};
use widgets::Disclosure;

/// Today's rounds, whole; other days and places behind a line each.
#[component]
pub fn AtHand() -> impl IntoView {
    let story = app().door.story();
    let _shared = Doing::provide();
    let rounds = Memo::new(move |_| story.with(|story| ids(&story.days(today()).at_hand)));
    view! {
        {move || rounds.get().into_iter().map(|round| view! { <TodaysRound round/> }).collect_view()}
        <UndoStrip/>
        <OtherDays/>
    }
    .into_any()
}

fn ids(rounds: &[&Round]) -> Vec<RoundId> {
    rounds.iter().map(|round| round.id()).collect()
}

/// A round of today, or yesterday's that goes on.
#[component]
fn TodaysRound(round: RoundId) -> impl IntoView {
    let story = app().door.story();
    let told = Memo::new(move |_| {
        story.with(|story| {
            let known = story.round(&round)?;
            let earlier = known.details().date < today();
            let day = earlier.then(|| say::begun_on(&words::long_date(known.details().date)));
            Some((
                called(story, known),
                format!("{}{}", day.unwrap_or_default(), at_a_glance(story, known)),
                reminders(story, known),
            ))
        })
    });
    let part = move || told.get().unwrap_or_default();
    view! {
        <section class="todays" data-part="round" id=format!("round-{round}")>
            <div class="todays-head">
                <h2><a id=format!("open-{round}") href=words::round_path(&round)>{move || part().0}</a></h2>
                <a class="pill" id=format!("change-{round}") href=words::round_path(&round)>{say::whole_round()}</a>
            </div>
            <p class="round-glance" data-part="glance">{move || part().1}</p>
            {move || part().2.into_iter().map(|sentence| view! { <p class="caution" data-part="reminder">{sentence}</p> }).collect_view()}
            <Next round/>
            <Visits round marks=false/>
        </section>
    }
    .into_any()
}

/// One line of the list of other days.
#[derive(Clone, PartialEq)]
struct Day {
    round: RoundId,
    date: String,
    place: String,
    told: String,
    remind: Vec<String>,
}

impl Day {
    fn of(story: &Story, round: &Round) -> Self {
        let details = round.details();
        let told = if details.called_off {
            say::called_off().to_owned()
        } else {
            story.glance(round).to_string()
        };
        Self {
            round: round.id(),
            date: words::date(details.date),
            place: called(story, round),
            told,
            remind: reminders(story, round),
        }
    }
}

#[component]
fn OtherDays() -> impl IntoView {
    let story = app().door.story();
    let days = Memo::new(move |_| {
        story.with(|story| {
            let days = story.days(today());
            let tell = |rounds: Vec<&Round>| {
                rounds
                    .into_iter()
                    .map(|round| Day::of(story, round))
                    .collect::<Vec<_>>()
            };
            (tell(days.to_come), tell(days.over))
        })
    });
    let (to_come, over) = (
        Memo::new(move |_| days.with(|days| days.0.clone())),
        Memo::new(move |_| days.with(|days| days.1.clone())),
    );
    let reminded = move || {
        days.with(|days| {
            days.0
                .iter()
                .flat_map(|day| {
                    day.remind
                        .iter()
                        .map(|sentence| format!("{}, {}: {sentence}", day.place, day.date))
                })
                .collect::<Vec<_>>()
        })
    };
    view! {
        {move || reminded().into_iter().map(|sentence| view! { <p class="caution" data-part="reminder">{sentence}</p> }).collect_view()}
        <div class="pills" id="rounds-and-places">
            <a class="pill writes" id="new-round" href="/rounds/new">{say::new_round()}</a>
            <a class="pill" id="to-places" href="/places">{say::places()}</a>
        </div>
        <DaysOf id="rounds-to-come" said=say::rounds_to_come days=to_come/>
        <DaysOf id="rounds-over" said=say::rounds_over days=over/>
    }
    .into_any()
}

/// Some days behind one line; nothing where there are none.
#[component]
fn DaysOf(id: &'static str, said: fn(usize) -> String, days: Memo<Vec<Day>>) -> impl IntoView {
    let count = Memo::new(move |_| days.with(Vec::len));
    let summary = Signal::derive(move || said(count.get()));
    let lines = move || {
        days.get().into_iter().map(|day| view! {
        <li class="day-row"><a class="person-who" id=format!("day-{}", day.round) href=words::round_path(&day.round)><b>{format!("{} \u{b7} {}", day.date, day.place)}</b><span class="soft">{day.told}</span></a></li>
    }).collect_view()
    };
    view! {
        <Show when=move || count.get() != 0>
            <Disclosure id summary><ul class="people">{lines}</ul></Disclosure>
        </Show>
    }
}
