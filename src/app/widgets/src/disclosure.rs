//! "Show the working": a number that can be opened.

use leptos::prelude::*;

/// A line that opens to what lies behind it.
#[component]
pub fn Disclosure(
    /// The id of the whole.
    #[prop(into)]
    id: String,
    /// The line that opens it.
    #[prop(into)]
    summary: Signal<String>,
    /// What lies behind it.
    children: Children,
) -> impl IntoView {
    view! {
        <details class="disclosure" id=id data-part="disclosure">
            <summary>{summary}</summary>
            <div class="disclosure-body">{children()}</div>
        </details>
    }
}
