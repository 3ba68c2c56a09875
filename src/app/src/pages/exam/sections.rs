//! The sections down the side, each with its state.

use super::SIGN;
use crate::shell::app;
use crate::words;
use leptos::prelude::*;
use record::{ExamId, ExamState, SectionKind};

/// Where each section stands, and the way there.
#[component]
pub fn SectionList(
    /// The exam.
    exam: ExamId,
    /// The section that is open, as the address names it.
    slug: Memo<String>,
) -> impl IntoView {
    let links = SectionKind::ALL.map(|kind| view! { <SectionLink exam name=kind.title() to=kind.slug() slug state=state_of(exam, kind)/> });
    view! {
        <nav class="exam-side" aria-label="sections">
            {links.into_iter().collect_view()}
            <SectionLink exam name="Sign" to=SIGN slug state=signed(exam)/>
        </nav>
    }
}

#[component]
fn SectionLink(
    exam: ExamId,
    name: &'static str,
    to: &'static str,
    slug: Memo<String>,
    state: Signal<&'static str>,
) -> impl IntoView {
    let here = move || (slug.get() == to).then_some("page");
    view! {
        <a class="section-link" id=format!("to-{to}") href=words::exam_path(&exam, to) aria-current=here>
            <span>{name}</span>
            <span class="section-state">{state}</span>
        </a>
    }
}

/// What is known of a section, in a word.
fn state_of(exam: ExamId, kind: SectionKind) -> Signal<&'static str> {
    let door = app().door;
    Signal::derive(move || {
        if door.draft(exam, kind).is_some() {
            return "draft";
        }
        door.story().with(|story| {
            match story
                .exam(&exam)
                .map(|exam| exam.section(kind).versions().len())
            {
                None | Some(0) => "",
                Some(1) => "kept",
                Some(_) => "two versions",
            }
        })
    })
}

fn signed(exam: ExamId) -> Signal<&'static str> {
    let story = app().door.story();
    Signal::derive(move || {
        story.with(|story| match story.exam(&exam).map(record::Exam::state) {
            Some(ExamState::Signed) => "signed",
            Some(ExamState::Amended) => "amended",
            _ => "",
        })
    })
}
