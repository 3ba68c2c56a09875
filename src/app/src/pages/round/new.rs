//! A new round: where, and on which day. Who, its own page asks.

use crate::edge::clock::today;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::round as say;
use chrono::NaiveDate;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leptos_router::hooks::{use_navigate, use_query_map};
use record::{PlaceId, RoundDetails};
use widgets::{Field, TextField, TextKind};

/// Where a round may be.
#[derive(Clone, PartialEq)]
enum Where {
    Place(PlaceId),
    /// A place that only stands in people's details so far.
    InWords(String),
}

/// Every place that can be chosen, with its words.
fn places() -> Vec<(String, Where)> {
    app().door.story().with_untracked(|story| {
        let known = story
            .places()
            .into_iter()
            .filter(|place| !place.details().past);
        let known = known.map(|place| (place.details().name.clone(), Where::Place(place.id())));
        let in_words = story.places_in_words().into_iter();
        let in_words = in_words.map(|name| (name.clone(), Where::InWords(name)));
        known.chain(in_words).collect()
    })
}

/// The page. `?place=` names the place that is chosen already.
#[component]
pub fn NewRoundPage() -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let places = StoredValue::new(places());
    let asked = use_query_map()
        .with_untracked(|query| words::place_id(&query.get("place")?))
        .map(Where::Place);
    let at = places.with_value(|places| {
        places
            .iter()
            .position(|(_, place)| Some(place) == asked.as_ref())
    });
    let first = at.or_else(|| places.with_value(|places| (!places.is_empty()).then_some(0)));
    let chosen = RwSignal::new(first.map(|at| at.to_string()).unwrap_or_default());
    let name = RwSignal::new(String::new());
    let date = RwSignal::new(today().to_string());
    let refused = RwSignal::new(None::<String>);
    let making = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if making.get_untracked() {
            return;
        }
        let Ok(day) = NaiveDate::parse_from_str(date.get_untracked().trim(), "%Y-%m-%d") else {
            return refused.set(Some(say::needs_day().to_owned()));
        };
        let typed = name.get_untracked().trim().to_owned();
        let at: Option<usize> = chosen.get_untracked().parse().ok();
        let place = at.and_then(|at| {
            places.with_value(|places| places.get(at).map(|(_, place)| place.clone()))
        });
        let (place, new) = match place {
            _ if !typed.is_empty() => (None, Some(typed)),
            Some(Where::Place(place)) => (Some(place), None),
            Some(Where::InWords(name)) => (None, Some(name)),
            None => (None, None),
        };
        making.set(true);
        let navigate = navigate.clone();
        leptos::task::spawn_local(async move {
            match door.make_round(RoundDetails::new(day, place), new).await {
                Ok(round) => navigate(
                    &words::round_path(&round),
                    leptos_router::NavigateOptions::default(),
                ),
                Err(sentence) => {
                    refused.set(Some(sentence));
                    making.set(false);
                }
            }
        });
    };
    let offered = places.with_value(|places| {
        places.iter().enumerate().map(|(at, (name, _))| view! { <option value=at.to_string() selected=first == Some(at)>{name.clone()}</option> }).collect_view()
    });
    view! {
        <TopBar title=say::new_round()><a class="pill" id="to-rounds" href="/">{say::rounds()}</a></TopBar>
        <main class="page">
            <form class="sheet form" id="round-form" on:submit=submit>
                <Field id="round-place" label=say::at_which_place()>
                    <select class="text-input" id="round-place" aria-describedby="round-place-error" on:change:target=move |event| chosen.set(event.target().value())>
                        {offered}
                        <option value="" selected=first.is_none()>{say::several_addresses_2()}</option>
                    </select>
                </Field>
                <TextField id="round-new-place" label=say::new_place() value=name on_change=move |text| name.set(text)/>
                <TextField id="round-date" label=say::day() kind=TextKind::Date value=date error=refused on_change=move |text| date.set(text)/>
                <button class="act" type="submit" id="make-round">{say::make_round()}</button>
            </form>
        </main>
    }
    .into_any()
}
