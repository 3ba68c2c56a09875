//! The file that is picked.

use crate::edge::files;
use ::words::app::round as say;
use leptos::prelude::*;

/// The field that takes a file of separated values. Its parts are `{id}-file` and `{id}-said`.
#[component]
pub fn PickFile(
    /// What it is called.
    id: &'static str,
    /// Called with what stands in the file; says why it can't be read.
    #[prop(into)]
    on_bytes: Callback<Vec<u8>, Result<(), String>>,
    /// What is amiss.
    trouble: RwSignal<Option<String>>,
) -> impl IntoView {
    let pick = move |event: leptos::web_sys::Event| {
        let input: web_sys::HtmlInputElement = event_target(&event);
        let Some(file) = input.files().and_then(|files| files.get(0)) else {
            return;
        };
        leptos::task::spawn_local(async move {
            let opened = match files::read(file).await {
                Ok(bytes) => on_bytes.try_run(bytes).unwrap_or(Ok(())),
                Err(sentence) => Err(sentence),
            };
            trouble.try_set(opened.err());
        });
    };
    // A file that was put right has the name that it had: without this, picking it again would change nothing.
    let forget = move |event: leptos::web_sys::MouseEvent| {
        event_target::<web_sys::HtmlInputElement>(&event).set_value("");
    };
    view! {
        <label class="field-label" for=format!("{id}-file")>{say::file()}</label>
        <input class="text-input" id=format!("{id}-file") type="file" accept=".csv,.txt,.tsv,text/csv,text/plain" on:click=forget on:change=pick/>
        <p class="field-error" role="alert" id=format!("{id}-said")>{move || trouble.get()}</p>
    }
    .into_any()
}
