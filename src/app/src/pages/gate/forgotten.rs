//! The passphrase is forgotten: the code on the recovery sheet opens the vault, under a new passphrase.

use super::new_passphrase::{NewPassphrase, Passphrase, Written};
use crate::shell::app;
use ::words::app::gate as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use widgets::TextField;

/// Asks for the code, then for a new passphrase.
#[component]
pub fn Forgotten(
    /// Taken back where the passphrase has come to mind.
    forgotten: RwSignal<bool>,
) -> impl IntoView {
    let code = RwSignal::new(String::new());
    let fits = RwSignal::new(false);
    view! {
        <section class="sheet gate-sheet" id="by-sheet">
            {move || if fits.get() {
                view! { <h1>{say::new_passphrase()}</h1><Anew code/> }.into_any()
            } else {
                view! { <h1>{say::open_recovery_sheet()}</h1><Code code fits/> }.into_any()
            }}
            <p><button class="pill" type="button" id="remembered" on:click=move |_| forgotten.set(false)>{say::back_passphrase()}</button></p>
        </section>
    }
    .into_any()
}

#[component]
fn Code(code: RwSignal<String>, fits: RwSignal<bool>) -> impl IntoView {
    let door = app().door;
    let said = RwSignal::new(None::<String>);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        leptos::task::spawn_local(async move {
            match door.try_code(&code.get_untracked()).await {
                Ok(()) => fits.set(true),
                Err(sentence) => said.set(Some(sentence)),
            }
        });
    };
    view! {
        <form class="form" on:submit=submit>
            <TextField id="recovery-code" label=say::seven_groups() value=code
                hint=say::code_hint()
                on_change=move |text| { code.set(text); said.set(None); } error=said/>
            <button class="act" type="submit" id="try-code">{say::go()}</button>
        </form>
        <p class="soft">{say::no_sheet_no_phrase()}</p>
    }
    .into_any()
}

#[component]
fn Anew(code: RwSignal<String>) -> impl IntoView {
    let door = app().door;
    let passphrase = Passphrase::offered();
    let said = RwSignal::new(None::<String>);
    let opening = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if opening.get_untracked() {
            return;
        }
        let words = match passphrase.written_down() {
            Ok(words) => words,
            Err(sentence) => return said.set(Some(sentence)),
        };
        said.set(None);
        opening.set(true);
        leptos::task::spawn_local(async move {
            if let Err(sentence) = door.open_by_code(&code.get_untracked(), &words).await {
                said.set(Some(sentence));
                opening.set(false);
            }
        });
    };
    view! {
        <form class="form" on:submit=submit>
            <p>{say::code_fits()}</p>
            <NewPassphrase passphrase/>
            <Written passphrase/>
            <p class="field-error" id="anew-said" role="alert">{move || said.get()}</p>
            <button class="act" type="submit" id="open-anew" aria-disabled=move || opening.get().to_string()>
                {move || if opening.get() { say::opening() } else { say::keep_and_open() }}
            </button>
        </form>
    }
    .into_any()
}
