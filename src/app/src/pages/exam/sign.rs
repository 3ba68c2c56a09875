//! Signing: what stands there, what is still open, and the signature.

use super::reading::SectionReading;
use super::second_look::{Answers, SecondLook, raised};
use crate::edge::clock::local;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use record::{ExamId, ExamState, Section, SectionKind};

/// The last page of an exam.
#[component]
pub fn SignPage(
    /// The exam.
    exam: ExamId,
) -> impl IntoView {
    let door = app().door;
    let story = door.story();
    let state = Memo::new(move |_| {
        story.with(|story| {
            story
                .exam(&exam)
                .map_or(ExamState::Open, record::Exam::state)
        })
    });
    view! {
        <main class="exam-middle">
            <h2 class="section-title">{say::sign()}</h2>
            <Kept exam/>
            <Open exam/>
            <SecondLook exam raised=raised(exam, None)/>
            <Answers exam/>
            <Signatures exam/>
        </main>
        <footer class="exam-foot">
            <p class="foot-said">{say::signing_says()}</p>
            {move || (state.get() != ExamState::Open).then(|| view! {
                <a class="act act-second" id="to-prescription" href=words::exam_path(&exam, "prescription")>{say::prescription()}</a>
            })}
            <a class="act act-second" id="to-papers" href=words::exam_path(&exam, crate::pages::papers::PAPERS)>{say::papers()}</a>
            <div class="writes"><SignButton exam state/></div>
        </footer>
    }
    .into_any()
}

/// Drafts are kept before the exam is signed, so that the signature covers what is on the screen.
#[component]
fn SignButton(exam: ExamId, state: Memo<ExamState>) -> impl IntoView {
    let door = app().door;
    let refused = RwSignal::new(None::<String>);
    let sign = move |_| {
        leptos::task::spawn_local(async move {
            refused.set(door.sign(exam).await.err());
        });
    };
    view! {
        <Show when=move || refused.get().is_some()>
            <p class="foot-said" role="alert"><span class="foot-refused" id="refused">{move || refused.get()}</span></p>
        </Show>
        <Show when=move || state.get() != ExamState::Signed>
            <button class="act" type="button" id="sign" on:click=sign>
                {move || if state.get() == ExamState::Amended { say::sign_again() } else { say::sign() }}
            </button>
        </Show>
    }
}

/// A section as it stands, a draft as it is; with whether it is one.
fn standing(exam: ExamId, kind: SectionKind) -> Option<(Section, bool)> {
    let door = app().door;
    if let Some(draft) = door.draft(exam, kind) {
        return Some((draft.section, true));
    }
    door.story().with(|story| {
        let latest = story.exam(&exam)?.section(kind).latest()?;
        Some((latest.value.clone(), false))
    })
}

/// Everything that stands in the exam, section by section, drafts as they are.
#[component]
fn Kept(exam: ExamId) -> impl IntoView {
    let written = SectionKind::ALL.map(|kind| {
        move || standing(exam, kind).map(|(section, drafted)| sheet(exam, section, drafted))
    });
    let blank = move || {
        let kinds = SectionKind::ALL.into_iter();
        let blank = kinds.filter(|kind| standing(exam, *kind).is_none());
        blank.map(|kind| view! { <a class="pill" href=words::exam_path(&exam, kind.slug())>{kind.title()}</a> }).collect_view()
    };
    view! {
        {written.into_iter().collect_view()}
        <section class="sheet none-written"><h3>{say::nothing_written_of()}</h3><div class="pills">{blank}</div></section>
    }
    .into_any()
}

fn sheet(exam: ExamId, section: Section, drafted: bool) -> AnyView {
    let kind = section.kind();
    view! {
        <section class="sheet">
            <div class="eye-head">
                <h3>{kind.title()}</h3>
                <a class="pill" href=words::exam_path(&exam, kind.slug())>{say::open()}</a>
            </div>
            {drafted.then(|| view! { <p class="soft">{say::draft_kept_on_signing()}</p> })}
            <SectionReading section/>
        </section>
    }
    .into_any()
}

/// What stands in the way of signing.
#[component]
fn Open(exam: ExamId) -> impl IntoView {
    let story = app().door.story();
    let missing = move || {
        story.with(|story| {
            story
                .exam(&exam)
                .map(record::Exam::ready_to_sign)
                .unwrap_or_default()
        })
    };
    let signed = move || story.with(|story| story.exam(&exam).is_some_and(record::Exam::is_signed));
    view! {
        <Show when=move || !signed() && !missing().is_empty()>
            <section class="notice" id="still-open">
                <div><p><b>{say::still_open()}</b></p><ul>{move || missing().into_iter().map(|sentence| view! { <li>{sentence}</li> }).collect_view()}</ul></div>
            </section>
        </Show>
    }
}

#[component]
fn Signatures(exam: ExamId) -> impl IntoView {
    let story = app().door.story();
    let signed = move || {
        story.with(|story| {
            let Some(exam) = story.exam(&exam) else {
                return Vec::new();
            };
            exam.signatures()
                .iter()
                .map(|signature| (signature.signer.to_owned(), local(signature.entry.stamp)))
                .collect()
        })
    };
    let amended = move || {
        story.with(|story| {
            let Some(exam) = story.exam(&exam) else {
                return Vec::new();
            };
            let amendments = exam.amendments();
            let said = amendments.iter().map(|amendment| {
                let when = words::moment(local(amendment.entry.stamp));
                say::amended_by(
                    &amendment.kind.title(),
                    &amendment.entry.author,
                    &when,
                    &amendment.reason,
                )
            });
            said.collect::<Vec<_>>()
        })
    };
    view! {
        <ul class="signatures" id="signatures">
            {move || signed().into_iter().map(|(signer, at)| view! { <li>{say::signed_by(&signer, &words::moment(at))}</li> }).collect_view()}
            {move || amended().into_iter().map(|said| view! { <li class="amendment">{said}</li> }).collect_view()}
        </ul>
    }
}
