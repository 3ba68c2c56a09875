//! Exams, and what came of them, newest first.

use super::years::happened;
use crate::pages::exam::{SIGN, SideBySide, to_go_on};
use crate::pages::papers::PAPERS;
use crate::words;
use ::words::app::person as say;
use leptos::prelude::*;
use record::{Beside, Event, Exam, ExamId, ExamState, Eye, FinalLens, Moment, StorySoFar};

/// One exam, as a line of the story.
#[derive(Clone, PartialEq)]
pub struct ExamTold {
    /// The exam.
    pub exam: ExamId,
    when: String,
    place: String,
    /// Whether it is signed.
    pub state: ExamState,
    /// Whether its findings were taken from elsewhere.
    pub elsewhere: bool,
    lenses: [Option<FinalLens>; 2],
    acuity: [String; 2],
    beside: [(Eye, Vec<Beside>); 2],
}

impl ExamTold {
    /// What is told of it.
    pub fn of(exam: &Exam) -> Self {
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
                        Some(seen) => words::number(&version.value.chart.in_words(seen)),
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
            elsewhere: exam.is_from_elsewhere(),
            lenses: Eye::BOTH.map(|eye| exam.final_lens(eye)),
            acuity: Eye::BOTH.map(acuity),
            beside: Eye::BOTH.map(|eye| (eye, exam.side_by_side(eye))),
        }
    }
}

/// The list.
#[component]
pub fn Timeline(
    /// The story.
    so_far: Memo<StorySoFar>,
    /// What is told of each exam.
    exams: Memo<Vec<ExamTold>>,
) -> impl IntoView {
    let items = move || so_far.with(StorySoFar::timeline);
    let item = move |told| match told {
        Moment::Later(event) => later(&event),
        Moment::Exam { exam, events, .. } => exams.with(|exams| {
            let known = exams.iter().find(|told| told.exam == exam).cloned();
            known.map_or_else(
                || ().into_any(),
                |told| view! { <OneExam told events/> }.into_any(),
            )
        }),
    };
    view! { <ol class="story" id="story">{move || items().into_iter().map(item).collect_view()}</ol> }
}

/// What came of an exam on a later day.
fn later(event: &Event) -> AnyView {
    view! {
        <li class="sheet later"><span class="soft">{words::date(event.on)}</span><ul class="events">{happened(event)}</ul></li>
    }
    .into_any()
}

#[component]
fn OneExam(told: ExamTold, events: Vec<Event>) -> impl IntoView {
    let state = match told.state {
        ExamState::Open if told.elsewhere => say::not_examined_here(),
        ExamState::Open => say::not_signed(),
        ExamState::Signed => say::signed(),
        ExamState::Amended => say::amended(),
    };
    let path = words::exam_path(
        &told.exam,
        if told.state == ExamState::Open {
            to_go_on(told.exam)
        } else {
            SIGN
        },
    );
    let lens = |lens: Option<FinalLens>| {
        lens.map_or_else(|| words::NOTHING.into(), |found| words::lens(&found.lens))
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
            {(!events.is_empty()).then(|| view! { <ul class="events">{events.iter().map(happened).collect_view()}</ul> })}
            <table class="reading">
                <thead><tr><td></td><th scope="col">{say::right()}</th><th scope="col">{say::left()}</th></tr></thead>
                <tbody>
                    <tr><th scope="row">{say::lens()}</th>{told.lenses.map(|found| view! { <td>{lens(found)}</td> }).into_iter().collect_view()}</tr>
                    <tr><th scope="row">{say::acuity()}</th>{told.acuity.map(|read| view! { <td>{read}</td> }).into_iter().collect_view()}</tr>
                </tbody>
            </table>
            {seen.into_iter().collect_view()}
            <div class="pills">
                {(told.state != ExamState::Open).then(|| view! { <a class="pill" href=words::exam_path(&told.exam, "prescription")>{say::prescription()}</a> })}
                {(!told.elsewhere).then(|| view! { <a class="pill" id=format!("papers-{}", told.exam) href=words::exam_path(&told.exam, PAPERS)>{say::papers()}</a> })}
            </div>
        </li>
    }
    .into_any()
}
