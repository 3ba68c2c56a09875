//! Two versions of a section, written on two tablets that did not know of each other: both are shown, one is chosen.

use super::reading::SectionReading;
use crate::shell::app;
use leptos::prelude::*;
use record::{ExamId, Section, SectionKind};

/// Both versions side by side.
#[component]
pub fn TwoVersions(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let door = app().door;
    let story = door.story();
    let versions = move || {
        story.with(|story| {
            let Some(exam) = story.exam(&exam) else {
                return Vec::new();
            };
            let heads = exam.section(kind);
            heads
                .versions()
                .iter()
                .map(|version| {
                    (
                        version.entry.author.clone(),
                        version.entry.stamp.wall_ms,
                        version.value.clone(),
                    )
                })
                .collect()
        })
    };
    let take = move |section: Section| door.keep_draft(exam, section);
    view! {
        <p class="notice">"Two tablets wrote this section without knowing of each other. Both are kept: which one holds?"</p>
        <div class="eyes">
            {move || versions().into_iter().enumerate().map(|(at, (author, wall_ms, section))| {
                let chosen = section.clone();
                view! {
                    <section class="sheet">
                        <p class="soft">{format!("{author}, {}", crate::edge::clock::said(wall_ms))}</p>
                        <SectionReading section/>
                        <button class="pill" type="button" id=format!("take-{at}") on:click=move |_| take(chosen.clone())>"go on from this one"</button>
                    </section>
                }
            }).collect_view()}
        </div>
    }
    .into_any()
}
