//! Lists, and both eyes side by side.

use super::super::eyes::EyeCard;
use super::part::Part;
use super::slate::Slate;
use ::words::app::exam_fields as say;
use leptos::prelude::*;
use record::{Eye, lens_of_pair};
use std::sync::Arc;

/// A card for each of a list, made afresh when one comes or goes.
pub fn cards(
    length: Signal<usize>,
    card: impl Fn(usize) -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let card: Arc<dyn Fn(usize) -> AnyView + Send + Sync> = Arc::new(card);
    let all = move || (0..length.get()).map(|place| card(place)).collect_view();
    view! { <div class="cards">{all}</div> }.into_any()
}

/// One card: its heading, the way to take it out, and what it holds.
pub fn card(
    id: String,
    heading: Signal<String>,
    remove: impl Fn() + Send + Sync + 'static,
    holds: AnyView,
) -> AnyView {
    view! {
        <section class="sheet card" id=id.clone()>
            <div class="eye-head">
                <h3>{heading}</h3>
                <button type="button" class="pill" id=format!("{id}-remove") on:click=move |_| remove()>{say::take_out()}</button>
            </div>
            {holds}
        </section>
    }
    .into_any()
}

/// Both eyes, the right eye on the left as it faces the examiner.
pub fn eyes(slate: Slate, each: impl Fn(Eye) -> AnyView) -> AnyView {
    let cards = Eye::BOTH.map(|eye| {
        let holds = each(eye);
        view! { <EyeCard eye working=slate.working>{holds}</EyeCard> }
    });
    view! { <div class="eyes eyes-two">{cards.into_iter().collect_view()}</div> }.into_any()
}

/// Buttons that each add something.
pub fn adding(
    id: &'static str,
    label: &'static str,
    words: Vec<String>,
    add: impl Fn(usize) + Send + Sync + 'static,
) -> AnyView {
    let add: Arc<dyn Fn(usize) + Send + Sync> = Arc::new(add);
    let buttons = words.into_iter().enumerate().map(|(place, words)| {
        let add = add.clone();
        view! { <button type="button" class="pill" id=format!("{id}-{place}") on:click=move |_| add(place)>{words}</button> }
    });
    view! {
        <div class="asked">
            <div class="asked-head"><span class="asked-label">{label}</span></div>
            <div class="asked-ways" role="group" aria-label=label>{buttons.collect_view()}</div>
        </div>
    }
    .into_any()
}

/// Takes a pair out of the list, with what is half entered of it.
pub fn take_pair_out<T>(list: &Part<Vec<T>>, place: usize) {
    let length = untrack(|| list.ask(Vec::len)).unwrap_or_default();
    move_halves_up(list.slate, place, length);
    list.remove(place);
}

/// What is half entered of the pairs after one that is taken out moves up with them.
fn move_halves_up(slate: Slate, from: usize, length: usize) {
    for place in from..length {
        for eye in Eye::BOTH {
            let next = untrack(|| slate.halves.of(eye, &lens_of_pair(place + 1)));
            slate.halves.keep(eye, &lens_of_pair(place), next);
        }
    }
}

/// Several things one after another. One type for all of them, so that each list of fields adds next to nothing to the
/// app's size.
pub fn several(all: Vec<AnyView>) -> AnyView {
    all.into_any()
}

/// What is asked, on a sheet.
pub fn asks(all: Vec<AnyView>) -> AnyView {
    view! { <section class="sheet asks">{all}</section> }.into_any()
}

/// Small buttons beside one another.
pub fn ways(all: Vec<AnyView>) -> AnyView {
    view! { <div class="asked-ways">{all}</div> }.into_any()
}
