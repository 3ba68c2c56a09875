//! The rows that can't be taken: shown with their reasons, and handed back as a file.

use super::{SHOWN, more};
use crate::edge::files;
use crate::words;
use ::words::app::round as say;
use leptos::prelude::*;
use record::home_list::{Judged, in_words};

/// Everything that is amiss with each row that can't be taken, one sentence a row.
pub fn faults<T>(judged: &[Judged<T>]) -> Vec<String> {
    let bad = judged.iter().filter_map(|each| each.verdict.as_ref().err());
    bad.map(|faults| in_words(faults)).collect()
}

/// The rows that are kept aside, where there are any.
#[component]
pub fn KeptAside(
    /// The id of the whole.
    id: &'static str,
    /// One sentence a row.
    #[prop(into)]
    faults: Signal<Vec<String>>,
    /// What to do about them.
    then: &'static str,
    /// The file's name.
    #[prop(into)]
    name: Signal<String>,
    /// The rows as a file.
    #[prop(into)]
    text: Callback<(), String>,
) -> impl IntoView {
    let trouble = RwSignal::new(None::<String>);
    let save = move |_| {
        trouble.set(files::save(&name.get_untracked(), &text.run(())).err());
    };
    let count = move || faults.with(Vec::len);
    let each = move || {
        let shown = faults.with(|faults| faults.iter().take(SHOWN).cloned().collect::<Vec<_>>());
        let dates = words::manner().dates;
        let said = |fault: String| view! { <li>{dates.in_words(&fault)}</li> };
        let lines = shown.into_iter().map(said);
        lines.collect_view()
    };
    view! {
        <Show when=move || count() != 0>
            <section class="sheet" id=id>
                <h2>{move || say::kept_aside(&count())}</h2>
                <p>{then}</p>
                <ul class="faults">{each}</ul>
                <p class="soft">{move || more(count())}</p>
                <button type="button" class="pill" id="aside-save" on:click=save>{say::save_aside()}</button>
                <p class="field-error" role="alert">{move || trouble.get()}</p>
            </section>
        </Show>
    }
    .into_any()
}
