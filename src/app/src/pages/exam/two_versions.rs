//! Versions of a section that were written on tablets that did not know of each other: all are shown, with what differs, and
//! one tap settles which holds.

use super::reading::SectionReading;
use super::versions::who_when;
use crate::edge::clock;
use crate::pages::differences::Differences;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use record::{EntryId, Exam, ExamId, Section, SectionKind, differences};

/// One of them.
#[derive(Clone, PartialEq)]
struct Head {
    id: EntryId,
    who: String,
    reason: Option<String>,
    section: Section,
}

/// Those that stand, oldest first; follows every change.
fn heads(exam: ExamId, kind: SectionKind) -> Memo<Vec<Head>> {
    let story = app().door.story();
    Memo::new(move |_| {
        let all = |exam: &Exam| {
            let standing = exam.standing(kind, &clock::local, words::manner().far);
            let heads = standing.iter().map(|written| Head {
                id: written.version.entry.id,
                who: who_when(written),
                reason: written.reason.map(str::to_owned),
                section: written.version.value.clone(),
            });
            heads.collect()
        };
        story.with(|story| story.exam(&exam).map_or_else(Vec::new, all))
    })
}

/// All of them side by side.
#[component]
pub fn TwoVersions(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let heads = heads(exam, kind);
    let refused = RwSignal::new(None::<String>);
    view! {
        <p class="notice" id="two-versions">{say::two_versions()}</p>
        <p class="foot-refused" id="settle-refused" role="alert">{move || refused.get()}</p>
        <div class="eyes versions-beside">
            {move || heads.get().into_iter().enumerate().map(|(at, head)| choose(exam, at, head, refused)).collect_view()}
        </div>
        <section class="sheet" id="what-differs">
            <h3>{say::what_differs()}</h3>
            {move || compared(&heads.get())}
        </section>
    }
    .into_any()
}

/// One version with its two ways: it holds as it is, or it is where the examiner goes on from.
fn choose(exam: ExamId, at: usize, head: Head, refused: RwSignal<Option<String>>) -> AnyView {
    let door = app().door;
    let (kind, chosen) = (head.section.kind(), head.id);
    let hold = move |_| {
        leptos::task::spawn_local(async move {
            refused.set(door.settle_section(exam, kind, chosen).await.err());
        });
    };
    let section = head.section.clone();
    let go_on = move |_| door.keep_draft(exam, section.clone());
    view! {
        <section class="sheet version-beside">
            <p class="soft">{head.who}</p>
            {head.reason.map(|reason| view! { <p>{say::because()}{reason}</p> })}
            <SectionReading section=head.section/>
            <button class="act" type="button" id=format!("hold-{at}") on:click=hold>{say::this_holds()}</button>
            <button class="pill" type="button" id=format!("go-on-{at}") on:click=go_on>{say::go_on_from_this()}</button>
        </section>
    }
    .into_any()
}

/// Each later one beside the first.
fn compared(heads: &[Head]) -> AnyView {
    let Some((first, others)) = heads.split_first() else {
        return ().into_any();
    };
    let far = words::manner().far;
    let lines = first.section.lines_in(far);
    let tables = others.iter().map(|other| {
        let lines = differences(&lines, &other.section.lines_in(far));
        view! { <Differences lines columns=[first.who.clone(), other.who.clone()]/> }
    });
    tables.collect_view().into_any()
}

/// While a draft is written and several versions stand: what keeping it would do.
#[component]
pub fn DraftAmongVersions(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let door = app().door;
    let settles = Memo::new(move |_| {
        let based_on = door.draft(exam, kind).map(|draft| draft.based_on);
        door.story().with(|story| {
            let exam = story.exam(&exam);
            exam.is_some_and(|exam| exam.would_settle(kind, &based_on.unwrap_or_default()))
        })
    });
    let words = move || {
        if settles.get() {
            say::several_versions_stand()
        } else {
            say::others_came()
        }
    };
    view! {
        <section class="notice" id="draft-among-versions">
            <div>
                <p>{words}</p>
                <button class="pill" type="button" id="look-at-versions" on:click=move |_| door.drop_draft(exam, kind)>{say::leave_draft()}</button>
            </div>
        </section>
    }
    .into_any()
}
