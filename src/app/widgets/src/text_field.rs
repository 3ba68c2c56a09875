//! Words typed by hand.

use crate::field::Field;
use leptos::prelude::*;

/// What kind of words.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TextKind {
    /// One line.
    #[default]
    Line,
    /// Several lines.
    Lines,
    /// Hidden while typed.
    Secret,
    /// A calendar date, given as `YYYY-MM-DD`.
    Date,
    /// A time of the day, given as `HH:MM`.
    Time,
}

/// A labelled text input. Its parts are `{id}` and `{id}-error`.
#[component]
pub fn TextField(
    /// The input's id.
    #[prop(into)]
    id: String,
    /// What is asked for.
    #[prop(into)]
    label: String,
    /// The page's text.
    #[prop(into)]
    value: Signal<String>,
    /// Called with every change.
    #[prop(into)]
    on_change: Callback<String>,
    /// What kind of words.
    #[prop(optional)]
    kind: TextKind,
    /// A softer word on why or how; may be empty.
    #[prop(optional, into)]
    hint: String,
    /// What is amiss.
    #[prop(optional, into)]
    error: Signal<Option<String>>,
    /// What the browser may fill in; nothing unless said, because the words are about a person.
    #[prop(default = "off")]
    autocomplete: &'static str,
) -> impl IntoView {
    let described = if hint.is_empty() {
        format!("{id}-error")
    } else {
        format!("{id}-hint {id}-error")
    };
    let invalid = move || error.with(Option::is_some).then_some("true");
    let control = if kind == TextKind::Lines {
        view! {
            <textarea class="text-input" id=id.clone() rows="3" aria-describedby=described aria-invalid=invalid
                prop:value=value on:input:target=move |ev| on_change.run(ev.target().value())></textarea>
        }
        .into_any()
    } else {
        let kind = match kind {
            TextKind::Secret => "password",
            TextKind::Date => "date",
            TextKind::Time => "time",
            _ => "text",
        };
        view! {
            <input class="text-input" id=id.clone() type=kind autocomplete=autocomplete aria-describedby=described
                aria-invalid=invalid prop:value=value on:input:target=move |ev| on_change.run(ev.target().value())/>
        }
        .into_any()
    };
    view! { <Field id=id label=label hint=hint error=error>{control}</Field> }
}
