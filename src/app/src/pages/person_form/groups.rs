//! The groups of fields: who and where stand open, the rest is behind a line that opens.

use super::rows::{RowFields, Rows};
use super::typed::Typed;
use super::{Refused, said};
use ::words::app::person_form as say;
use leptos::prelude::*;
use record::LOOKED_AT;
use widgets::{Disclosure, TextField, TextKind};

/// Name, birth, where, and what to remember.
#[component]
pub fn Names(typed: StoredValue<Typed>, refused: Refused) -> impl IntoView {
    let typed = typed.get_value();
    let amiss = move |field: &'static str| Signal::derive(move || said(refused, field));
    view! {
        <div class="two"><TextField id="given" label=say::given_name() value=typed.given error=amiss("name") on_change=move |text| typed.given.set(text)/>
        <TextField id="family" label=say::family_name() value=typed.family on_change=move |text| typed.family.set(text)/></div>
        <div class="two"><TextField id="born" label=say::date_birth() kind=TextKind::Date value=typed.born error=amiss("born") on_change=move |text| typed.born.set(text)/>
        <TextField id="age" label=say::age_stated() value=typed.age on_change=move |text| typed.age.set(text)/></div>
        <div class="two"><TextField id="place" label=say::home_address() value=typed.place on_change=move |text| typed.place.set(text)/>
        <TextField id="room" label=say::room() value=typed.room on_change=move |text| typed.room.set(text)/></div>
        <TextField id="note" label=say::remember_before_knocking() kind=TextKind::Lines value=typed.note on_change=move |text| typed.note.set(text)/>
    }
    .into_any()
}

/// Everything else that is known.
#[component]
pub fn Beside(typed: StoredValue<Typed>, refused: Refused) -> impl IntoView {
    let all = typed.get_value();
    view! {
        <Disclosure id="more-looks-at" summary=counted(say::looks_all_day(), all.looks_at)><LooksAtGroup typed refused/></Disclosure>
        <Disclosure id="more-hearing" summary=filled(say::hearing_language(), [all.hearing, all.language])><HearingGroup typed/></Disclosure>
        <Disclosure id="more-contacts" summary=counted(say::whom_ask_tell(), all.contacts)>
            <Listed id="contact" labels=vec![say::contact_name(), say::contact_is(), say::contact_reached()] rows=all.contacts add=say::another_contact() field="contacts" refused/>
        </Disclosure>
        <Disclosure id="more-doctor" summary=filled(say::family_doctor(), [all.doctor, all.practice])><DoctorGroup typed/></Disclosure>
        <Disclosure id="more-numbers" summary=counted(say::numbers_elsewhere(), all.identifiers)>
            <Listed id="number" labels=vec![say::number(), say::number_from()] rows=all.identifiers add=say::another_number() field="identifiers" refused/>
        </Disclosure>
        <p class="soft">{say::asked_every_visit()}</p>
    }
    .into_any()
}

/// "whom to ask or tell: 2".
fn counted(label: &'static str, rows: Rows) -> Signal<String> {
    Signal::derive(move || match rows.count() {
        0 => label.to_owned(),
        count => format!("{label}: {count}"),
    })
}

/// "family doctor: Dr Brinecote".
fn filled(label: &'static str, parts: [RwSignal<String>; 2]) -> Signal<String> {
    Signal::derive(move || {
        let words = parts.map(|part| part.get().trim().to_owned());
        let there: Vec<String> = words.into_iter().filter(|word| !word.is_empty()).collect();
        if there.is_empty() {
            label.to_owned()
        } else {
            format!("{label}: {}", there.join(", "))
        }
    })
}

#[component]
fn Listed(
    id: &'static str,
    labels: Vec<&'static str>,
    rows: Rows,
    add: &'static str,
    field: &'static str,
    refused: Refused,
) -> impl IntoView {
    let fields = labels.len();
    view! {
        <RowFields id labels rows/>
        <p class="field-error" aria-live="polite">{move || said(refused, field)}</p>
        <button class="pill" type="button" id=format!("{id}-add") on:click=move |_| rows.add(vec![String::new(); fields])>{add}</button>
    }
    .into_any()
}

#[component]
fn LooksAtGroup(typed: StoredValue<Typed>, refused: Refused) -> impl IntoView {
    let rows = typed.get_value().looks_at;
    let usual = LOOKED_AT.iter().enumerate().map(|(place, what)| {
        let what = what();
        view! { <button class="pill" type="button" id=format!("looks-at-usual-{place}") on:click=move |_| rows.add(vec![what.to_owned(), String::new()])>{what}</button> }
    });
    view! {
        <div class="row" role="group" aria-label=say::what_often_looked()>{usual.collect_view()}</div>
        <Listed id="looks-at" labels=vec![say::what(), say::how_far()] rows add=say::something_else() field="looks_at" refused/>
    }
    .into_any()
}

#[component]
fn HearingGroup(typed: StoredValue<Typed>) -> impl IntoView {
    let typed = typed.get_value();
    view! {
        <div class="two"><TextField id="hearing" label=say::hears() value=typed.hearing on_change=move |text| typed.hearing.set(text)/>
        <TextField id="language" label=say::language() value=typed.language on_change=move |text| typed.language.set(text)/></div>
    }
    .into_any()
}

#[component]
fn DoctorGroup(typed: StoredValue<Typed>) -> impl IntoView {
    let typed = typed.get_value();
    view! {
        <div class="two"><TextField id="doctor" label=say::family_doctor() value=typed.doctor on_change=move |text| typed.doctor.set(text)/>
        <TextField id="practice" label=say::practice_address() value=typed.practice on_change=move |text| typed.practice.set(text)/>
        <TextField id="doctor-reach" label=say::doctor_reach() value=typed.doctor_reach on_change=move |text| typed.doctor_reach.set(text)/></div>
    }
    .into_any()
}
