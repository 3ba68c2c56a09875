//! Before the vault is open: make one, open it, or say why it can't be opened here.

mod bring_back;
mod by_tablet;
mod coming;
mod forgotten;
mod found;
mod join;
mod made_up;
mod new_passphrase;
mod strength;
mod unlock;

use crate::session::Gate;
use crate::shell::{PaletteButton, app};
use ::words::Language;
use ::words::app::gate as say;
use coming::NoVault;
use forgotten::Forgotten;
use leptos::prelude::*;
pub use made_up::EndLookingAround;
use made_up::LookAroundAgain;
pub use new_passphrase::{NewPassphrase, Passphrase, Written};
use unlock::Unlock;

/// Whatever stands between a person and the records.
#[component]
pub fn GatePage() -> impl IntoView {
    let door = app().door;
    view! {
        <main class="gate">
            <div class="gate-top"><span class="gate-name">"Lightround"</span><span class="pills"><OtherLanguages/><PaletteButton/></span></div>
            {move || match door.gate.get() {
                Gate::Looking => view! { <p class="gate-wait" role="status">{say::looking_tablet()}</p> }.into_any(),
                Gate::NoVault => view! { <NoVault/> }.into_any(),
                Gate::Locked { note } if door.made_up.get() => view! { <LookAroundAgain note/> }.into_any(),
                Gate::Locked { note } => view! { <Locked note/> }.into_any(),
                Gate::OtherTab => view! { <OtherTab/> }.into_any(),
                Gate::Broken { sentence } => view! { <Broken sentence/> }.into_any(),
                Gate::Open => ().into_any(),
            }}
            <a class="pill" id="to-practice" href=super::practice::PATH>{say::practise()}</a>
        </main>
    }
}

/// A tap to each other language, by the name that its speakers look for.
#[component]
fn OtherLanguages() -> impl IntoView {
    let app = app();
    let others = Language::ALL
        .into_iter()
        .filter(|language| *language != ::words::spoken());
    let pills = others.map(|language| {
        view! { <button type="button" class="pill" id=format!("speak-{}", language.tag()) lang=language.tag() on:click=move |_| app.speak(language)>{language.own_name()}</button> }
    });
    pills.collect_view().into_any()
}

/// The passphrase is asked for, or the code of the recovery sheet.
#[component]
fn Locked(note: Option<String>) -> impl IntoView {
    let forgotten = RwSignal::new(false);
    let note = StoredValue::new(note);
    move || {
        if forgotten.get() {
            view! { <Forgotten forgotten/> }.into_any()
        } else {
            view! { <Unlock note=note.get_value() forgotten/> }.into_any()
        }
    }
}

#[component]
fn OtherTab() -> impl IntoView {
    let door = app().door;
    view! {
        <section class="sheet gate-sheet" id="other-tab">
            <h1>{say::open_another_tab()}</h1>
            <p>{say::other_tab_why()}</p>
            <button class="act" id="use-here" on:click=move |_| door.use_here()>{say::lock_there()}</button>
        </section>
    }
}

#[component]
fn Broken(sentence: String) -> impl IntoView {
    let door = app().door;
    view! {
        <section class="sheet gate-sheet" id="broken" role="alert">
            <h1>{say::cannot_be_opened()}</h1>
            <p>{sentence}</p>
            <p>{say::nothing_changed()}</p>
            <button class="act" id="look-again" on:click=move |_| door.look()>{say::look_again()}</button>
        </section>
    }
}
