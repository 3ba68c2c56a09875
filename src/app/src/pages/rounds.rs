//! The list that a day works through: readiness first, then people by room.

use super::keys::SheetDue;
use super::places::FoundPlaces;
use super::readiness::Readiness;
use super::round::AtHand;
use crate::session::Door;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::pages as say;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use record::find::Found;
use record::{ExamId, ExamState, Person, PersonId, PlaceId, Story};

/// So many people are drawn before somebody asks for more: as many as a large home has.
const AT_FIRST: usize = 60;
/// Of those who go with what is asked so far, the best: a letter more brings another up sooner than scrolling does.
const OF_FOUND: usize = 12;

/// One line of the list.
#[derive(Clone, PartialEq, Eq, Hash)]
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
            last: story.last_net(&person.id()).map_or_else(
                || words::NOTHING.into(),
                |net| words::number(&net.to_string()),
            ),
            exam: story
                .exams_of(&person.id())
                .into_iter()
                .find(|exam| !exam.is_from_elsewhere())
                .map(|exam| (exam.id(), exam.state())),
        }
    }
}

/// How many people are drawn at first.
fn at_first(asked: &str) -> usize {
    if asked.trim().is_empty() {
        AT_FIRST
    } else {
        OF_FOUND
    }
}

/// What goes with what is asked, the best first; everybody and no place where nothing is.
fn found(door: Door, everybody: Memo<Vec<PersonId>>, asked: &str) -> (Vec<PlaceId>, Vec<PersonId>) {
    if asked.trim().is_empty() {
        return (Vec::new(), everybody.get());
    }
    let (mut places, mut people) = (Vec::new(), Vec::new());
    for found in door.find(asked) {
        match found {
            Found::Place(place) => places.push(place),
            Found::Person(person) => people.push(person),
        }
    }
    (places, people)
}

/// Readiness, then everybody on this tablet.
#[component]
pub fn RoundsPage() -> impl IntoView {
    let story = app().door.story();
    let find = RwSignal::new(String::new());
    let most = RwSignal::new(AT_FIRST);
    let everybody = Memo::new(move |_| {
        story.with(|story| {
            story
                .people()
                .into_iter()
                .map(Person::id)
                .collect::<Vec<_>>()
        })
    });
    let door = app().door;
    let found = Memo::new(move |_| found(door, everybody, &find.get()));
    let places = Memo::new(move |_| found.with(|(places, _)| places.clone()));
    // Only who is drawn is worked out: there may be ten thousand.
    let rows = Memo::new(move |_| {
        let row = |story: &Story, person: &PersonId| Some(Row::of(story, story.person(person)?));
        found.with(|(_, people)| {
            let drawn = people.iter().take(most.get());
            story.with(|story| {
                drawn
                    .filter_map(|person| row(story, person))
                    .collect::<Vec<_>>()
            })
        })
    });
    let more = move || found.with(|(_, people)| people.len().saturating_sub(most.get()));
    let ask = move |asked: String| {
        most.set(at_first(&asked));
        find.set(asked);
    };
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
                    autocomplete="off" prop:value=find on:input:target=move |event| ask(event.target().value())/>
                <a class="act writes" id="new-person" href="/people/new">{say::new_person()}</a>
            </div>
            <FoundPlaces places/>
            <ul class="people" id="people">
                <For each=move || rows.get() key=Row::clone children=|row| view! { <PersonRow row/> }/>
            </ul>
            <Show when=move || more() != 0>
                <button class="pill" type="button" id="more-people" on:click=move |_| most.update(|most| *most += 10 * AT_FIRST)>
                    {move || say::show_more(&more())}
                </button>
            </Show>
            <Show when=move || found.with(|(places, people)| places.is_empty() && people.is_empty())>
                <p class="empty">{move || if everybody.with(Vec::is_empty) {
                    say::nobody_yet()
                } else {
                    say::nobody_so_called()
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
            <span class="person-last"><span class="soft">{say::last_time()}</span><span>{row.last}</span></span>
            <Action person exam=row.exam/>
        </li>
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
