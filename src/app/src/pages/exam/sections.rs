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
    // On a phone the sections lie in a row wider than the screen.
    Effect::new(move |_| bring_into_sight(&slug.get()));
    let turned = window_event_listener(leptos::ev::resize, move |_| {
        bring_into_sight(&slug.get_untracked())
    });
    on_cleanup(move || turned.remove());
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

/// Scrolls the row so that the link of the open section lies in its middle.
fn bring_into_sight(slug: &str) {
    use leptos::wasm_bindgen::JsCast;
    let link = document()
        .get_element_by_id(&format!("to-{slug}"))
        .and_then(|link| link.dyn_into::<leptos::web_sys::HtmlElement>().ok());
    if let Some((link, row)) = link.and_then(|link| Some((link.clone(), link.parent_element()?))) {
        row.set_scroll_left(link.offset_left() - (row.client_width() - link.offset_width()) / 2);
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
