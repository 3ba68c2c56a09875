//! The log as files.

use super::Looking;
use crate::edge::clock::today;
use crate::pages::hand_over::{HandOver, Offer, kinds};
use crate::pages::papers::bundle;
use crate::shell::app;
use ::words::app::log as say;
use leptos::prelude::*;
use papers::holds;
use workers::{Job, Log};

/// The buttons.
#[component]
pub fn TakeAway(looking: Looking) -> impl IntoView {
    let log = move || Log {
        columns: looking.columns.get_untracked(),
        visits: looking.visits.with_untracked(|visits| visits.to_vec()),
    };
    let today = today();
    let offers = vec![
        Offer {
            id: "log-csv",
            label: say::csv(),
            kind: kinds::CSV,
            name: Callback::new(move |()| format!("visits-{today}.csv")),
            job: Callback::new(move |()| Ok(Job::Csv(log()))),
        },
        Offer {
            id: "log-workbook",
            label: say::workbook_xlsx(),
            kind: kinds::WORKBOOK,
            name: Callback::new(move |()| format!("visits-{today}.xlsx")),
            job: Callback::new(move |()| Ok(Job::Workbook(log()))),
        },
    ];
    let told = Signal::derive(move || {
        let visits = looking.totals.with(|totals| totals.visits) as usize;
        looking.columns.with(|columns| holds::log(visits, columns))
    });
    view! {
        <section class="sheet">
            <h2>{say::file()}</h2>
            <HandOver id="log-files" offers holds=told always=true/>
            <Exams looking/>
        </section>
    }
    .into_any()
}

/// The exams behind the visits, which name everybody.
#[component]
fn Exams(looking: Looking) -> impl IntoView {
    let story = app().door.story();
    let today = today();
    let offer = Offer {
        id: "log-fhir",
        label: say::these_exams_fhir(),
        kind: kinds::FHIR,
        name: Callback::new(move |()| format!("exams-{today}.fhir.json")),
        job: Callback::new(move |()| {
            let exams = looking
                .visits
                .with_untracked(|visits| visits.iter().map(|visit| visit.exam).collect());
            Ok(story.with_untracked(|story| bundle(story, exams)))
        }),
    };
    let told =
        Signal::derive(move || holds::exams(looking.totals.with(|totals| totals.visits) as usize));
    view! {
        <Show when=move || looking.names() fallback=|| view! { <p class="soft">{say::fhir_names()}</p> }>
            <HandOver id="log-exams" offers=vec![offer] holds=told/>
        </Show>
    }
    .into_any()
}
