//! An exam: sections down the side, the open one in the middle, last time's finding beside today's.

mod acuity;
mod amend;
mod decision;
mod editors;
mod eyes;
mod fields;
mod foot;
mod frame;
mod halves;
mod meridians;
mod onward;
mod over_glasses;
mod reading;
mod retinoscopy;
mod retinoscopy_setup;
mod second_look;
mod sections;
pub mod setup;
mod sign;
mod subjective;
mod sweeps;
mod two_versions;
mod versions;
mod working;

pub use onward::SideBySide;

use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::exam as say;
use frame::SectionFrame;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use record::{ExamId, SectionKind};
use sections::SectionList;
pub use sections::{FIRST, to_go_on};
use sign::SignPage;

/// The word in the address for the page that signs.
pub const SIGN: &str = "sign";

/// The exam that the address names, at the section that it names.
#[component]
pub fn ExamPage() -> impl IntoView {
    let story = app().door.story();
    let params = use_params_map();
    let exam = Memo::new(move |_| params.with(|params| words::exam_id(&params.get("exam")?)));
    let slug = Memo::new(move |_| params.with(|params| params.get("section").unwrap_or_default()));
    let who = Memo::new(move |_| {
        let (exam, today) = (exam.get()?, crate::edge::clock::today());
        story.with(|story| {
            let person = story.person(&story.exam(&exam)?.person())?;
            Some((
                words::name(person),
                words::whereabouts(person, today),
                words::person_path(&person.id()),
            ))
        })
    });
    let name = Signal::derive(move || {
        who.get()
            .map_or_else(|| say::no_such_exam().into(), |who| who.0)
    });
    let beside = Signal::derive(move || who.get().map(|who| who.1).unwrap_or_default());
    view! {
        <TopBar title=name beside=beside leads_to=Signal::derive(move || who.get().map(|who| who.2))>
            <a class="pill" id="to-story" href=move || who.get().map_or_else(|| "/".into(), |who| who.2)>{say::story()}</a>
        </TopBar>
        {move || match (exam.get(), who.get().is_some()) {
            (Some(exam), true) => view! { <ExamBody exam slug/> }.into_any(),
            _ => view! { <main class="page"><p>{say::holds_no_such_exam()} <a href="/">{say::go_rounds()}</a></p></main> }.into_any(),
        }}
    }
}

#[component]
fn ExamBody(exam: ExamId, slug: Memo<String>) -> impl IntoView {
    view! {
        <div class="exam">
            <SectionList exam slug/>
            {move || {
                let slug = slug.get();
                match SectionKind::from_slug(&slug) {
                    Some(kind) => view! { <SectionFrame exam kind/> }.into_any(),
                    None if slug == SIGN => view! { <SignPage exam/> }.into_any(),
                    None => view! { <main class="exam-middle"><p>{say::no_such_section()}</p></main> }.into_any(),
                }
            }}
        </div>
    }
}
