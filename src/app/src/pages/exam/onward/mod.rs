//! What retinoscopy hands on: what sort of refraction is to come, the findings to look at, and the way to the subjective.

mod fog;
mod see;
mod start;

use super::sweeps::Desk;
use crate::shell::app;
use crate::words;
use fog::FogLine;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use optics::SphereCyl;
use record::{Age, ExamId, Eye, Retinoscopy, SectionKind};
use start::StartSubjective;

pub use see::SideBySide;

/// Below the result of the eye that is worked on.
#[component]
pub fn Onward(
    /// Which eye.
    eye: Eye,
    /// What stands now.
    desk: Desk,
) -> impl IntoView {
    let exam = exam_here();
    let (value, says) = (desk.value, desk.bracket(eye));
    let found = desk.beside(move || value.with(|section| section.eyes.of(eye).done().is_some()));
    let to_come = desk.beside(move || {
        let age = age_of(exam.get()?);
        says.with(|says| value.with(|section| section.to_come(eye, says, age)))
    });
    let beside = desk.beside(move || {
        let last = last_net(exam.get()?, eye);
        Some(says.with(|says| value.with(|section| section.side_by_side(eye, says, last))))
    });
    let beside = Signal::derive(move || beside.get().unwrap_or_default());
    view! {
        <Show when=move || found.get()>
            <div class="onward">
                {move || to_come.get().map(|to_come| view! { <p class="soft" id=format!("to-come-{}", eye.word())>{to_come.sentence()}</p> })}
                <SideBySide id=eye.word() eye beside/>
                <StartSubjective eye exam value/>
            </div>
        </Show>
    }
    .into_any()
}

/// In the card of the eye that waits: what to remember about it.
#[component]
pub fn Waiting(
    /// Which eye.
    eye: Eye,
    /// The eye being worked on.
    working: RwSignal<Eye>,
    /// What stands now.
    value: Signal<Retinoscopy>,
) -> impl IntoView {
    let exam = exam_here();
    let age = Memo::new(move |_| age_of(exam.get()?));
    view! { <Show when=move || working.get() != eye><FogLine eye value age/></Show> }
}

/// The exam that the address names.
fn exam_here() -> Memo<Option<ExamId>> {
    let params = use_params_map();
    Memo::new(move |_| params.with(|params| words::exam_id(&params.get("exam")?)))
}

fn age_of(exam: ExamId) -> Option<Age> {
    app().door.story().with(|story| {
        let person = story.person(&story.exam(&exam)?.person())?;
        person.details().age_on(crate::edge::clock::today())
    })
}

/// Last time's net.
fn last_net(exam: ExamId, eye: Eye) -> Option<SphereCyl> {
    app().door.story().with(|story| {
        let last = story.last_before(&exam, SectionKind::Retinoscopy)?;
        let record::Section::Retinoscopy(found) = last.version.value else {
            return None;
        };
        Some(found.net(eye)?.net)
    })
}
