//! How files of a kind are read: kept under a name for all tablets, found again by the headings, forgotten.

use super::Looking;
use crate::pages::settings::set_then;
use crate::shell::app;
use ::words::app::earlier as say;
use leptos::prelude::*;
use record::Settings;
use record::earlier_list::Saved;
use widgets::TextField;

/// Says by which kept mapping the file is read.
#[component]
pub fn ReadAs(looking: Looking) -> impl IntoView {
    let trouble = RwSignal::new(None::<String>);
    let (door, read_as) = (app().door, looking.read_as);
    let forget = move |_| {
        let Some(name) = read_as.get_untracked() else {
            return;
        };
        let change = move |settings: &mut Settings| settings.forget_mapping(&name);
        set_then(door, trouble, change, move || looking.guess());
    };
    let shown = move || looking.table.with(Option::is_some) && read_as.with(Option::is_some);
    let said = move || say::read_as_kept(&read_as.get().unwrap_or_default());
    view! {
        <Show when=shown>
            <p id="earlier-read-as">{said}</p>
            <div class="pills">
                <button type="button" class="pill" id="earlier-guess" on:click=move |_| looking.guess()>{say::read_headings_anew()}</button>
                <button type="button" class="pill" id="earlier-forget" on:click=forget>{say::forget_reading()}</button>
            </div>
        </Show>
        <p class="field-error" role="alert">{move || trouble.get()}</p>
    }
    .into_any()
}

/// Keeps how the file is read.
#[component]
pub fn KeepMapping(looking: Looking) -> impl IntoView {
    let door = app().door;
    let (name, trouble) = (RwSignal::new(String::new()), RwSignal::new(None::<String>));
    let keep = move |_| {
        let (Some(table), Some(mapping)) = (
            looking.table.get_untracked(),
            looking.mapping.get_untracked(),
        ) else {
            return;
        };
        let typed = name.get_untracked();
        let called = match typed.trim() {
            "" => say::files_like_this().to_owned(),
            typed => typed.to_owned(),
        };
        let saved = Saved::of(called.clone(), &table, &mapping);
        let change = move |settings: &mut Settings| settings.keep_mapping(saved);
        set_then(door, trouble, change, move || {
            looking.read_as.set(Some(called))
        });
    };
    let fits = Memo::new(move |_| looking.told(|mapping| mapping.check().is_empty()));
    view! {
        <Show when=move || fits.get() == Some(true)>
            <TextField id="earlier-keep-name" label=say::keep_as() value=name on_change=move |words| name.set(words)/>
            <button type="button" class="pill" id="earlier-keep" on:click=keep>{say::keep_columns()}</button>
        </Show>
        <p class="field-error" role="alert">{move || trouble.get()}</p>
    }
    .into_any()
}
