//! The people of a round, each with how things stand and what can be done next.

use super::row::{Row, Stands, Whom, row};
use super::undo::Doing;
use crate::edge::clock::now_here;
use crate::pages::exam::SIGN;
use crate::pages::rounds::Action;
use crate::shell::app;
use crate::words;
use ::words::{Language, app::round as say, in_language};
use leptos::prelude::*;
use record::{ExamId, ExamState, OneOf, PersonId, Place, Round, RoundId, Story, Visit, VisitState};

/// Everybody on the round, in its order, under the headings of the place's units.
#[component]
pub fn Visits(
    /// The round.
    round: RoundId,
    /// Whether each row offers the marks.
    marks: bool,
) -> impl IntoView {
    let story = app().door.story();
    let parts = Memo::new(move |_| {
        story.with(|story| story.round(&round).map(|round| by_unit(story, round)))
    });
    let lists = move || {
        let parts = parts.get().unwrap_or_default();
        parts
            .into_iter()
            .map(move |(unit, people)| {
                let rows = people
                    .into_iter()
                    .map(move |person| view! { <VisitRow round person marks/> });
                view! {
                    {(!unit.is_empty()).then(|| view! { <h3 class="unit-name">{unit}</h3> })}
                    <ul class="people" data-part="visits">{rows.collect_view()}</ul>
                }
            })
            .collect_view()
    };
    let nobody = move || parts.with(|parts| parts.as_ref().is_some_and(Vec::is_empty));
    view! {
        <div class="visits" id=format!("visits-{round}")>{lists}</div>
        <Show when=nobody><p class="empty">{say::nobody_on_it()}</p></Show>
    }
    .into_any()
}

/// Runs of people whose rooms are of one unit, in the round's order.
fn by_unit(story: &Story, round: &Round) -> Vec<(String, Vec<PersonId>)> {
    let place = round
        .details()
        .place
        .and_then(|place| story.place(&place))
        .map(Place::details);
    let mut parts: Vec<(String, Vec<PersonId>)> = Vec::new();
    for person in story.people_of(round) {
        let at = place.and_then(|place| place.unit_of(&person.details().room));
        let unit = match (place, at) {
            (Some(place), Some(at)) => place.units[at].name.clone(),
            (Some(place), None) if !place.units.is_empty() => say::other_rooms().to_owned(),
            _ => String::new(),
        };
        match parts.last_mut() {
            Some((last, people)) if *last == unit => people.push(person.id()),
            _ => parts.push((unit, vec![person.id()])),
        }
    }
    parts
}

#[component]
fn VisitRow(round: RoundId, person: PersonId, marks: bool) -> impl IntoView {
    let row = row(round, person);
    let stands =
        Memo::new(move |_| row.with(|row| row.as_ref().map(|row| (row.stands.clone(), row.exam))));
    let slug = move || stands.with(|stands| stands.as_ref().map(|(stands, _)| stands.slug()));
    view! {
        <li class="person-row visit-row" id=format!("visit-{person}") data-standing=slug>
            <Whom person row/>
            <span class="visit-does">{move || stands.get().map(|(stands, exam)| view! { <Does round person stands exam/> })}</span>
            {marks.then(|| view! { <RowMarks round person row/> })}
        </li>
    }
    .into_any()
}

/// What was done, or what to do next.
#[component]
fn Does(
    round: RoundId,
    person: PersonId,
    stands: Stands,
    exam: Option<(ExamId, ExamState)>,
) -> impl IntoView {
    match stands {
        Stands::Seen(exam) => view! { <a class="pill row-act visit-state" href=words::exam_path(&exam, SIGN)>{say::signed()}</a> }.into_any(),
        Stands::ToSee | Stands::UnderWay => view! { <Action person exam/> }.into_any(),
        Stands::Marked(visit) => {
            let said = in_words(&visit);
            let knock = visit.state.knock_again().then(|| view! { <Action person exam/> });
            if !app().door.standing.writes() {
                return view! { <span class="visit-state">{said}</span> }.into_any();
            }
            let doing = Doing::here();
            let back = move |_| doing.mark(round, person, VisitState::ToSee);
            view! {
                <button type="button" class="pill row-act visit-state" id=format!("back-{person}") aria-label=say::take_back(&said) on:click=back>{said.clone()}</button>
                {knock}
            }
            .into_any()
        }
    }
}

/// "asleep 10:20", with its word where there is one.
fn in_words(visit: &Visit) -> String {
    let said = format!("{} {}", visit.state.in_words(), visit.at.format("%H:%M"));
    if visit.word.trim().is_empty() {
        said
    } else {
        format!("{said} \u{b7} {}", visit.word.trim())
    }
}

/// The marks of a row while it may still be marked, and a word on the one that was given.
#[component]
fn RowMarks(round: RoundId, person: PersonId, row: Memo<Option<Row>>) -> impl IntoView {
    let marked = Memo::new(move |_| {
        row.with(|row| match row.as_ref().map(|row| &row.stands) {
            Some(Stands::Marked(visit)) => Some(Some(visit.word.clone())),
            Some(Stands::Seen(_)) => None,
            _ => Some(None),
        })
    });
    let (doing, door) = (Doing::here(), app().door);
    let keep_word = move |word: String| {
        let visit = move |earlier: Option<&Visit>| Visit {
            word,
            ..earlier.cloned().unwrap_or_else(|| Visit {
                state: VisitState::ToSee,
                word: String::new(),
                at: now_here(),
            })
        };
        doing.run(door.mark_visit(round, person, visit));
    };
    move || {
        match marked.get() {
        Some(None) => view! { <Marks round person key=person.to_string()/> }.into_any(),
        Some(Some(word)) => view! {
            <input class="text-input visit-word writes" id=format!("word-{person}") aria-label=say::word() placeholder=say::word() autocomplete="off"
                prop:value=word on:change:target=move |event| keep_word(event.target().value())/>
        }
        .into_any(),
        None => ().into_any(),
    }
    }
}

/// Each mark in one tap. `key` ends their ids: who is next may stand in the list below as well.
#[component]
pub fn Marks(round: RoundId, person: PersonId, key: String) -> impl IntoView {
    let doing = Doing::here();
    let marks = VisitState::MARKS.map(|state| {
        let word = state.in_words();
        let name = in_language(Language::English, || state.in_words().replace(' ', "-"));
        let id = format!("mark-{name}-{key}");
        view! { <button type="button" class="pill" id=id on:click=move |_| doing.mark(round, person, state)>{word}</button> }
    });
    view! { <div class="pills visit-marks writes" role="group" aria-label=say::not_examined_because()>{marks.into_iter().collect_view()}</div> }
}
