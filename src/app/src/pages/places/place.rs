//! One place: what to do there, its rounds, who lives there, and what is known of it.

use super::form::PlaceForm;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::places as say;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use record::{Person, PersonId, PlaceId, Round, Story};

/// The place that the address names, or a new one.
#[component]
pub fn PlacePage() -> impl IntoView {
    let story = app().door.story();
    let params = use_params_map();
    let named = Memo::new(move |_| params.with(|params| params.get("place")));
    let place = Memo::new(move |_| words::place_id(&named.get()?));
    let name = Memo::new(move |_| {
        story.with(|story| {
            story
                .place(&place.get()?)
                .map(|place| place.details().name.clone())
        })
    });
    let title = Signal::derive(move || match (named.get(), name.get()) {
        (None, _) => say::new_place().to_owned(),
        (_, Some(name)) => name,
        (Some(_), None) => say::no_such_place().to_owned(),
    });
    view! {
        <TopBar title><a class="pill" id="to-places" href="/places">{say::places_2()}</a><a class="pill" id="to-rounds" href="/">{say::rounds()}</a></TopBar>
        <main class="page">
            {move || match (named.with(Option::is_none), name.with(Option::is_some).then(|| place.get()).flatten()) {
                (true, _) => view! { <PlaceForm place=None/> }.into_any(),
                (false, Some(place)) => view! { <Known place/> }.into_any(),
                (false, None) => ().into_any(),
            }}
        </main>
    }
    .into_any()
}

/// Somebody who lives there.
#[derive(Clone, PartialEq)]
struct Lives {
    person: PersonId,
    room: String,
    name: String,
    told: String,
}

fn lives(story: &Story, place: PlaceId) -> Vec<Lives> {
    let people: Vec<PersonId> = story
        .people_at(&place)
        .into_iter()
        .map(Person::id)
        .collect();
    let ordered = story.by_room(Some(place), &people).into_iter();
    ordered
        .filter_map(|id| {
            let person = story.person(&id)?;
            Some(Lives {
                person: id,
                room: person.details().room.clone(),
                name: words::name(person),
                told: story.due(&id).map_or_else(String::new, |due| {
                    say::due(&words::date(due.on), &due.reason)
                }),
            })
        })
        .collect()
}

/// Two tablets may have written the place down otherwise: all of it is told, and what is kept next settles it.
fn other_versions(story: &Story, place: PlaceId) -> Vec<String> {
    let Some(known) = story.place(&place) else {
        return Vec::new();
    };
    let versions = known.versions();
    let all = versions.versions();
    let earlier = all.iter().take(all.len().saturating_sub(1));
    earlier
        .map(|version| {
            let details = version.value;
            let units: Vec<String> = details.units.iter().map(ToString::to_string).collect();
            [
                &details.name,
                &details.address,
                &units.join("; "),
                &details.contact,
                &details.door,
            ]
            .into_iter()
            .filter(|part| !part.is_empty())
            .cloned()
            .collect::<Vec<_>>()
            .join(" \u{b7} ")
        })
        .collect()
}

/// The days on which rounds are or were here, latest first, each with its address.
fn rounds(story: &Story, place: PlaceId) -> Vec<(String, String)> {
    let days = story.days(crate::edge::clock::today());
    let mut rounds: Vec<&Round> = [days.to_come, days.at_hand, days.over].concat();
    rounds.retain(|round| round.details().place == Some(place));
    rounds.sort_by_key(|round| std::cmp::Reverse(round.details().date));
    rounds
        .into_iter()
        .map(|round| {
            (
                words::round_path(&round.id()),
                format!(
                    "{} \u{b7} {}",
                    words::date(round.details().date),
                    story.glance(round)
                ),
            )
        })
        .collect()
}

#[component]
fn Known(place: PlaceId) -> impl IntoView {
    let story = app().door.story();
    let people = Memo::new(move |_| story.with(|story| lives(story, place)));
    let rounds = Memo::new(move |_| story.with(|story| rounds(story, place)));
    let others = Memo::new(move |_| story.with(|story| other_versions(story, place)));
    view! {
        {move || others.get().into_iter().map(|other| view! {
            <p class="caution" data-part="other-version">{say::written_otherwise(&other)}</p>
        }).collect_view()}
        <div class="pills writes">
            <a class="pill" id="round-here" href=format!("/rounds/new?place={place}")>{say::new_round_here()}</a>
            <a class="pill" id="list-here" href=format!("{}/list", words::place_path(&place))>{say::list_home_sent()}</a>
        </div>
        <ul class="people" id="place-rounds">
            {move || rounds.get().into_iter().map(|(path, told)| view! { <li class="day-row"><a class="person-who" href=path>{told}</a></li> }).collect_view()}
        </ul>
        <h2>{move || say::live_here(people.with(Vec::len))}</h2>
        <ul class="people" id="place-people">
            {move || people.get().into_iter().map(|lives| view! {
                <li class="other-row"><span class="person-room">{lives.room}</span>
                <a class="person-who" href=words::person_path(&lives.person)><b>{lives.name}</b><span class="soft">{lives.told}</span></a></li>
            }).collect_view()}
        </ul>
        <PlaceForm place=Some(place)/>
    }
    .into_any()
}
