//! The bag: one list of the examiner's own, ticked for each round.

use super::undo::Doing;
use crate::shell::app;
use ::words::app::round as say;
use leptos::prelude::*;
use record::RoundId;
use widgets::Disclosure;

/// The part of the page.
#[component]
pub fn KitList(round: RoundId) -> impl IntoView {
    let (door, doing) = (app().door, Doing::here());
    let items = Memo::new(move |_| {
        door.story().with(|story| {
            let packed = story
                .round(&round)
                .map(|round| round.packed().to_vec())
                .unwrap_or_default();
            let items = story.kit().items.into_iter();
            items
                .map(|item| (packed.contains(&item), item))
                .collect::<Vec<_>>()
        })
    });
    let summary = Signal::derive(move || {
        items.with(|items| {
            match (
                items.iter().filter(|(ticked, _)| *ticked).count(),
                items.len(),
            ) {
                (_, 0) => say::bag().to_owned(),
                (ticked, all) => say::bag_ticked(&ticked, &all),
            }
        })
    });
    let typed = RwSignal::new(String::new());
    let add = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let item = typed.get_untracked();
        typed.set(String::new());
        doing.run(door.change_kit(move |kit| {
            kit.add(&item);
        }));
    };
    let rows = move || {
        items
            .get()
            .into_iter()
            .enumerate()
            .map(|(at, (ticked, item))| view! { <Item round at item ticked/> })
            .collect_view()
    };
    view! {
        <Disclosure id="round-kit" summary>
            <ul class="people" id="kit">{rows}</ul>
            <form class="find-row" id="kit-form" on:submit=add>
                <input class="text-input" id="kit-item" aria-label=say::another_thing_bag() placeholder=say::another_thing_bag() autocomplete="off"
                    prop:value=typed on:input:target=move |event| typed.set(event.target().value())/>
                <button type="submit" class="pill" id="kit-add">{say::put_list()}</button>
            </form>
        </Disclosure>
    }
    .into_any()
}

#[component]
fn Item(round: RoundId, at: usize, item: String, ticked: bool) -> impl IntoView {
    let (door, doing) = (app().door, Doing::here());
    let (name, gone) = (StoredValue::new(item.clone()), item.clone());
    let tick = move |ticked: bool| doing.run(door.pack(round, name.get_value(), ticked));
    let forget = move |_| {
        let gone = gone.clone();
        doing.run(door.change_kit(move |kit| kit.items.retain(|other| *other != gone)));
    };
    view! {
        <li class="kit-row">
            <label class="tick"><input type="checkbox" id=format!("kit-{at}") prop:checked=ticked on:change:target=move |event| tick(event.target().checked())/><span>{item.clone()}</span></label>
            <button type="button" class="pill" id=format!("kit-{at}-forget") aria-label=say::take_item_off(&item) on:click=forget>{say::take_off()}</button>
        </li>
    }
}
