//! The tablet's own unlocking: let it open the vault, or not any more. Where the browser has none, nothing of it is shown.

use crate::edge::platform;
use crate::shell::app;
use ::words::app::keys as say;
use leptos::prelude::*;
use widgets::{Disclosure, TextField, TextKind};

/// How it stands.
#[derive(Clone, Copy, PartialEq)]
enum Stands {
    /// There is none here.
    None,
    /// It could be set.
    Could,
    /// It is set.
    Set,
}

/// The line that opens it.
#[component]
pub fn ByTablet() -> impl IntoView {
    let door = app().door;
    let stands = RwSignal::new(Stands::None);
    let look = move || {
        leptos::task::spawn_local(async move {
            let set = door.opens_by_tablet().await;
            let found = match (set, platform::is_there().await) {
                (true, _) => Stands::Set,
                (false, true) => Stands::Could,
                (false, false) => Stands::None,
            };
            stands.try_set(found);
        });
    };
    look();
    let summary = Signal::derive(move || match stands.get() {
        Stands::Set => say::by_tablet_set().to_owned(),
        _ => say::by_tablet_could().to_owned(),
    });
    view! {
        <Show when=move || stands.get() != Stands::None>
            <Disclosure id="by-tablet" summary>
                <p>{say::by_tablet_means()}</p>
                <Show when=move || stands.get() == Stands::Set fallback=move || view! { <Setting then=Callback::new(move |()| look())/> }>
                    <Removing then=Callback::new(move |()| look())/>
                </Show>
            </Disclosure>
        </Show>
    }
    .into_any()
}

#[component]
fn Setting(then: Callback<()>) -> impl IntoView {
    let door = app().door;
    let passphrase = RwSignal::new(String::new());
    let said = RwSignal::new(None::<String>);
    let setting = RwSignal::new(false);
    let submit = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        if setting.get_untracked() {
            return;
        }
        setting.set(true);
        said.set(None);
        leptos::task::spawn_local(async move {
            match door.add_tablet_unlock(&passphrase.get_untracked()).await {
                Ok(()) => then.run(()),
                Err(sentence) => {
                    said.try_set(Some(sentence));
                }
            }
            setting.try_set(false);
        });
    };
    view! {
        <form id="set-by-tablet" on:submit=submit>
            <TextField id="by-tablet-passphrase" label=say::passphrase() kind=TextKind::Secret autocomplete="current-password"
                value=passphrase on_change=move |text| { passphrase.set(text); said.set(None); } error=said/>
            <button class="act" type="submit" id="by-tablet-set" aria-disabled=move || setting.get().to_string()>{say::by_tablet_let()}</button>
        </form>
    }
    .into_any()
}

#[component]
fn Removing(then: Callback<()>) -> impl IntoView {
    let door = app().door;
    let said = RwSignal::new(None::<String>);
    let remove = move |_| {
        leptos::task::spawn_local(async move {
            match door.remove_tablet_unlock().await {
                Ok(()) => then.run(()),
                Err(sentence) => {
                    said.try_set(Some(sentence));
                }
            }
        });
    };
    view! {
        <p class="field-error" id="by-tablet-said" role="alert">{move || said.get()}</p>
        <button class="pill" type="button" id="by-tablet-remove" on:click=remove>{say::by_tablet_no_more()}</button>
    }
    .into_any()
}
