//! The foot of a section: what is kept, what is amiss, and the way on.

use super::SIGN;
use super::second_look::ToSecondLook;
use crate::session::Keeping;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use record::{ExamId, Raised, SectionKind};

/// The section after this one, as title and address word. What is written after signing is not on the way to it.
pub(super) fn next(kind: SectionKind) -> (&'static str, &'static str) {
    let after = SectionKind::ALL
        .into_iter()
        .skip_while(|other| *other != kind)
        .nth(1)
        .filter(|after| !after.follows_signing());
    after.map_or((say::sign(), SIGN), |kind| (kind.title(), kind.slug()))
}

/// The strip at the foot.
#[component]
pub fn Foot(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
    /// Whether the exam is signed.
    signed: Memo<bool>,
    /// Whether the section is being filled in.
    drafted: Memo<bool>,
    /// What is asked of the section.
    raised: Signal<Vec<Raised>>,
) -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let refused = RwSignal::new(None::<String>);
    let amending = move || signed.get() && drafted.get() && !kind.follows_signing();
    let (title, slug) = next(kind);
    let go = Callback::new(move |()| {
        let navigate = navigate.clone();
        leptos::task::spawn_local(async move {
            let amended = signed.get_untracked() && !kind.follows_signing();
            match door.commit_draft(exam, kind).await {
                Err(sentence) => refused.set(Some(sentence)),
                Ok(true) if amended => refused.set(None),
                Ok(_) => navigate(
                    &words::exam_path(&exam, slug),
                    leptos_router::NavigateOptions::default(),
                ),
            }
        });
    });
    view! {
        <footer class="exam-foot">
            <p class="foot-said" id="foot-said" role="status">
                {move || refused.get().map(|sentence| view! { <span class="foot-refused" id="refused">{sentence}</span> })}
            </p>
            <Show when=move || !signed.get() || drafted.get()><ToSecondLook raised/></Show>
            <span class="foot-kept" id="kept" data-keeping=move || door.keeping.get().slug()>
                <span class="in-place">{move || kept_words(door.keeping.get(), drafted.get())}</span>
            </span>
            <button class="act" type="button" id="next" on:click=move |_| go.run(())>
                {move || if amending() { say::keep_amendment().to_owned() } else { format!("{title} \u{2192}") }}
            </button>
        </footer>
    }
}

fn kept_words(keeping: Keeping, drafted: bool) -> String {
    match keeping {
        Keeping::Kept if drafted => say::kept_you_type().into(),
        Keeping::Kept => String::new(),
        Keeping::Underway => say::keeping().into(),
        Keeping::Trouble(sentence) => sentence,
    }
}
