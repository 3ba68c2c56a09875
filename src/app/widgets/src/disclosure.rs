//! "Show the working": a number that can be opened.

use leptos::prelude::*;
use leptos::web_sys::HtmlDetailsElement;

/// A line that opens to what lies behind it. That is drawn while it is open only: behind a closed one a tap changes nothing.
#[component]
pub fn Disclosure(
    /// The id of the whole.
    #[prop(into)]
    id: String,
    /// The line that opens it.
    #[prop(into)]
    summary: Signal<String>,
    /// What lies behind it.
    children: ChildrenFn,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let children = StoredValue::new(children);
    let toggled = move |event| open.set(event_target::<HtmlDetailsElement>(&event).open());
    view! {
        <details class="disclosure" id=id data-part="disclosure" on:toggle=toggled>
            <summary>{summary}</summary>
            <div class="disclosure-body"><Show when=move || open.get()>{children.with_value(|children| children())}</Show></div>
        </details>
    }
    .into_any()
}
