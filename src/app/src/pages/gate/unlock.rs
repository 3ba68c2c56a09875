//! Opening the vault with its passphrase.

use super::by_tablet::OpenByTablet;
use crate::shell::app;
use ::words::app::gate as say;
use leptos::ev::SubmitEvent;
use leptos::html::Input;
use leptos::prelude::*;

/// Asks for the passphrase; a wrong one is said and changes nothing.
#[component]
pub fn Unlock(
    /// Why the vault is locked, where there is something to say.
    note: Option<String>,
    /// Set where the passphrase is forgotten.
    forgotten: RwSignal<bool>,
) -> impl IntoView {
    let door = app().door;
    let field = NodeRef::<Input>::new();
    let said = RwSignal::new(note);
    let opening = RwSignal::new(false);
    let shown = RwSignal::new(false);
    Effect::new(move |_| {
        if let Some(field) = field.get() {
            let _ = field.focus();
        }
    });
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let Some(input) = field.get_untracked() else {
            return;
        };
        if opening.get_untracked() || input.value().is_empty() {
            return;
        }
        opening.set(true);
        said.set(None);
        leptos::task::spawn_local(async move {
            if let Err(sentence) = door.unlock(input.value()).await {
                said.set(Some(sentence));
                opening.set(false);
                input.select();
            }
        });
    };
    view! {
        <form class="sheet gate-sheet" id="unlock" on:submit=submit>
            <h1>{say::open_vault()}</h1>
            <OpenByTablet said/>
            <label class="field" for="passphrase">
                <span class="field-label">{say::passphrase()}</span>
                <input
                    id="passphrase" class="text-input" autocomplete="current-password" autocapitalize="none" spellcheck="false"
                    type=move || if shown.get() { "text" } else { "password" }
                    node_ref=field
                    aria-describedby="unlock-said"
                />
            </label>
            <p class="field-error" id="unlock-said" role="alert">{move || said.get()}</p>
            <div class="row">
                <button class="pill" type="button" id="show-passphrase" on:click=move |_| shown.update(|shown| *shown = !*shown)>
                    {move || if shown.get() { say::hide() } else { say::show() }}
                </button>
                <button class="act" type="submit" id="open-vault" aria-disabled=move || opening.get().to_string()>
                    {move || if opening.get() { say::opening() } else { say::open() }}
                </button>
            </div>
            <p><button class="pill" type="button" id="forgotten" on:click=move |_| forgotten.set(true)>{say::passphrase_forgotten()}</button></p>
        </form>
    }
}
