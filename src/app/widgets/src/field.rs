//! A label, a control, and the one sentence that says what is amiss.

use leptos::prelude::*;

/// The sentence below a field. The place is always there, so that nothing else moves for a reader when it fills.
#[component]
pub fn FieldError(
    /// The id that the control names in `aria-describedby`.
    #[prop(into)]
    id: String,
    /// The sentence; none where all is well.
    #[prop(into)]
    error: Signal<Option<String>>,
) -> impl IntoView {
    view! { <p class="field-error" id=id aria-live="polite">{error}</p> }
}

/// A labelled control. The control inside carries `id` itself and names `{id}-error` in its `aria-describedby`.
#[component]
pub fn Field(
    /// The control's id.
    #[prop(into)]
    id: String,
    /// What is asked for.
    #[prop(into)]
    label: String,
    /// A softer word on why or how; may be empty.
    #[prop(optional, into)]
    hint: String,
    /// What is amiss.
    #[prop(optional, into)]
    error: Signal<Option<String>>,
    /// The control.
    children: Children,
) -> impl IntoView {
    view! {
        <div class="field" data-part="field">
            <label class="field-label" for=id.clone()>{label}</label>
            {(!hint.is_empty()).then(|| view! { <p class="field-hint" id=format!("{id}-hint")>{hint}</p> })}
            {children()}
            <FieldError id=format!("{id}-error") error=error/>
        </div>
    }
}
