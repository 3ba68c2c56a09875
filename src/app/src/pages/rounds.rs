//! The list that a day works through: readiness first, then people by room.

use super::readiness::Readiness;
use crate::shell::{TopBar, app};
use crate::words;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use record::{ExamId, ExamState, Person, PersonId, Story};

/// One line of the list.
#[derive(Clone, PartialEq)]
struct Row {
    person: PersonId,
    room: String,
    name: String,
    note: String,
    last: String,
    exam: Option<(ExamId, ExamState)>,
}

impl Row {
    fn of(story: &Story, person: &Person) -> Self {
        let details = person.details();
        let age = details.age_on(crate::edge::clock::today());
        Self {
            person: person.id(),
            room: details.room.clone(),
            name: age.map_or_else(
                || words::name(person),
                |age| format!("{}, {age}", words::name(person)),
            ),
            note: [&details.place, &details.note]
                .into_iter()
                .filter(|text| !text.trim().is_empty())
                .cloned()
                .collect::<Vec<_>>()
                .join(" \u{b7} "),
            last: story
                .last_net(&person.id())
                .map_or_else(|| words::NOTHING.into(), |net| net.to_string()),
            exam: story
                .exams_of(&person.id())
                .first()
                .map(|exam| (exam.id(), exam.state())),
        }
    }

    fn matches(&self, wanted: &str) -> bool {
        [&self.name, &self.room, &self.note]
            .into_iter()
            .any(|text| text.to_lowercase().contains(wanted))
    }
}

/// Readiness, then everybody on this tablet.
#[component]
pub fn RoundsPage() -> impl IntoView {
    let story = app().door.story();
    let find = RwSignal::new(String::new());
    let all = Memo::new(move |_| {
        story.with(|story| {
            story
                .people()
                .into_iter()
                .map(|person| Row::of(story, person))
                .collect::<Vec<_>>()
        })
    });
    let rows = Memo::new(move |_| {
        let wanted = find.get().trim().to_lowercase();
        all.with(|all| {
            all.iter()
                .filter(|row| row.matches(&wanted))
                .cloned()
                .collect::<Vec<_>>()
        })
    });
    view! {
        <TopBar title="Rounds" beside=words::long_date(crate::edge::clock::today())>
            <a class="pill" id="to-sums" href="/sums">"Sums"</a>
            <a class="pill" id="to-vault" href="/vault">"Vault"</a>
        </TopBar>
        <main class="page">
            <Readiness/>
            <div class="find-row">
                <input id="find" class="text-input" type="search" aria-label="find by name, room or place" placeholder="find by name, room or place"
                    autocomplete="off" prop:value=find on:input:target=move |event| find.set(event.target().value())/>
                <a class="act" id="new-person" href="/people/new">"New person"</a>
            </div>
            <ul class="people" id="people">
                {move || rows.get().into_iter().map(|row| view! { <PersonRow row/> }).collect_view()}
            </ul>
            <Show when=move || rows.with(Vec::is_empty)>
                <p class="empty">{move || if all.with(Vec::is_empty) {
                    "Nobody is written down on this tablet yet. Begin with \u{201c}New person\u{201d}."
                } else {
                    "Nobody here goes by that."
                }}</p>
            </Show>
        </main>
    }
}

#[component]
fn PersonRow(row: Row) -> impl IntoView {
    let person = row.person;
    view! {
        <li class="person-row">
            <span class="person-room">{row.room}</span>
            <a class="person-who" href=words::person_path(&person)><b>{row.name}</b><span class="soft">{row.note}</span></a>
            <span class="person-last"><span class="soft">"last time"</span><span>{row.last}</span></span>
            <Action person exam=row.exam/>
        </li>
    }
}

/// The one thing to do next for a person: begin, go on, or look at what was signed.
#[component]
fn Action(person: PersonId, exam: Option<(ExamId, ExamState)>) -> impl IntoView {
    match exam {
        Some((exam, ExamState::Open)) => {
            view! { <a class="act row-act" href=words::exam_path(&exam, super::exam::to_go_on(exam))>"Go on"</a> }
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
        <button class="pill row-act" type="button" data-part="begin" on:click=begin>"Begin"</button>
        <Show when=move || trouble.get().is_some()><p class="field-error" role="alert">{move || trouble.get()}</p></Show>
    }
}
