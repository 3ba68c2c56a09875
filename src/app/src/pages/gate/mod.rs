//! Before the vault is open: make one, open it, or say why it can't be opened here.

mod found;
mod strength;
mod unlock;

use crate::session::Gate;
use crate::shell::{PaletteButton, app};
use found::FoundVault;
use leptos::prelude::*;
use unlock::Unlock;

/// Whatever stands between a person and the records.
#[component]
pub fn GatePage() -> impl IntoView {
    let door = app().door;
    view! {
        <main class="gate">
            <div class="gate-top"><span class="gate-name">"Lightround"</span><PaletteButton/></div>
            {move || match door.gate.get() {
                Gate::Looking => view! { <p class="gate-wait" role="status">"Looking at this tablet…"</p> }.into_any(),
                Gate::NoVault => view! { <FoundVault/> }.into_any(),
                Gate::Locked { note } => view! { <Unlock note/> }.into_any(),
                Gate::OtherTab => view! { <OtherTab/> }.into_any(),
                Gate::Broken { sentence } => view! { <Broken sentence/> }.into_any(),
                Gate::Open => ().into_any(),
            }}
            <a class="pill" id="to-practice" href=super::practice::PATH>"practise with a drawn reflex"</a>
        </main>
    }
}

#[component]
fn OtherTab() -> impl IntoView {
    let door = app().door;
    view! {
        <section class="sheet gate-sheet" id="other-tab">
            <h1>"Open in another tab"</h1>
            <p>"The vault is open in another tab of this browser, and only one may write. What was typed there is kept."</p>
            <button class="act" id="use-here" on:click=move |_| door.use_here()>"Lock it there and use it here"</button>
        </section>
    }
}

#[component]
fn Broken(sentence: String) -> impl IntoView {
    let door = app().door;
    view! {
        <section class="sheet gate-sheet" id="broken" role="alert">
            <h1>"The vault can't be opened here"</h1>
            <p>{sentence}</p>
            <p>"Nothing was changed."</p>
            <button class="act" id="look-again" on:click=move |_| door.look()>"Look again"</button>
        </section>
    }
}
