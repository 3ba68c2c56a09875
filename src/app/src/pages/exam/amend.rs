//! A signed exam's section: read only, until somebody amends it with a reason.

use super::reading::SectionReading;
use super::versions::{VersionList, count};
use crate::session::REASON;
use crate::shell::app;
use ::words::app::exam as say;
use leptos::prelude::*;
use record::{ExamId, Section, SectionKind};
use widgets::TextField;

/// What was signed, and the way to amend it.
#[component]
pub fn SignedSection(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let door = app().door;
    let (story, many) = (door.story(), count(exam, kind));
    let kept = Memo::new(move |_| {
        story.with(|story| Some(story.exam(&exam)?.section(kind).latest()?.value.clone()))
    });
    let amend = move |_| {
        door.keep_draft(
            exam,
            kept.get_untracked().unwrap_or_else(|| Section::empty(kind)),
        )
    };
    view! {
        <section class="sheet" id="signed-section">
            {move || match kept.get() {
                Some(section) => view! { <SectionReading section/> }.into_any(),
                None => view! { <p class="soft">{say::nothing_here()}</p> }.into_any(),
            }}
            <p class="soft">{say::signed_so_amend()}</p>
            <button class="pill writes" type="button" id="amend" on:click=amend>{say::amend()}</button>
        </section>
        <Show when=move || { many.get() > 1 }>
            <section class="sheet" id="earlier-versions">
                <h3>{say::versions()}</h3>
                <VersionList exam kind/>
            </section>
        </Show>
    }
    .into_any()
}

/// Asks why, while an amendment is being made, and offers to leave all as it was signed.
#[component]
pub fn AmendHead(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let door = app().door;
    let reason = Signal::derive(move || {
        door.draft(exam, kind)
            .and_then(|draft| draft.typing.get(REASON).cloned())
            .unwrap_or_default()
    });
    view! {
        <section class="sheet amend-head">
            <TextField id="amend-why" label=say::why_does_change() hint=say::amend_why_hint() value=reason
                on_change=move |text: String| door.keep_typing(exam, kind, REASON, text)/>
            <button class="pill" type="button" id="amend-not" on:click=move |_| door.drop_draft(exam, kind)>{say::leave_signed()}</button>
        </section>
    }
}
