//! A question with its reason, on a strip that glows.

use crate::icons::AskIcon;
use leptos::prelude::*;

/// A strip that asks. Children are the words, then the actions as pills.
#[component]
pub fn Notice(
    /// The strip's id.
    #[prop(into)]
    id: String,
    /// The words and the actions.
    children: Children,
) -> impl IntoView {
    view! {
        <div class="notice" id=id data-part="notice" role="status">
            <AskIcon/>
            <div class="notice-body">{children()}</div>
        </div>
    }
}
