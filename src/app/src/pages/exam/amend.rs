//! A signed exam's section: read only, until somebody amends it with a reason.

use super::reading::SectionReading;
use crate::session::REASON;
use crate::shell::app;
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
    let story = door.story();
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
                None => view! { <p class="soft">"Nothing was written down here."</p> }.into_any(),
            }}
            <p class="soft">"This exam is signed. A change is an amendment: it needs a reason, and what was signed stays readable."</p>
            <button class="pill" type="button" id="amend" on:click=amend>"Amend"</button>
        </section>
        <History exam kind/>
    }
    .into_any()
}

/// Every earlier version, for whoever asks what stood there before.
#[component]
fn History(exam: ExamId, kind: SectionKind) -> impl IntoView {
    let story = app().door.story();
    let versions = move || {
        story.with(|story| {
            let Some(exam) = story.exam(&exam) else {
                return Vec::new();
            };
            let mut versions: Vec<_> = exam
                .history(kind)
                .into_iter()
                .map(|version| {
                    let reason = match &version.entry.body {
                        record::Body::Section { reason, .. } => reason.clone(),
                        _ => None,
                    };
                    (
                        version.entry.author.clone(),
                        version.entry.stamp.wall_ms,
                        reason,
                        version.value.clone(),
                    )
                })
                .collect();
            versions.pop();
            versions.reverse();
            versions
        })
    };
    view! {
        <Show when=move || !versions().is_empty()>
            <section class="sheet" id="earlier-versions">
                <h3>"Before that"</h3>
                {move || versions().into_iter().map(|(author, wall_ms, reason, section)| view! {
                    <article class="version">
                        <p class="soft">{format!("{author}, {}", crate::edge::clock::said(wall_ms))}{reason.map(|reason| format!(": {reason}"))}</p>
                        <SectionReading section/>
                    </article>
                }).collect_view()}
            </section>
        </Show>
    }
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
            <TextField id="amend-why" label="why does it change?" hint="it stands beside the amendment for whoever reads it later" value=reason
                on_change=move |text: String| door.keep_typing(exam, kind, REASON, text)/>
            <button class="pill" type="button" id="amend-not" on:click=move |_| door.drop_draft(exam, kind)>"leave it as signed"</button>
        </section>
    }
}
