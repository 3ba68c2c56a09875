//! The prescription on paper, A5 or A4.

use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::pages as say;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use papers::{EyeLine, Prescription};
use widgets::{Choice, Pick};

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Paper {
    #[default]
    A5,
    A4,
}

/// The page: what will be printed, as it will be printed.
#[component]
pub fn PrescriptionPage() -> impl IntoView {
    let story = app().door.story();
    let params = use_params_map();
    let size = RwSignal::new(Paper::default());
    let exam = Memo::new(move |_| params.with(|params| words::exam_id(&params.get("exam")?)));
    let paper = move || {
        story.with(|story| {
            let exam = exam
                .get()
                .and_then(|exam| story.exam(&exam))
                .ok_or_else(|| say::no_such_exam().to_owned())?;
            let person = story
                .person(&exam.person())
                .ok_or_else(|| say::no_such_person().to_owned())?;
            Prescription::from_exam(person, exam, crate::edge::clock::today())
                .map(|paper| paper.in_manner(words::manner()))
                .map_err(|error| error.to_string())
        })
    };
    let back = move || {
        exam.get().map_or_else(
            || "/".into(),
            |exam| words::exam_path(&exam, super::exam::SIGN),
        )
    };
    let sizes = vec![Pick::new(Paper::A5, || "A5"), Pick::new(Paper::A4, || "A4")];
    view! {
        <TopBar title=say::prescription()><a class="pill" id="back-to-exam" href=back>{say::exam()}</a></TopBar>
        <main class="page paper-page">
            {move || match paper() {
                Ok(paper) => view! { <Sheet paper size/> }.into_any(),
                Err(sentence) => view! { <p class="notice" id="no-paper">{say::nothing_printed(&sentence)}</p> }.into_any(),
            }}
            <div class="find-row no-print">
                <Choice id="paper-size" label=say::paper() unseen_label=true picks=sizes value=Signal::derive(move || Some(size.get())) on_change=move |picked| size.set(picked)/>
                <button class="act" type="button" id="print" on:click=move |_| { let _ = window().print(); }>{say::print()}</button>
            </div>
        </main>
    }
}

#[component]
fn Sheet(paper: Prescription, size: RwSignal<Paper>) -> impl IntoView {
    let facts = [
        (paper.born.label, Some(paper.born.value)),
        (say::examined(), Some(paper.examined_on)),
        (say::vertex_distance(), paper.vertex),
        (say::addition(), paper.near),
        (say::holds_until(), paper.valid_until),
    ];
    let facts = facts
        .into_iter()
        .filter_map(|(label, value)| Some(view! { <div><dt>{label}</dt><dd>{value?}</dd></div> }))
        .collect_view();
    view! {
        <article class="rx" class:rx-a4=move || size.get() == Paper::A4 id="prescription">
            <h2>{say::prescription_glasses()}</h2>
            <p class="rx-name" id="rx-name">{paper.name}</p>
            <dl class="rx-facts">{facts}</dl>
            <table class="rx-lenses" id="rx-lenses">
                <thead><tr><td></td><th scope="col">{say::sphere()}</th><th scope="col">{say::cylinder()}</th><th scope="col">{say::axis()}</th><th scope="col">{say::addition_2()}</th><th scope="col">{say::reads()}</th></tr></thead>
                <tbody>{paper.eyes.into_iter().map(eye_line).collect_view()}</tbody>
            </table>
            {(!paper.amendments.is_empty()).then(|| view! {
                <ul class="rx-amended" id="rx-amended">{paper.amendments.into_iter().map(|said| view! { <li>{said}</li> }).collect_view()}</ul>
            })}
            <ul class="rx-cautions" id="rx-cautions">{paper.cautions.into_iter().map(|said| view! { <li>{said}</li> }).collect_view()}</ul>
            <p class="rx-signed" id="rx-signed">{say::written_on(&paper.signer, &paper.written_on)}</p>
        </article>
    }
    .into_any()
}

fn eye_line(line: EyeLine) -> impl IntoView {
    let id = format!("rx-{}", line.eye);
    if line.sphere.is_empty() {
        return view! { <tr id=id><th scope="row">{line.eye}</th><td colspan="5">{line.note}</td></tr> }.into_any();
    }
    view! {
        <tr id=id>
            <th scope="row">{line.eye}</th>
            <td>{line.sphere}</td><td>{line.cylinder}</td><td>{line.axis}</td><td>{line.add}</td><td>{line.acuity}</td>
        </tr>
    }
    .into_any()
}
