//! The sections down the side, each with its state.

use super::SIGN;
use super::foot::next;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use record::{ExamId, ExamState, SectionKind};
use widgets::Sheet;

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
    // On a phone any of them is one tap behind the button that says how many are done.
    let open = RwSignal::new(false);
    Effect::new(move |_| {
        slug.track();
        open.set(false);
    });
    let states = states(exam);
    let count =
        move || states.with(|states| states.iter().filter(|state| !state.is_empty()).count());
    let done = move || say::begun_of(&count(), &SectionKind::ALL.len());
    view! {
        <nav class="exam-side" aria-label=say::sections()>
            <button type="button" class="pill all-sections" id="all-sections" aria-label=move || say::all_sections_begun(&done())
                on:click=move |_| open.set(true)>{done}</button>
            <div class="exam-links">{links(exam, slug, states, "to")}</div>
            <Sheet id="sections-sheet" title=say::sections_title() open=open on_close=move |()| open.set(false)>
                <div class="section-grid">{links(exam, slug, states, "all")}</div>
            </Sheet>
        </nav>
    }
}

/// A link to each section and to the signature; their ids begin with this word.
fn links(
    exam: ExamId,
    slug: Memo<String>,
    states: RwSignal<States>,
    word: &'static str,
) -> AnyView {
    let links = SectionKind::ALL.into_iter().enumerate().map(|(at, kind)| {
        let state = Signal::derive(move || states.with(|states| states[at]));
        view! { <SectionLink exam name=kind.title() to=kind.slug() slug state word/> }
    });
    view! {
        {links.collect_view()}
        <SectionLink exam name=say::sign() to=SIGN slug state=signed(exam) word/>
    }
    .into_any()
}

#[component]
fn SectionLink(
    exam: ExamId,
    name: &'static str,
    to: &'static str,
    slug: Memo<String>,
    state: Signal<&'static str>,
    word: &'static str,
) -> impl IntoView {
    let here = move || (slug.get() == to).then_some("page");
    view! {
        <a class="section-link" id=format!("{word}-{to}") href=words::exam_path(&exam, to) aria-current=here>
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

/// Where an exam is begun.
pub const FIRST: &str = SectionKind::ALL[0].slug();

/// Where it is gone on with: after the last section that was begun.
pub fn to_go_on(exam: ExamId) -> &'static str {
    let mut begun = SectionKind::ALL.into_iter().rev();
    let last = untrack(|| begun.find(|kind| !state(exam, *kind).is_empty()));
    last.map_or(FIRST, |kind| next(kind).1)
}

/// What is known of each section, in a word.
type States = [&'static str; SectionKind::ALL.len()];

/// All of them. Two links for every section follow these: they are told only when a state has changed, not at every change of
/// a draft.
fn states(exam: ExamId) -> RwSignal<States> {
    let now = move || SectionKind::ALL.map(|kind| state(exam, kind));
    let told = RwSignal::new(untrack(now));
    Effect::new(move |_| {
        let now = now();
        if told.with_untracked(|told| *told != now) {
            told.set(now);
        }
    });
    told
}

/// What is known of a section, in a word; nothing where it was not begun.
fn state(exam: ExamId, kind: SectionKind) -> &'static str {
    let door = app().door;
    if door.draft(exam, kind).is_some() {
        return say::draft();
    }
    door.story().with(|story| {
        let exam = story.exam(&exam);
        match exam.map(|exam| exam.section(kind).versions().len()) {
            None | Some(0) => "",
            Some(1) => say::kept(),
            Some(_) => say::two_versions_short(),
        }
    })
}

fn signed(exam: ExamId) -> Signal<&'static str> {
    let story = app().door.story();
    Signal::derive(move || {
        story.with(|story| match story.exam(&exam).map(record::Exam::state) {
            Some(ExamState::Signed) => say::signed(),
            Some(ExamState::Amended) => say::amended(),
            _ => "",
        })
    })
}
