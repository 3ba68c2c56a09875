//! Another passphrase in place of the old one.

use crate::pages::gate::{NewPassphrase, Passphrase, Written};
use crate::shell::{TopBar, app};
use ::words::app::keys as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use widgets::{TextField, TextKind};

/// The page.
#[component]
pub fn PassphrasePage() -> impl IntoView {
    let done = RwSignal::new(false);
    view! {
        <TopBar title=say::passphrase_title()><a class="pill" id="back-to-vault" href="/vault">{say::vault()}</a></TopBar>
        <main class="page">
            {move || if done.get() {
                view! {
                    <section class="sheet" id="passphrase-changed">
                        <h2>{say::passphrase_changed()}</h2>
                        <p role="status">{say::only_new_opens()}</p>
                    </section>
                }.into_any()
            } else {
                view! { <Change done/> }.into_any()
            }}
        </main>
    }
}

#[component]
fn Change(done: RwSignal<bool>) -> impl IntoView {
    let door = app().door;
    let old = RwSignal::new(String::new());
    let passphrase = Passphrase::offered();
    let said = RwSignal::new(None::<String>);
    let changing = RwSignal::new(false);
    Effect::new(move |_| {
        old.track();
        passphrase.words.track();
        said.set(None);
    });
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if changing.get_untracked() {
            return;
        }
        let words = match passphrase.written_down() {
            Ok(words) => words,
            Err(sentence) => return said.set(Some(sentence)),
        };
        changing.set(true);
        leptos::task::spawn_local(async move {
            let changed = door.change_passphrase(&old.get_untracked(), &words).await;
            match changed {
                Ok(()) => done.set(true),
                Err(sentence) => said.set(Some(sentence)),
            }
            changing.set(false);
        });
    };
    view! {
        <form class="sheet" id="change-passphrase" on:submit=submit>
            <h2>{say::change_heading()}</h2>
            <p class="soft">{say::only_opening_changes()}</p>
            <TextField id="old-passphrase" label=say::passphrase_until_now() kind=TextKind::Secret autocomplete="current-password"
                value=old on_change=move |text| old.set(text)/>
            <NewPassphrase passphrase/>
            <Written passphrase/>
            <p class="field-error" id="change-said" role="alert">{move || said.get()}</p>
            <button class="act" type="submit" id="keep-passphrase" aria-disabled=move || changing.get().to_string()>
                {move || if changing.get() { say::changing() } else { say::change_it() }}
            </button>
        </form>
    }
    .into_any()
}
