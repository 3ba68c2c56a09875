//! Making the vault: a passphrase, the examiner's name, and plain words on what can't be undone.

use super::strength::{Strength, strength_of};
use crate::session::NewVault;
use crate::shell::app;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;

/// Words in an offered passphrase.
const WORDS: usize = 6;

/// The first screen on a new tablet.
#[component]
pub fn FoundVault() -> impl IntoView {
    let door = app().door;
    let passphrase = RwSignal::new(offered());
    let is_offered = RwSignal::new(true);
    let name = RwSignal::new(String::new());
    let tablet = RwSignal::new(String::from("bedside tablet"));
    let written = RwSignal::new(false);
    let said = RwSignal::new(None::<String>);
    let making = RwSignal::new(false);
    // What was amiss may no longer be once something else is typed.
    Effect::new(move |_| {
        passphrase.track();
        name.track();
        said.set(None);
    });
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if making.get_untracked() {
            return;
        }
        if name.get_untracked().trim().is_empty() {
            said.set(Some(
                "Whose name goes under the prescriptions? Put it in first.".into(),
            ));
            return;
        }
        if !written.get_untracked() {
            said.set(Some("Write the passphrase down first, and tick that you have: nobody can bring it back.".into()));
            return;
        }
        said.set(None);
        making.set(true);
        let new = NewVault {
            passphrase: passphrase.get_untracked(),
            examiner: name.get_untracked().trim().to_owned(),
            tablet: tablet.get_untracked().trim().to_owned(),
        };
        leptos::task::spawn_local(async move {
            if let Err(sentence) = door.found(new).await {
                said.set(Some(sentence));
                making.set(false);
            }
        });
    };
    view! {
        <form class="sheet gate-sheet" id="found" on:submit=submit>
            <h1>"Make a vault on this tablet"</h1>
            <p>"Everything that you write down is encrypted before it is kept. Only the passphrase opens it."</p>
            <Passphrase passphrase is_offered/>
            <label class="field" for="examiner">
                <span class="field-label">"your name, as it stands under a prescription"</span>
                <input id="examiner" class="text-input" autocomplete="off"
                    prop:value=name on:input:target=move |event| name.set(event.target().value())/>
            </label>
            <label class="field" for="tablet-name">
                <span class="field-label">"what this tablet is called"</span>
                <input id="tablet-name" class="text-input" autocomplete="off"
                    prop:value=tablet on:input:target=move |event| tablet.set(event.target().value())/>
            </label>
            <p class="caution">"Without the passphrase nobody can read the records again, not even you. Keep it on paper, apart from the tablet."</p>
            <label class="tick" for="written">
                <input type="checkbox" id="written" prop:checked=written on:change:target=move |event| written.set(event.target().checked())/>
                <span>"I have written the passphrase down"</span>
            </label>
            <p class="field-error" id="found-said" role="alert">{move || said.get()}</p>
            <button class="act" type="submit" id="make-vault" aria-disabled=move || making.get().to_string()>
                {move || if making.get() { "making the vault…" } else { "Make the vault" }}
            </button>
        </form>
    }
}

/// A fresh passphrase of random words; empty where the browser gives no randomness, which making the vault then says.
fn offered() -> String {
    vault::phrase::offer(WORDS).unwrap_or_default()
}

#[component]
fn Passphrase(passphrase: RwSignal<String>, is_offered: RwSignal<bool>) -> impl IntoView {
    let offer = move |_| {
        passphrase.set(offered());
        is_offered.set(true);
    };
    let own = move |_| {
        passphrase.set(String::new());
        is_offered.set(false);
    };
    view! {
        <div class="field">
            <span class="field-label">"passphrase"</span>
            {move || if is_offered.get() {
                view! {
                    <output id="offered" class="offered" for="another">{passphrase}</output>
                    <p class="soft">"Six words drawn at random: easy to write down, out of reach of guessing."</p>
                    <div class="row">
                        <button class="pill" type="button" id="another" on:click=offer>"other words"</button>
                        <button class="pill" type="button" id="own" on:click=own>"use my own"</button>
                    </div>
                }.into_any()
            } else {
                view! {
                    <OwnPassphrase passphrase/>
                    <div class="row"><button class="pill" type="button" id="offer" on:click=offer>"offer me words"</button></div>
                }.into_any()
            }}
        </div>
    }
}

#[component]
fn OwnPassphrase(passphrase: RwSignal<String>) -> impl IntoView {
    let strength = RwSignal::new(None::<Strength>);
    let typed = move |text: String| {
        passphrase.set(text.clone());
        leptos::task::spawn_local(async move {
            let found = strength_of(&text).await;
            // A slower answer for an earlier text must not stand beside a later one.
            if passphrase.get_untracked() == text {
                strength.set(found);
            }
        });
    };
    view! {
        <input id="own-passphrase" class="text-input" autocomplete="new-password" autocapitalize="none" spellcheck="false"
            aria-label="passphrase" aria-describedby="strength"
            prop:value=passphrase on:input:target=move |event| typed(event.target().value())/>
        <p id="strength" class="soft" role="status">{move || strength.get().map(|found| found.sentence)}</p>
        <meter class="strength" min="0" max="4" aria-hidden="true" prop:value=move || strength.get().map_or(0.0, |found| f64::from(found.score))></meter>
    }
}
