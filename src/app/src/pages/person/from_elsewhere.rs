//! Findings from another system's FHIR file: read, looked at with all that has no place here, then taken as last time's.

use crate::edge::{files, press};
use crate::shell::app;
use crate::words;
use ::words::app::person as say;
use leptos::prelude::*;
use record::{Line, PersonId, Said};
use widgets::Disclosure;
use workers::{Earlier, Taken};

/// The line that opens it.
#[component]
pub fn FromElsewhere(person: PersonId) -> impl IntoView {
    view! {
        <Disclosure id="from-elsewhere" summary=say::fhir_summary().to_owned()><Reading person/></Disclosure>
    }
    .into_any()
}

#[component]
fn Reading(person: PersonId) -> impl IntoView {
    let taken = RwSignal::new(None::<Taken>);
    let trouble = RwSignal::new(None::<String>);
    let pick = move |event: leptos::web_sys::Event| {
        let input: web_sys::HtmlInputElement = event_target(&event);
        let Some(file) = input.files().and_then(|files| files.get(0)) else {
            return;
        };
        taken.set(None);
        leptos::task::spawn_local(async move {
            let read = read(file).await;
            trouble.try_set(
                read.as_ref()
                    .err()
                    .map(|sentence| say::nothing_read(&sentence)),
            );
            taken.try_set(read.ok());
        });
    };
    view! {
        <p class="soft">{say::fhir_intro()}</p>
        <label class="field-label" for="fhir-file">{say::file()}</label>
        <input class="text-input" id="fhir-file" type="file" accept=".json,application/json,application/fhir+json" on:change=pick/>
        <p class="field-error" role="alert" id="fhir-said">{move || trouble.get()}</p>
        {move || taken.get().map(|taken| view! { <Report person taken/> })}
    }
    .into_any()
}

async fn read(file: web_sys::File) -> Result<Taken, String> {
    let bytes = files::read(file).await?;
    let text = String::from_utf8(bytes).map_err(|_| say::fhir_not_utf_8().to_owned())?;
    press::read(text).await
}

/// What the file holds, and what of it has no place here.
#[component]
fn Report(person: PersonId, taken: Taken) -> impl IntoView {
    let Taken {
        earlier,
        report,
        left_over,
    } = taken;
    let found = earlier
        .into_iter()
        .enumerate()
        .map(|(at, earlier)| view! { <Found person at earlier/> })
        .collect_view();
    view! {
        <h3>{say::what_file_holds()}</h3>
        <ul class="changes" id="fhir-report">{points(report)}</ul>
        {found}
        {left(say::not_taken, left_over)}
    }
    .into_any()
}

fn points(said: Vec<String>) -> AnyView {
    let each = said.into_iter().map(|said| view! { <li>{said}</li> });
    each.collect_view().into_any()
}

/// What has no place here, behind its count.
fn left(said: fn(usize) -> String, left_over: Vec<String>) -> AnyView {
    if left_over.is_empty() {
        return ().into_any();
    }
    let summary = said(left_over.len());
    view! {
        <details class="disclosure"><summary>{summary}</summary><ul class="disclosure-body from-left">{points(left_over)}</ul></details>
    }
    .into_any()
}

/// One prescription, and the button that takes it.
#[component]
fn Found(person: PersonId, at: usize, earlier: Earlier) -> impl IntoView {
    let door = app().door;
    let Earlier {
        person: named,
        born,
        on,
        sections,
        left_over,
    } = earlier;
    let asked = door.story().with_untracked(|story| {
        let known = story.person(&person)?;
        known.is_this(named.as_deref(), born)
    });
    let lines = sections.iter().flat_map(record::Section::lines);
    let lines = lines.map(line).collect_view();
    let sections = StoredValue::new(sections);
    let here = Memo::new(move |_| {
        door.story().with(|story| {
            sections.with_value(|sections| story.has_taken_over(&person, on, sections))
        })
    });
    let trouble = RwSignal::new(None::<String>);
    let taking = RwSignal::new(false);
    let take = move |_| {
        if taking.get_untracked() || here.get_untracked() {
            return;
        }
        taking.set(true);
        leptos::task::spawn_local(async move {
            let taken = door.take_over(person, on, sections.get_value()).await;
            trouble.try_set(taken.err());
            taking.try_set(false);
        });
    };
    view! {
        <section class="sheet from-found">
            <h3>{words::date(on)}</h3>
            {asked.map(|asked| view! { <p class="caution" id=format!("fhir-asked-{at}")>{words::number(&asked)}</p> })}
            <table class="reading"><thead><tr><td></td><th scope="col">{say::right()}</th><th scope="col">{say::left()}</th></tr></thead><tbody>{lines}</tbody></table>
            {left(say::no_place_of_its_own, left_over)}
            <Show when=move || !here.get() fallback=move || view! { <p class="soft" id=format!("fhir-here-{at}")>{say::fhir_here()}</p> }>
                <button type="button" class="act" id=format!("fhir-take-{at}") aria-disabled=move || taking.get().then_some("true") on:click=take>{say::fhir_take()}</button>
            </Show>
            <p class="field-error" role="alert">{move || trouble.get()}</p>
        </section>
    }
    .into_any()
}

fn line(Line { label, said }: Line) -> AnyView {
    let said = match said {
        Said::One(words) => view! { <td colspan="2">{words::number(&words)}</td> }.into_any(),
        Said::Eyes(eyes) => {
            view! { <td>{words::number(&eyes.right)}</td><td>{words::number(&eyes.left)}</td> }
                .into_any()
        }
    };
    view! { <tr><th scope="row">{label}</th>{said}</tr> }.into_any()
}
