//! This tablet was put back from a copy: it reads on, and is set up anew before it writes.

use crate::shell::app;
use ::words::app::keys as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use sync::Refusal;
use widgets::{TextField, TextKind};

/// Asks for it, where it is so.
#[component]
pub fn SetUpAnew() -> impl IntoView {
    let standing = app().door.standing;
    view! {
        <Show when=move || standing.refusal.get() == Some(Refusal::Copy)><Anew/></Show>
    }
    .into_any()
}

#[component]
fn Anew() -> impl IntoView {
    let door = app().door;
    let passphrase = RwSignal::new(String::new());
    let said = RwSignal::new(None::<String>);
    let working = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if working.get_untracked() {
            return;
        }
        working.set(true);
        leptos::task::spawn_local(async move {
            if let Err(sentence) = door.set_up_anew(&passphrase.get_untracked()).await {
                said.try_set(Some(sentence));
            }
            working.try_set(false);
        });
    };
    view! {
        <form class="sheet" id="set-up-anew" on:submit=submit>
            <h2>{say::put_back_copy()}</h2>
            <p>{say::copy_why()}</p>
            <TextField id="anew-passphrase" label=say::passphrase() kind=TextKind::Secret autocomplete="current-password"
                value=passphrase on_change=move |text| { passphrase.set(text); said.set(None); } error=said/>
            <button class="act" type="submit" id="anew-now" aria-disabled=move || working.get().to_string()>
                {move || if working.get() { say::setting_up() } else { say::set_up_anew() }}
            </button>
        </form>
    }
    .into_any()
}
