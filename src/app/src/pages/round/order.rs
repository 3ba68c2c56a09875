//! The order of a round by hand: buttons, keys, or a finger on the grip.

use super::undo::Doing;
use crate::shell::app;
use crate::words;
use ::words::app::round as say;
use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;
use record::{PersonId, RoundId};
use wasm_bindgen::JsCast;

/// Everybody on the round in its order, each to be moved or taken off.
#[component]
pub fn Ordering(round: RoundId) -> impl IntoView {
    let story = app().door.story();
    let held = RwSignal::new(None::<PersonId>);
    let over = RwSignal::new(None::<usize>);
    let people = Memo::new(move |_| {
        story
            .with(|story| {
                story.round(&round).map(|round| {
                    story
                        .people_of(round)
                        .iter()
                        .map(|person| person.id())
                        .collect::<Vec<_>>()
                })
            })
            .unwrap_or_default()
    });
    view! {
        <p class="soft">{say::order_how()}</p>
        <ol class="people" id="order">
            <For each=move || people.get() key=|person| *person let:person>
                <OrderRow round person people held over/>
            </For>
        </ol>
    }
    .into_any()
}

#[component]
fn OrderRow(
    round: RoundId,
    person: PersonId,
    people: Memo<Vec<PersonId>>,
    held: RwSignal<Option<PersonId>>,
    over: RwSignal<Option<usize>>,
) -> impl IntoView {
    let (door, doing) = (app().door, Doing::here());
    let at = Memo::new(move |_| {
        people
            .with(|people| people.iter().position(|other| *other == person))
            .unwrap_or_default()
    });
    let last = Memo::new(move |_| people.with(Vec::len).saturating_sub(1));
    let told = door.story().with_untracked(|story| {
        story
            .person(&person)
            .map(|known| (words::name(known), known.details().room.clone()))
    });
    let (name, room) = told.unwrap_or_default();
    let move_to = move |to: usize, focus: &'static str| {
        if to != at.get_untracked() {
            let write = door.change_round(round, move |story, details| {
                // People of whom nothing is on record here are not shown: the place is counted among those who are.
                let shown = |id: &&PersonId| story.person(id).is_some();
                let there = details.people.iter().filter(shown).nth(to).copied();
                let to = there.and_then(|there| details.people.iter().position(|id| *id == there));
                details.move_to(&person, to.unwrap_or(usize::MAX));
            });
            doing.run_then(write, move || focus_on(&format!("{focus}-{person}")));
        }
    };
    let step = move |by: isize, focus| {
        move_to(
            at.get_untracked()
                .saturating_add_signed(by)
                .min(last.get_untracked()),
            focus,
        )
    };
    let keys = move |event: KeyboardEvent| {
        let to = match event.key().as_str() {
            "ArrowUp" => at.get_untracked().saturating_sub(1),
            "ArrowDown" => (at.get_untracked() + 1).min(last.get_untracked()),
            "Home" => 0,
            "End" => last.get_untracked(),
            _ => return,
        };
        event.prevent_default();
        move_to(to, "grip");
    };
    let take = move |event: PointerEvent| {
        held.set(Some(person));
        if let Some(grip) = event
            .target()
            .and_then(|grip| grip.dyn_into::<web_sys::Element>().ok())
        {
            let _ = grip.set_pointer_capture(event.pointer_id());
        }
    };
    let drag = move |event: PointerEvent| {
        if held.get_untracked() == Some(person) {
            over.set(row_under(&event));
        }
    };
    let drop_here = move |_: PointerEvent| {
        if held.get_untracked() == Some(person)
            && let Some(to) = over.get_untracked()
        {
            move_to(to, "grip");
        }
        held.set(None);
        over.set(None);
    };
    let take_off =
        move |_| doing.run(door.change_round(round, move |_, details| details.remove(&person)));
    view! {
        <li class="order-row" data-at=move || at.get().to_string() class:held=move || held.get() == Some(person)
            class:over=move || over.get() == Some(at.get()) && held.get() != Some(person)>
            <button type="button" class="pill grip" id=format!("grip-{person}") aria-label=say::move_name(&name) on:keydown=keys
                on:pointerdown=take on:pointermove=drag on:pointerup=drop_here on:pointercancel=move |_| { held.set(None); over.set(None); }><Grip/></button>
            <span class="person-room">{room}</span>
            <b class="order-name">{name.clone()}</b>
            <span class="pills">
                <button type="button" class="pill" id=format!("up-{person}") aria-label=say::name_up(&name) disabled=move || at.get() == 0 on:click=move |_| step(-1, say::up())>{say::up()}</button>
                <button type="button" class="pill" id=format!("down-{person}") aria-label=say::name_down(&name) disabled=move || at.get() == last.get() on:click=move |_| step(1, say::down())>{say::down()}</button>
                <button type="button" class="pill" id=format!("off-{person}") aria-label=say::take_name_off(&name) on:click=take_off>{say::take_off()}</button>
            </span>
        </li>
    }
    .into_any()
}

/// Three lines to take hold of.
#[component]
fn Grip() -> impl IntoView {
    view! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
            <line x1="5" y1="7" x2="19" y2="7" class="icon-line"/><line x1="5" y1="12" x2="19" y2="12" class="icon-line"/><line x1="5" y1="17" x2="19" y2="17" class="icon-line"/>
        </svg>
    }
}

/// Which place in the order lies under a finger.
fn row_under(event: &PointerEvent) -> Option<usize> {
    let (x, y) = (event.client_x() as f32, event.client_y() as f32);
    let row = document()
        .element_from_point(x, y)?
        .closest("[data-at]")
        .ok()??;
    row.get_attribute("data-at")?.parse().ok()
}

/// A row that has moved has lost the focus: whoever uses the keys goes on where they were.
fn focus_on(id: &str) {
    let id = id.to_owned();
    request_animation_frame(move || {
        let found = document().get_element_by_id(&id);
        if let Some(button) = found.and_then(|found| found.dyn_into::<web_sys::HtmlElement>().ok())
        {
            let _ = button.focus();
        }
    });
}
