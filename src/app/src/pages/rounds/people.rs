//! The people on this tablet: everybody, or whoever goes with what is searched for.

use super::begin::Beginning;
use crate::shell::app;
use crate::words;
use ::words::app::pages as say;
use leptos::prelude::*;
use record::find::Found;
use record::{ExamId, ExamState, Person, PersonId, PlaceId, Story};

/// So many people are drawn before somebody asks for more: as many as a large home has.
const AT_FIRST: usize = 60;
/// Of those who go with what is asked so far, the best: a letter more brings another up sooner than scrolling does.
const OF_FOUND: usize = 8;
/// How many more are drawn where somebody asks for more.
const MORE: usize = 600;

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

/// What is searched for, and what goes with it.
#[derive(Clone, Copy)]
pub struct Search {
    /// As it is typed.
    pub asked: RwSignal<String>,
    /// Whether anything is.
    pub under_way: Memo<bool>,
    most: RwSignal<usize>,
    found: Memo<(Vec<PlaceId>, Vec<PersonId>)>,
}

impl Search {
    pub fn new() -> Self {
        let door = app().door;
        let asked = RwSignal::new(String::new());
        let under_way = Memo::new(move |_| asked.with(|asked| !asked.trim().is_empty()));
        let found = Memo::new(move |_| {
            let all = if under_way.get() {
                door.find(&asked.get())
            } else {
                Vec::new()
            };
            let (mut places, mut people) = (Vec::new(), Vec::new());
            for found in all {
                match found {
                    Found::Place(place) => places.push(place),
                    Found::Person(person) => people.push(person),
                }
            }
            (places, people)
        });
        Self {
            asked,
            under_way,
            most: RwSignal::new(OF_FOUND),
            found,
        }
    }

    /// Takes what was typed.
    pub fn ask(self, typed: String) {
        self.most.set(OF_FOUND);
        self.asked.set(typed);
    }

    /// The places, the best first.
    pub fn places(self) -> Memo<Vec<PlaceId>> {
        let found = self.found;
        Memo::new(move |_| found.with(|(places, _)| places.clone()))
    }
}

/// Everybody, until something is searched for; then whoever goes with it. Everybody's rows are only hidden meanwhile: to take
/// sixty away and make them anew costs a letter more than finding does.
#[component]
pub fn People(search: Search) -> impl IntoView {
    let story = app().door.story();
    let everybody = Memo::new(move |_| {
        story.with(|story| {
            story
                .people()
                .into_iter()
                .map(Person::id)
                .collect::<Vec<_>>()
        })
    });
    let found = Memo::new(move |_| search.found.with(|(_, people)| people.clone()));
    let most = RwSignal::new(AT_FIRST);
    let under_way = search.under_way;
    let nobody = move || {
        if under_way.get() {
            search
                .found
                .with(|(places, people)| places.is_empty() && people.is_empty())
                .then(say::nobody_so_called)
        } else {
            everybody.with(Vec::is_empty).then(say::nobody_yet)
        }
    };
    view! {
        <Show when=move || nobody().is_some()><p class="empty">{nobody}</p></Show>
        <div hidden=move || under_way.get()><Rows id="people" more="more-people" people=everybody most/></div>
        <div class="found" hidden=move || !under_way.get()><Rows id="found-people" more="more-found" people=found most=search.most/></div>
    }
}

/// The first of some people, and the way to see more of them.
#[component]
fn Rows(
    id: &'static str,
    more: &'static str,
    people: Memo<Vec<PersonId>>,
    most: RwSignal<usize>,
) -> impl IntoView {
    let (story, beginning) = (app().door.story(), Beginning::new());
    // Only who is drawn is worked out: there may be ten thousand.
    let rows = Memo::new(move |_| {
        let row = |story: &Story, person: &PersonId| Some(Row::of(story, story.person(person)?));
        people.with(|people| {
            let drawn = people.iter().take(most.get());
            story.with(|story| {
                drawn
                    .filter_map(|person| row(story, person))
                    .collect::<Vec<_>>()
            })
        })
    });
    let left = move || people.with(|people| people.len().saturating_sub(most.get()));
    view! {
        <ul class="people" id=id>
            <For each=move || rows.get() key=Row::clone children=move |row| person_row(row, beginning)/>
        </ul>
        <Show when=move || left() != 0>
            <button class="pill" type="button" id=more on:click=move |_| most.update(|most| *most += MORE)>
                {move || say::show_more(&left())}
            </button>
        </Show>
    }
}

/// One of them. No component: a letter typed draws eight.
fn person_row(row: Row, beginning: Beginning) -> impl IntoView {
    let person = row.person;
    view! {
        <li class="person-row">
            <span class="person-room">{row.room}</span>
            <a class="person-who" href=words::person_path(&person)><b>{row.name}</b><span class="soft">{row.note}</span></a>
            <span class="person-last"><span class="soft">{say::last_time()}</span><span>{row.last}</span></span>
            {beginning.action(person, row.exam)}
        </li>
    }
}
