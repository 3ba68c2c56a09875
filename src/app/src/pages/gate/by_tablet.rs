//! Opening the vault by the tablet's own unlocking, where that was set.

use crate::shell::app;
use ::words::app::gate as say;
use leptos::prelude::*;

/// The first button of the gate; nothing where it was not set.
#[component]
pub fn OpenByTablet(
    /// Why it did not open.
    said: RwSignal<Option<String>>,
) -> impl IntoView {
    let door = app().door;
    let set = RwSignal::new(false);
    let asking = RwSignal::new(false);
    leptos::task::spawn_local(async move {
        set.try_set(door.opens_by_tablet().await);
    });
    let open = move |_| {
        if asking.get_untracked() {
            return;
        }
        asking.set(true);
        said.set(None);
        leptos::task::spawn_local(async move {
            if let Err(sentence) = door.unlock_by_tablet().await {
                said.try_set(Some(sentence));
            }
            asking.try_set(false);
        });
    };
    view! {
        <Show when=move || set.get()>
            <p><button class="act" type="button" id="open-by-tablet" aria-disabled=move || asking.get().to_string() on:click=open>{say::open_by_tablet()}</button></p>
        </Show>
    }
    .into_any()
}
