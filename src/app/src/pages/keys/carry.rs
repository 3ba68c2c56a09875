//! Carry files: made, saved, shared, and taken in with a report.

use crate::edge::files;
use crate::session::Carried;
use crate::shell::{TopBar, app};
use ::words::app::keys as say;
use leptos::html::Input;
use leptos::prelude::*;

/// The page.
#[component]
pub fn CarryPage() -> impl IntoView {
    view! {
        <TopBar title=say::carry_file()><a class="pill" id="back-to-vault" href="/vault">{say::vault()}</a></TopBar>
        <main class="page">
            <Making/>
            <Taking/>
            <p class="soft">{say::carry_what()}</p>
        </main>
    }
}

#[component]
fn Making() -> impl IntoView {
    let door = app().door;
    let ready = RwSignal::new(None::<Carried>);
    let said = RwSignal::new(None::<String>);
    let make = move |theirs: Option<Vec<u8>>| {
        ready.set(None);
        said.set(None);
        leptos::task::spawn_local(async move {
            match door.carry_out(theirs).await {
                Ok(carried) => ready.set(Some(carried)),
                Err(sentence) => said.set(Some(sentence)),
            }
        });
    };
    let beyond = move |picked: Result<Vec<u8>, String>| match picked {
        Ok(bytes) => make(Some(bytes)),
        Err(sentence) => said.set(Some(sentence)),
    };
    view! {
        <section class="sheet" id="carry-out">
            <h2>{say::tablet_another()}</h2>
            <div class="row carry-ways">
                <button class="act" type="button" id="carry-all" on:click=move |_| make(None)>{say::make_one_everything()}</button>
                <Picker id="carry-theirs" label=say::only_what_lacks() on_picked=beyond/>
            </div>
            <p class="soft">{say::for_the_second()}</p>
            <p class="field-error" id="carry-out-said" role="alert">{move || said.get()}</p>
            {move || ready.get().map(|carried| view! { <Ready carried said/> })}
        </section>
    }
    .into_any()
}

#[component]
fn Ready(carried: Carried, said: RwSignal<Option<String>>) -> impl IntoView {
    let (name, words) = (carried.name.clone(), carried.said.clone());
    let file = files::file(&carried.name, files::BYTES, &carried.bytes);
    let shares = file.as_ref().is_ok_and(files::can_share);
    let file = StoredValue::new_local(file);
    let save = move |_| {
        let saved = file.with_value(|file| {
            file.as_ref()
                .map_err(Clone::clone)
                .and_then(files::save_file)
        });
        said.set(saved.err());
    };
    let share = move |_| {
        if let Ok(file) = file.get_value() {
            leptos::task::spawn_local(async move { files::share(&file).await });
        }
    };
    view! {
        <div class="carry-ready" id="carry-ready">
            <p role="status"><b>{name}</b>" \u{b7} "{words}</p>
            <div class="row">
                <button class="act" type="button" id="save-carry" on:click=save>{say::save()}</button>
                {shares.then(|| view! { <button class="pill" type="button" id="share-carry" on:click=share>{say::share()}</button> })}
            </div>
        </div>
    }
    .into_any()
}

#[component]
fn Taking() -> impl IntoView {
    let door = app().door;
    let came = RwSignal::new(None::<Result<String, String>>);
    let taking = RwSignal::new(false);
    let take = move |picked: Result<Vec<u8>, String>| {
        taking.set(true);
        came.set(None);
        leptos::task::spawn_local(async move {
            came.set(Some(match picked {
                Ok(bytes) => door.carry_in(&bytes).await,
                Err(sentence) => Err(sentence),
            }));
            taking.set(false);
        });
    };
    view! {
        <section class="sheet" id="carry-in">
            <h2>{say::another_tablet_one()}</h2>
            <div class="row"><Picker id="carry-file" label=say::take_carry_file() on_picked=take/></div>
            <Show when=move || taking.get()><p role="status">{say::reading()}</p></Show>
            {move || came.get().map(|came| match came {
                Ok(sentence) => view! { <p class="told-back" id="carry-report" role="status">{format!("{sentence}.")}</p> }.into_any(),
                Err(sentence) => view! { <p class="caution" id="carry-refused" role="alert">{format!("{sentence}.")}</p> }.into_any(),
            })}
        </section>
    }
    .into_any()
}

/// A file to be picked, as a pill.
#[component]
pub fn Picker(
    /// The input's id.
    #[prop(into)]
    id: String,
    /// What it is for.
    label: &'static str,
    /// Called with its bytes.
    #[prop(into)]
    on_picked: Callback<Result<Vec<u8>, String>>,
) -> impl IntoView {
    let (input, of) = (NodeRef::<Input>::new(), id.clone());
    let picked = move |_| {
        let Some(input) = input.get_untracked() else {
            return;
        };
        let Some(file) = input.files().and_then(|files| files.get(0)) else {
            return;
        };
        leptos::task::spawn_local(async move {
            let bytes = files::read(file).await;
            // The same file may be picked again.
            input.set_value("");
            on_picked.run(bytes);
        });
    };
    view! {
        <label class="pill picker" for=of>
            <input type="file" class="unseen" id=id node_ref=input on:change=picked/>
            <span>{label}</span>
        </label>
    }
    .into_any()
}
