//! A person's story so far: every exam, newest first, with what it found and its papers.

use super::exam::SideBySide;
use super::rounds::Begin;
use crate::shell::{TopBar, app};
use crate::words;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use record::{Beside, Exam, ExamId, ExamState, Eye, FinalLens, PersonId};

/// One exam, as a line of the story.
#[derive(Clone, PartialEq)]
struct Told {
    exam: ExamId,
    when: String,
    place: String,
    state: ExamState,
    lenses: [Option<FinalLens>; 2],
    acuity: [String; 2],
    beside: [(Eye, Vec<Beside>); 2],
}

impl Told {
    fn of(exam: &Exam) -> Self {
        let acuity = |eye| {
            let latest = exam.acuity().latest();
            latest.map_or_else(
                || words::NOTHING.into(),
                |version| {
                    let read = version.value.eyes.of(eye);
                    let finding = if read.with_glasses.is_blank() {
                        &read.unaided
                    } else {
                        &read.with_glasses
                    };
                    match finding.done() {
                        Some(seen) => version.value.chart.in_words(seen),
                        None => words::acuity_finding(finding),
                    }
                },
            )
        };
        Self {
            exam: exam.id(),
            when: words::date(exam.opened_on()),
            place: exam.place().to_owned(),
            state: exam.state(),
            lenses: Eye::BOTH.map(|eye| exam.final_lens(eye)),
            acuity: Eye::BOTH.map(acuity),
            beside: Eye::BOTH.map(|eye| (eye, exam.side_by_side(eye))),
        }
    }
}

/// The page.
#[component]
pub fn PersonPage() -> impl IntoView {
    let story = app().door.story();
    let params = use_params_map();
    let person = Memo::new(move |_| params.with(|params| words::person_id(&params.get("person")?)));
    let who = Memo::new(move |_| {
        story.with(|story| {
            let person = story.person(&person.get()?)?;
            Some((
                words::name(person),
                words::whereabouts(person, crate::edge::clock::today()),
                person.details().note.clone(),
            ))
        })
    });
    let exams = Memo::new(move |_| {
        let Some(person) = person.get() else {
            return Vec::new();
        };
        story.with(|story| {
            story
                .exams_of(&person)
                .into_iter()
                .map(Told::of)
                .collect::<Vec<_>>()
        })
    });
    let name = Signal::derive(move || {
        who.get()
            .map_or_else(|| "nobody by this address".into(), |who| who.0)
    });
    let beside = Signal::derive(move || who.get().map(|who| who.1).unwrap_or_default());
    view! {
        <TopBar title=name beside=beside>
            <a class="pill" id="to-sums" href="/sums">"Sums"</a>
            <a class="pill" href="/">"Rounds"</a>
        </TopBar>
        <main class="page">
            {move || who.get().map(|who| who.2).filter(|note| !note.trim().is_empty()).map(|note| view! { <p class="caution" id="person-note">{note}</p> })}
            {move || who.get().and(person.get()).map(|person| view! { <BeginOrGoOn person exams/> })}
            <ol class="story" id="story">{move || exams.get().into_iter().map(|told| view! { <ToldExam told/> }).collect_view()}</ol>
            <Show when=move || who.get().is_some() && exams.with(Vec::is_empty)>
                <p class="empty">"No exam is written down yet."</p>
            </Show>
        </main>
    }
}

#[component]
fn BeginOrGoOn(person: PersonId, exams: Memo<Vec<Told>>) -> impl IntoView {
    let open = move || {
        exams.with(|exams| {
            exams
                .first()
                .filter(|told| told.state == ExamState::Open)
                .map(|told| told.exam)
        })
    };
    view! {
        <div class="find-row" id="begin-exam">
            {move || match open() {
                Some(exam) => view! { <a class="act" id="go-on" href=words::exam_path(&exam, super::exam::to_go_on(exam))>"Go on with the exam"</a> }.into_any(),
                None => view! { <Begin person/> }.into_any(),
            }}
        </div>
    }
}

#[component]
fn ToldExam(told: Told) -> impl IntoView {
    let state = match told.state {
        ExamState::Open => "not signed",
        ExamState::Signed => "signed",
        ExamState::Amended => "amended",
    };
    let path = words::exam_path(
        &told.exam,
        if told.state == ExamState::Open {
            super::exam::to_go_on(told.exam)
        } else {
            super::exam::SIGN
        },
    );
    let lens = |lens: Option<FinalLens>| {
        lens.map_or_else(|| words::NOTHING.into(), |found| found.lens.to_string())
    };
    // One finding alone has nothing to be seen beside.
    let seen = told.beside.map(|(eye, beside)| {
        let id = format!("{}-{}", eye.word(), told.exam);
        (beside.len() > 1).then(|| view! { <SideBySide id eye beside=Signal::stored(beside)/> })
    });
    view! {
        <li class="sheet told">
            <div class="eye-head"><h2><a href=path>{told.when}</a></h2><span class="soft">{state}</span></div>
            <p class="soft">{told.place}</p>
            <table class="reading">
                <thead><tr><td></td><th scope="col">"right"</th><th scope="col">"left"</th></tr></thead>
                <tbody>
                    <tr><th scope="row">"lens"</th>{told.lenses.map(|found| view! { <td>{lens(found)}</td> }).into_iter().collect_view()}</tr>
                    <tr><th scope="row">"acuity"</th>{told.acuity.map(|read| view! { <td>{read}</td> }).into_iter().collect_view()}</tr>
                </tbody>
            </table>
            {seen.into_iter().collect_view()}
            {(told.state != ExamState::Open).then(|| view! { <a class="pill" href=words::exam_path(&told.exam, "prescription")>"Prescription"</a> })}
        </li>
    }
    .into_any()
}
