//! Looking around among made-up people: begun in one tap, opened again in one, ended in one.

use crate::shell::app;
use ::words::app::gate as say;
use leptos::prelude::*;

/// Offered where there is no vault yet.
#[component]
pub fn LookAround() -> impl IntoView {
    let door = app().door;
    let said = RwSignal::new(None::<String>);
    let made = RwSignal::new(None::<(usize, usize)>);
    let begin = move |_| {
        if made.get_untracked().is_some() {
            return;
        }
        made.set(Some((0, 0)));
        said.set(None);
        leptos::task::spawn_local(async move {
            let tell = move |count, of| made.set(Some((count, of)));
            let done = door.look_around(tell).await;
            if let Err(sentence) = done {
                said.set(Some(sentence));
                made.set(None);
            }
        });
    };
    let words = move || match made.get() {
        None => say::look_around().to_owned(),
        Some((0, _)) => say::making_up_island().to_owned(),
        Some((count, of)) => say::made_up_of(&count, &of),
    };
    view! {
        <section class="sheet gate-sheet look-around">
            <p>{say::new_here()}</p>
            <button class="pill" type="button" id="look-around" aria-disabled=move || made.with(Option::is_some).to_string() on:click=begin>{words}</button>
            <p class="field-error" role="alert" id="look-around-said">{move || said.get()}</p>
        </section>
    }
    .into_any()
}

/// In place of a passphrase: it guards nothing.
#[component]
pub fn LookAroundAgain(
    /// Why it is locked, where there is something to say.
    note: Option<String>,
) -> impl IntoView {
    let door = app().door;
    let said = RwSignal::new(note);
    let opening = RwSignal::new(false);
    let open = move |_| {
        if opening.get_untracked() {
            return;
        }
        opening.set(true);
        leptos::task::spawn_local(async move {
            if let Err(sentence) = door.look_around_again().await {
                said.set(Some(sentence));
                opening.set(false);
            }
        });
    };
    view! {
        <section class="sheet gate-sheet" id="made-up-locked">
            <h1>{say::made_up_people()}</h1>
            <p>{say::nobody_real()}</p>
            <p class="field-error" role="alert">{move || said.get()}</p>
            <div class="row">
                <button class="act" type="button" id="look-around-again" aria-disabled=move || opening.get().to_string() on:click=open>
                    {move || if opening.get() { say::opening() } else { say::go_looking_around() }}
                </button>
                <EndLookingAround/>
            </div>
        </section>
    }
    .into_any()
}

/// Wipes the made-up vault and leads to making a real one.
#[component]
pub fn EndLookingAround() -> impl IntoView {
    let door = app().door;
    let trouble = RwSignal::new(None::<String>);
    let end = move |_| {
        leptos::task::spawn_local(async move {
            match door.end_looking_around().await {
                // The page that was open is of somebody who is gone.
                Ok(()) => drop(window().location().replace("/")),
                Err(sentence) => trouble.set(Some(sentence)),
            }
        });
    };
    view! {
        <button class="pill" type="button" id="end-looking-around" on:click=end>{say::wipe_them()}</button>
        <Show when=move || trouble.with(Option::is_some)><span class="field-error" role="alert">{move || trouble.get()}</span></Show>
    }
    .into_any()
}
