//! Making the vault: a passphrase, the examiner's name, and plain words on what can't be undone.

use super::new_passphrase::{NewPassphrase, Passphrase, Written};
use crate::session::NewVault;
use crate::shell::app;
use ::words::app::gate as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;

/// The first screen on a new tablet.
#[component]
pub fn FoundVault() -> impl IntoView {
    let door = app().door;
    let passphrase = Passphrase::offered();
    let name = RwSignal::new(String::new());
    let tablet = RwSignal::new(String::from(say::bedside_tablet()));
    let said = RwSignal::new(None::<String>);
    let making = RwSignal::new(false);
    // What was amiss may no longer be once something else is typed.
    Effect::new(move |_| {
        passphrase.words.track();
        name.track();
        said.set(None);
    });
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if making.get_untracked() {
            return;
        }
        if name.get_untracked().trim().is_empty() {
            said.set(Some(say::whose_name().into()));
            return;
        }
        let words = match passphrase.written_down() {
            Ok(words) => words,
            Err(sentence) => return said.set(Some(sentence)),
        };
        said.set(None);
        making.set(true);
        let new = NewVault {
            passphrase: words,
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
            <h1>{say::make_vault_here()}</h1>
            <p>{say::everything_encrypted()}</p>
            <NewPassphrase passphrase/>
            <label class="field" for="examiner">
                <span class="field-label">{say::your_name()}</span>
                <input id="examiner" class="text-input" autocomplete="off"
                    prop:value=name on:input:target=move |event| name.set(event.target().value())/>
            </label>
            <label class="field" for="tablet-name">
                <span class="field-label">{say::tablet_called()}</span>
                <input id="tablet-name" class="text-input" autocomplete="off"
                    prop:value=tablet on:input:target=move |event| tablet.set(event.target().value())/>
            </label>
            <p class="caution">{say::without_passphrase()}</p>
            <Written passphrase/>
            <p class="field-error" id="found-said" role="alert">{move || said.get()}</p>
            <button class="act" type="submit" id="make-vault" aria-disabled=move || making.get().to_string()>
                {move || if making.get() { say::making_vault() } else { say::make_vault() }}
            </button>
        </form>
    }
}
