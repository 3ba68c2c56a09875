//! One tap carries what retinoscopy found to the subjective, the working distance dealt with.

use super::super::frame::fresh;
use crate::session::Door;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use leptos_router::NavigateOptions;
use leptos_router::hooks::use_navigate;
use record::{ExamId, Eye, Retinoscopy, Section, SectionKind, Subjective};

const KIND: SectionKind = SectionKind::Subjective;

/// Starts both eyes that have no lens yet, and goes there.
#[component]
pub fn StartSubjective(
    /// The eye in whose card it stands.
    eye: Eye,
    /// The exam.
    exam: Memo<Option<ExamId>>,
    /// What retinoscopy found.
    value: Signal<Retinoscopy>,
) -> impl IntoView {
    let (door, habits, navigate) = (app().door, app().habits, use_navigate());
    let start = move |_| {
        let Some(exam) = exam.get_untracked() else {
            return;
        };
        let now = standing(door, exam).unwrap_or_else(|| fresh(KIND, habits.get_untracked()));
        if let Section::Subjective(now) = now {
            let mut next: Subjective = now.clone();
            value.with_untracked(|found| next.start_from(found));
            if next != now {
                door.keep_draft(exam, Section::Subjective(next));
            }
        }
        navigate(
            &words::exam_path(&exam, KIND.slug()),
            NavigateOptions::default(),
        );
    };
    view! {
        <button class="pill" type="button" id=format!("start-subjective-{}", eye.word()) on:click=start>{say::start_subjective()}</button>
    }
}

/// The subjective as it stands: half-typed, or kept.
fn standing(door: Door, exam: ExamId) -> Option<Section> {
    let drafted = untrack(|| door.draft(exam, KIND)).map(|draft| draft.section);
    let kept = || {
        door.story()
            .with_untracked(|story| Some(story.exam(&exam)?.section(KIND).latest()?.value.clone()))
    };
    drafted.or_else(kept)
}
