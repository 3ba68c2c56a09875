//! A set-up pill: what is set, and to what.

use crate::mark::marked;
use leptos::prelude::*;

/// A small button that shows a setting and opens it.
#[component]
pub fn Pill(
    /// The button's id.
    #[prop(into)]
    id: String,
    /// What the setting is; may be empty.
    #[prop(optional, into)]
    label: String,
    /// What it is set to.
    #[prop(into)]
    value: Signal<String>,
    /// A softer word after the value, such as the same length in dioptres.
    #[prop(optional, into)]
    beside: Signal<String>,
    /// Called when pressed.
    #[prop(into)]
    on_press: Callback<()>,
) -> impl IntoView {
    let beside = Memo::new(move |_| marked(beside.get()));
    view! {
        <button type="button" class="pill" id=id data-part="pill" on:click=move |_| on_press.run(())>
            {(!label.is_empty()).then(|| view! { <span class="pill-label">{label}" "</span> })}
            <b class="pill-value">{move || marked(value.get())}</b>
            <Show when=move || beside.with(|beside| !beside.is_empty())><span class="pill-label">" "{beside}</span></Show>
        </button>
    }
}
