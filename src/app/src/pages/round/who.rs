//! Who else could be on the round: those of its place who are due, all of them, or anybody by name.

use super::undo::Doing;
use crate::shell::app;
use crate::words;
use ::words::app::round as say;
use leptos::prelude::*;
use record::{Person, PersonId, RoundId, Story};
use widgets::Disclosure;

/// So many of those who go by a name are offered.
const OFFERED: usize = 12;

/// Somebody who could be put on the round.
#[derive(Clone, PartialEq)]
struct Other {
    person: PersonId,
    name: String,
    room: String,
    told: String,
    due: bool,
}

impl Other {
    fn of(story: &Story, person: &Person, by: chrono::NaiveDate) -> Self {
        let due = story.due(&person.id());
        let told = match &due {
            Some(due) => say::due(&words::date(due.on), &due.reason),
            None if story.exams_of(&person.id()).is_empty() => {
                say::never_examined_here().to_owned()
            }
            None => say::no_day_named().to_owned(),
        };
        Self {
            person: person.id(),
            name: words::name(person),
            room: person.details().room.clone(),
            told,
            due: due.is_some_and(|due| due.on <= by),
        }
    }
}

/// Those of the round's place who are not on it, in the order of their rooms.
fn others(story: &Story, round: RoundId) -> Option<Vec<Other>> {
    let details = story.round(&round)?.details();
    let place = details.place?;
    let people: Vec<PersonId> = story
        .people_at(&place)
        .iter()
        .map(|person| person.id())
        .collect();
    let ordered = story.by_room(Some(place), &people).into_iter();
    let left = ordered.filter(|person| !details.people.contains(person));
    Some(
        left.filter_map(|person| Some(Other::of(story, story.person(&person)?, details.date)))
            .collect(),
    )
}

/// Anybody who goes by a name and is not on the round.
fn called(story: &Story, round: RoundId, wanted: &str) -> Option<Vec<Other>> {
    let details = story.round(&round)?.details();
    let people = story.people().into_iter().filter(|person| {
        words::name(person).to_lowercase().contains(wanted)
            && !details.people.contains(&person.id())
    });
    Some(
        people
            .take(OFFERED)
            .map(|person| Other::of(story, person, details.date))
            .collect(),
    )
}

/// The part of the page.
#[component]
pub fn WhoElse(round: RoundId) -> impl IntoView {
    let (door, doing) = (app().door, Doing::here());
    let story = door.story();
    let here = Memo::new(move |_| story.with(|story| others(story, round)));
    let wanted = RwSignal::new(String::new());
    let found = Memo::new(move |_| {
        let wanted = wanted.get().trim().to_lowercase();
        if wanted.is_empty() {
            return Vec::new();
        }
        story
            .with(|story| called(story, round, &wanted))
            .unwrap_or_default()
    });
    let add = move |people: Vec<PersonId>| {
        doing.run(door.change_round(round, move |_, details| details.add(people)))
    };
    let all = move |only_due: bool| {
        here.with(|here| {
            here.iter()
                .flatten()
                .filter(|other| other.due || !only_due)
                .map(|other| other.person)
                .collect::<Vec<_>>()
        })
    };
    let summary = Signal::derive(move || say::put_people_on(all(false).len()));
    let list_path = StoredValue::new(format!("{}/list", words::round_path(&round)));
    let has_place = move || here.with(Option::is_some);
    let rows = move |of: Memo<Vec<Other>>| {
        move || {
            of.get()
                .into_iter()
                .map(|other| view! { <OtherRow other add/> })
                .collect_view()
        }
    };
    let at_place = Memo::new(move |_| here.get().unwrap_or_default());
    view! {
        <Disclosure id="round-add" summary>
            <div class="pills">
                <Show when=move || !all(true).is_empty()>
                    <button type="button" class="pill" id="add-due" on:click=move |_| add(all(true))>{move || say::due_by_then(&all(true).len())}</button>
                </Show>
                <Show when=move || !all(false).is_empty()>
                    <button type="button" class="pill" id="add-all" on:click=move |_| add(all(false))>{move || say::everybody_here(&all(false).len())}</button>
                </Show>
                <Show when=has_place><a class="pill" id="add-list" href=list_path.get_value()>{say::from_home_list()}</a></Show>
            </div>
            <ul class="people" id="others">{rows(at_place)}</ul>
            <input class="text-input" id="find-other" type="search" aria-label=say::somebody_else_name() placeholder=say::somebody_else_name() autocomplete="off"
                prop:value=wanted on:input:target=move |event| wanted.set(event.target().value())/>
            <ul class="people" id="found-others">{rows(found)}</ul>
        </Disclosure>
    }
    .into_any()
}

#[component]
fn OtherRow(
    other: Other,
    add: impl Fn(Vec<PersonId>) + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let person = other.person;
    view! {
        <li class="other-row">
            <span class="person-room">{other.room}</span>
            <span class="person-who"><b>{other.name.clone()}</b><span class="soft">{other.told}</span></span>
            <button type="button" class="pill" id=format!("add-{person}") aria-label=say::put_name_on(&other.name) on:click=move |_| add(vec![person])>{say::put()}</button>
        </li>
    }
    .into_any()
}
