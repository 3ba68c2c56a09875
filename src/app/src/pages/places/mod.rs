//! Homes and addresses: what is known of each, who lives there, its rounds.

mod form;
mod found;
mod place;

pub use found::FoundPlaces;
pub use place::PlacePage;

use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::{places as say, usual};
use leptos::prelude::*;
use record::{Place, Story};

/// One line of the list.
#[derive(Clone, PartialEq)]
struct Line {
    path: String,
    name: String,
    told: String,
}

impl Line {
    /// A place in the list of all, with how many live there.
    fn of(story: &Story, place: &Place) -> Self {
        let people = usual::people(story.people_at(&place.id()).len());
        Self::telling(place, Some(people), &[])
    }

    /// A place that was searched for, with its units: one of them may be what was meant. Who lives there is not counted anew
    /// at each letter.
    fn found(place: &Place) -> Self {
        let units = place.details().units.iter();
        let units: Vec<&str> = units.map(|unit| unit.name.trim()).collect();
        Self::telling(place, None, &units)
    }

    fn telling(place: &Place, people: Option<String>, units: &[&str]) -> Self {
        let details = place.details();
        let past = details.past.then(|| say::no_longer_visited().to_owned());
        let parts = [
            people,
            Some(details.address.clone()),
            past,
            Some(units.join(", ")),
        ];
        let told: Vec<String> = parts
            .into_iter()
            .flatten()
            .filter(|part| !part.trim().is_empty())
            .collect();
        Self {
            path: words::place_path(&place.id()),
            name: details.name.clone(),
            told: told.join(" \u{b7} "),
        }
    }
}

/// Every place.
#[component]
pub fn PlacesPage() -> impl IntoView {
    let story = app().door.story();
    let lines = Memo::new(move |_| {
        story.with(|story| {
            story
                .places()
                .into_iter()
                .map(|place| Line::of(story, place))
                .collect::<Vec<_>>()
        })
    });
    let in_words = Memo::new(move |_| story.with(Story::places_in_words));
    view! {
        <TopBar title=say::places_2()><a class="pill" id="to-rounds" href="/">{say::rounds()}</a></TopBar>
        <main class="page">
            <div class="pills"><a class="act writes" id="new-place" href="/places/new">{say::new_place()}</a></div>
            <ul class="people" id="places">
                {move || lines.get().into_iter().map(|line| view! {
                    <li class="day-row"><a class="person-who" href=line.path><b>{line.name}</b><span class="soft">{line.told}</span></a></li>
                }).collect_view()}
            </ul>
            <Show when=move || lines.with(Vec::is_empty)><p class="empty">{say::no_place_yet()}</p></Show>
            {move || { let names = in_words.get(); (!names.is_empty()).then(|| view! {
                <p class="soft" id="places-in-words">{say::named_with_people(&names.join(", "))}</p>
            }) }}
        </main>
    }
    .into_any()
}
