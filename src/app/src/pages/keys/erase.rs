//! Erasing a person for good, where this tablet is a lead.

use crate::shell::app;
use ::words::app::keys as say;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use record::PersonId;
use widgets::Disclosure;

/// Asks twice.
#[component]
pub fn Erasing(
    /// Who.
    person: PersonId,
) -> impl IntoView {
    let standing = app().door.standing;
    view! {
        <Show when=move || standing.leads()>
            <Disclosure id="erase" summary=say::erase_person_good()><Asked person/></Disclosure>
        </Show>
    }
    .into_any()
}

#[component]
fn Asked(person: PersonId) -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let sure = RwSignal::new(false);
    let said = RwSignal::new(None::<String>);
    let erase = move |_| {
        if !sure.get_untracked() {
            return said.set(Some(say::tick_first_meant().into()));
        }
        let navigate = navigate.clone();
        leptos::task::spawn_local(async move {
            match door.erase(person).await {
                Ok(()) => navigate("/", leptos_router::NavigateOptions::default()),
                Err(sentence) => {
                    said.try_set(Some(sentence));
                }
            }
        });
    };
    view! {
        <p>{say::erase_means()}</p>
        <p class="caution">{say::erase_caution()}</p>
        <label class="tick" for="erase-sure">
            <input type="checkbox" id="erase-sure" prop:checked=sure on:change:target=move |event| { sure.set(event.target().checked()); said.set(None); }/>
            <span>{say::erase_meant()}</span>
        </label>
        <p class="field-error" id="erase-said" role="alert">{move || said.get()}</p>
        <button class="act" type="button" id="erase-now" on:click=erase>{say::erase_good()}</button>
    }
    .into_any()
}
