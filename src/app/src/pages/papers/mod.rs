//! The papers of an exam: which can be made, for whom, and each of them as it is printed.

mod left;
mod paper;
mod sheet;
mod wording;

pub use paper::PaperPage;

use super::hand_over::{HandOver, Offer, kinds};
use crate::edge::clock::today;
use crate::session::Door;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::papers as say;
use left::WhatLeft;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use papers::{Document, PaperKind, Standing, Wording, holds};
use record::{Entry, ExamId, PersonId, Story};
use serde_bytes::ByteBuf;
use workers::Job;

/// The word in the address of an exam's papers.
pub const PAPERS: &str = "papers";

/// The exam that the address names.
fn named() -> Memo<Option<ExamId>> {
    let params = use_params_map();
    Memo::new(move |_| params.with(|params| words::exam_id(&params.get("exam")?)))
}

/// Whom an exam is of, and the address of their story.
fn whose(exam: Memo<Option<ExamId>>) -> Memo<Option<(String, String)>> {
    let story = app().door.story();
    Memo::new(move |_| {
        story.with(|story| {
            let person = story.person(&story.exam(&exam.get()?)?.person())?;
            Some((words::name(person), words::person_path(&person.id())))
        })
    })
}

/// A paper as it can be made now; else why not.
fn made(door: Door, exam: ExamId, kind: PaperKind, wording: &Wording) -> Result<Document, String> {
    let document = door.story().with(|story| {
        let exam = story
            .exam(&exam)
            .ok_or_else(|| say::no_such_exam_here().to_owned())?;
        let person = story
            .person(&exam.person())
            .ok_or_else(|| say::no_such_person().to_owned())?;
        kind.document(person, exam, wording, today())
            .map(|document| document.in_manner(words::manner()))
            .map_err(|error| error.to_string())
    })?;
    Ok(if door.made_up.get() {
        document.about_nobody()
    } else {
        document
    })
}

/// The address of one paper.
fn path(exam: &ExamId, kind: PaperKind) -> String {
    words::exam_path(exam, &format!("{PAPERS}/{}", kind.slug()))
}

/// The list.
#[component]
pub fn PapersPage() -> impl IntoView {
    let exam = named();
    let who = whose(exam);
    let name = Signal::derive(move || {
        who.get()
            .map_or_else(|| say::no_such_exam().into(), |who| who.0)
    });
    let leads_to = Signal::derive(move || who.get().map(|who| who.1));
    let back = move || {
        exam.get().map_or_else(
            || "/".into(),
            |exam| words::exam_path(&exam, super::exam::SIGN),
        )
    };
    view! {
        <TopBar title=name beside=say::papers_beside().to_owned() leads_to=leads_to><a class="pill" id="back-to-exam" href=back>{say::exam()}</a></TopBar>
        <main class="page">
            {move || match (exam.get(), who.get().is_some()) {
                (Some(exam), true) => view! { <List exam/> <WhatLeft exam/> <WholeExam exam/> }.into_any(),
                _ => view! { <p>{say::holds_no_such_exam()} <a href="/">{say::go_rounds()}</a></p> }.into_any(),
            }}
        </main>
    }
    .into_any()
}

#[component]
fn List(exam: ExamId) -> impl IntoView {
    let rows = PaperKind::ALL.map(|kind| view! { <Row exam kind/> });
    view! { <ul class="papers" id="papers">{rows.into_iter().collect_view()}</ul> }
}

/// One paper: what it is, for whom, and whether it can be made now.
#[component]
fn Row(exam: ExamId, kind: PaperKind) -> impl IntoView {
    let door = app().door;
    let stands = Memo::new(move |_| {
        let made = made(door, exam, kind, &Wording::default());
        made.map(|document| document.standing)
    });
    let said = move || match stands.get() {
        Ok(Standing::Signed | Standing::Gathered) => say::ready().to_owned(),
        Ok(Standing::Amended) => say::ready_marked_amended().to_owned(),
        Ok(Standing::Unsigned) => say::to_look_at().to_owned(),
        Err(why) => say::not_now(&why),
    };
    let id = format!("paper-{}", kind.slug());
    let named = view! { <b>{kind.title()}</b><span class="soft">{kind.whom()}</span> };
    let head = if stands.get_untracked().is_ok() {
        view! { <a class="paper-open" id=id href=path(&exam, kind)>{named}</a> }.into_any()
    } else {
        view! { <div class="paper-open" id=id>{named}</div> }.into_any()
    };
    view! { <li class="paper-row" data-can=move || stands.get().is_ok().to_string()>{head}<span class="paper-stands">{said}</span></li> }
        .into_any()
}

/// Everything of the exam, for another system.
#[component]
fn WholeExam(exam: ExamId) -> impl IntoView {
    let story = app().door.story();
    let job = Callback::new(move |()| Ok(story.with_untracked(|story| bundle(story, vec![exam]))));
    let on = move || story.with_untracked(|story| story.exam(&exam).map(record::Exam::opened_on));
    let name = Callback::new(move |()| match on() {
        Some(on) => format!("exam-{on}.fhir.json"),
        None => "exam.fhir.json".to_owned(),
    });
    let offer = Offer {
        id: "exam-fhir",
        label: say::make_fhir_file(),
        kind: kinds::FHIR,
        name,
        job,
    };
    view! {
        <section class="sheet">
            <h2>{say::whole_exam_another_system()}</h2>
            <p class="soft">{say::fhir_what()}</p>
            <HandOver id="whole-exam" offers=vec![offer] holds=holds::exams(1)/>
        </section>
    }
    .into_any()
}

/// What a bundle of these exams is made from.
pub fn bundle(story: &Story, exams: Vec<ExamId>) -> Job {
    let entries = packed(&story.excerpt(&exams));
    Job::Bundle { entries, exams }
}

/// What a bundle of a whole person is made from.
pub fn whole_bundle(story: &Story, person: PersonId) -> Job {
    let entries = packed(&story.excerpt_of(&person));
    Job::Whole { entries, person }
}

fn packed(entries: &[Entry]) -> Vec<ByteBuf> {
    let each = entries.iter().map(|entry| ByteBuf::from(entry.to_cbor()));
    each.collect()
}
