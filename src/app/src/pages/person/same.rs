//! The same person twice on record: said here, and taken back here.

use crate::edge::clock::{local, today};
use crate::shell::app;
use crate::words;
use ::words::app::person as say;
use leptos::prelude::*;
use record::{EntryId, PersonId};
use widgets::Disclosure;

/// How many are offered at once: more are told apart by typing on.
const OFFERED: usize = 6;

/// Somebody who may be the same.
#[derive(Clone, PartialEq)]
struct Other {
    person: PersonId,
    name: String,
    whereabouts: String,
}

/// A statement that stands.
#[derive(Clone, PartialEq)]
struct Said {
    entry: EntryId,
    sentence: String,
}

/// "The same person as …", with a search and an undo.
#[component]
pub fn SamePerson(
    /// Who is kept.
    person: PersonId,
) -> impl IntoView {
    let story = app().door.story();
    let may_be = Memo::new(move |_| {
        story.with(|story| {
            let others = story.may_be_same(&person);
            others.into_iter().map(other).collect::<Vec<_>>()
        })
    });
    let summary = Signal::derive(move || say::same_twice(may_be.with(Vec::len)));
    view! {
        <Taken person/>
        <Disclosure id="same" summary><Choosing person may_be/></Disclosure>
    }
    .into_any()
}

fn other(person: &record::Person) -> Other {
    Other {
        person: person.id(),
        name: words::name(person),
        whereabouts: words::whereabouts(person, today()),
    }
}

/// Who is shown as this person, each with its undo.
#[component]
fn Taken(person: PersonId) -> impl IntoView {
    let door = app().door;
    let trouble = RwSignal::new(None::<String>);
    let said = Memo::new(move |_| {
        door.story().with(|story| {
            let joined = story.joined(&person).into_iter();
            let said = joined.map(|joined| Said {
                entry: joined.entry.id,
                sentence: say::on_record_too(
                    &story.name_of(&joined.same.other).unwrap_or_default(),
                    &joined.entry.author,
                    &words::moment(local(joined.entry.stamp)),
                ),
            });
            said.collect::<Vec<_>>()
        })
    });
    let undo = move |entry: EntryId| {
        leptos::task::spawn_local(async move {
            trouble.set(door.say_apart(person, entry).await.err());
        });
    };
    let line = move |said: Said| {
        let entry = said.entry;
        view! {
            <p class="row same-said">
                <span>{said.sentence}</span>
                <button class="pill" type="button" data-part="apart" id=format!("apart-{entry}") on:click=move |_| undo(entry)>{say::they_two_after_all()}</button>
            </p>
        }
        .into_any()
    };
    view! {
        {move || said.get().into_iter().map(line).collect_view()}
        <p class="field-error" role="alert">{move || trouble.get()}</p>
    }
    .into_any()
}

#[component]
fn Choosing(person: PersonId, may_be: Memo<Vec<Other>>) -> impl IntoView {
    let door = app().door;
    let asked = RwSignal::new(String::new());
    let trouble = RwSignal::new(None::<String>);
    let offered = Memo::new(move |_| {
        if asked.with(|asked| asked.trim().is_empty()) {
            return may_be.get();
        }
        let found = asked.with(|asked| door.find_people(asked));
        door.story().with(|story| {
            let people = found.iter().filter(|found| **found != person);
            let people = people.filter_map(|found| story.person(found));
            people.map(other).take(OFFERED).collect()
        })
    });
    let join = move |other: PersonId| {
        leptos::task::spawn_local(async move {
            trouble.set(door.say_same(person, other).await.err());
        });
    };
    let line = move |other: Other| {
        let who = other.person;
        view! {
            <li class="row same-offer">
                <span><b>{other.name}</b><br/><span class="soft">{other.whereabouts}</span></span>
                <button class="pill" type="button" data-part="same" id=format!("same-{who}") on:click=move |_| join(who)>{say::same_person()}</button>
            </li>
        }
        .into_any()
    };
    view! {
        <p class="soft">{say::same_shown_here()}</p>
        <input id="same-find" class="text-input" type="search" aria-label=say::find_other() placeholder=say::find_other()
            autocomplete="off" prop:value=asked on:input:target=move |event| asked.set(event.target().value())/>
        <ul class="people" id="same-offered">{move || offered.get().into_iter().map(line).collect_view()}</ul>
        <p class="field-error" role="alert">{move || trouble.get()}</p>
    }
    .into_any()
}
