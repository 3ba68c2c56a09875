//! The list that a day works through: readiness first, then people by room.

mod people;

use super::keys::SheetDue;
use super::places::FoundPlaces;
use super::readiness::Readiness;
use super::round::AtHand;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::pages as say;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use people::{People, Search};
use record::{ExamId, ExamState, PersonId};

/// Readiness, then everybody on this tablet.
#[component]
pub fn RoundsPage() -> impl IntoView {
    let search = Search::new();
    view! {
        <TopBar title=say::rounds() beside=words::long_date(crate::edge::clock::today())>
            <a class="pill" id="to-sums" href="/sums">{say::sums()}</a>
            <a class="pill" id="to-log" href="/log">{say::log()}</a>
            <a class="pill" id="to-vault" href="/vault">{say::vault()}</a>
        </TopBar>
        <main class="page">
            <SheetDue/>
            <Readiness/>
            <AtHand/>
            <div class="find-row">
                <input id="find" class="text-input" type="search" aria-label=say::find_by() placeholder=say::find()
                    autocomplete="off" prop:value=search.asked on:input:target=move |event| search.ask(event.target().value())/>
                <a class="act writes" id="new-person" href="/people/new">{say::new_person()}</a>
            </div>
            <FoundPlaces places=search.places()/>
            <People search/>
        </main>
    }
}

/// The one thing to do next for a person: begin, go on, or look at what was signed.
#[component]
pub(super) fn Action(person: PersonId, exam: Option<(ExamId, ExamState)>) -> impl IntoView {
    match exam {
        Some((exam, ExamState::Open)) => {
            view! { <a class="act row-act" href=words::exam_path(&exam, super::exam::to_go_on(exam))>{say::go()}</a> }
                .into_any()
        }
        _ => view! { <Begin person/> }.into_any(),
    }
}

/// Begins an exam of a person and goes there.
#[component]
pub fn Begin(
    /// Who.
    person: PersonId,
) -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let trouble = RwSignal::new(None::<String>);
    // A second tap while the first is being kept must not begin a second exam.
    let beginning = RwSignal::new(false);
    let begin = move |_| {
        if beginning.get_untracked() {
            return;
        }
        beginning.set(true);
        let navigate = navigate.clone();
        leptos::task::spawn_local(async move {
            match door.open_exam(person).await {
                Ok(exam) => navigate(
                    &words::exam_path(&exam, super::exam::FIRST),
                    leptos_router::NavigateOptions::default(),
                ),
                Err(sentence) => {
                    trouble.set(Some(sentence));
                    beginning.set(false);
                }
            }
        });
    };
    view! {
        <button class="pill row-act writes" type="button" data-part="begin" on:click=begin>{say::begin()}</button>
        <Show when=move || trouble.get().is_some()><p class="field-error" role="alert">{move || trouble.get()}</p></Show>
    }
}
