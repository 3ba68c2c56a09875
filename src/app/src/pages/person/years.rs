//! Over the years: the strip, what stands in the picked exam, and the same as tables.

use crate::edge::clock;
use crate::shell::app;
use crate::words;
use ::words::app::person as say;
use leptos::prelude::*;
use record::{
    Event, Eye, Followed, Happened, Measure, Noted, Obtained, PersonId, Stands, StorySoFar,
    in_years,
};
use std::sync::Arc;
use widgets::strip::{Lane, Place, Spot};
use widgets::{Column, Disclosure, EventMark, EventSign, Flag, Shown, Strip};

/// A person's story so far; follows every change.
pub fn so_far(person: Memo<Option<PersonId>>) -> Memo<StorySoFar> {
    let story = app().door.story();
    Memo::new(move |_| {
        let person = person.get();
        story.with(|story| {
            let told = person.map(|person| story.story_so_far(&person, &clock::local));
            told.unwrap_or_default()
        })
    })
}

/// The strip of years. Nothing is drawn where no exam found anything that can be followed.
#[component]
pub fn OverTheYears(
    /// The story.
    so_far: Memo<StorySoFar>,
) -> impl IntoView {
    let some = Memo::new(move |_| so_far.with(|told| !told.followed.is_empty()));
    view! { <Show when=move || some.get()><Years so_far/></Show> }
}

#[component]
fn Years(so_far: Memo<StorySoFar>) -> impl IntoView {
    let shown = Signal::derive(move || so_far.with(shown));
    let newest = move || so_far.with(|told| told.exams.len().saturating_sub(1));
    let walked = RwSignal::new(None::<usize>);
    let picked = Signal::derive(move || walked.get().unwrap_or(newest()).min(newest()));
    let kinds = move || so_far.with(|told| kinds(&told.events));
    view! {
        <section class="sheet" id="over-the-years">
            <h2>{say::over_years()}</h2>
            <Strip id="strip" label=say::strip() shown picked on_pick=move |at| walked.set(Some(at))/>
            <Picked so_far picked/>
            <ul class="event-keys">
                {move || kinds().into_iter().map(|kind| view! { <li><EventMark sign=sign(kind)/><span>{kind.words()}</span></li> }).collect_view()}
            </ul>
            <Disclosure id="years-table" summary=say::same_tables()>
                {move || so_far.with(|told| told.followed.iter().map(|followed| table(told, followed)).collect_view())}
            </Disclosure>
        </section>
    }
    .into_any()
}

/// The picked exam's day, what happened then, and how each value was obtained.
#[component]
fn Picked(so_far: Memo<StorySoFar>, picked: Signal<usize>) -> impl IntoView {
    let exam = move || so_far.with(|told| told.exams.get(picked.get()).copied());
    let events = move || {
        let Some((exam, _)) = exam() else {
            return Vec::new();
        };
        so_far.with(|told| {
            let events = told.events.iter().filter(|event| event.exam == exam);
            events.cloned().collect()
        })
    };
    view! {
        <div class="strip-picked" id="strip-picked">
            <h3>{move || exam().map(|(_, on)| words::date(on))}</h3>
            <ul class="events">{move || events().iter().map(happened).collect_view()}</ul>
            <dl class="strip-how">
                {move || so_far.with(|told| told.obtained(picked.get()).into_iter().map(how).collect_view())}
            </dl>
        </div>
    }
    .into_any()
}

/// How something was obtained, of each eye where it was.
fn how(obtained: Obtained) -> impl IntoView {
    let said = obtained.how.each().map(|(eye, how)| {
        let said = words::number(&format!("{}: {how}", eye.word()));
        (!how.is_empty()).then(|| view! { <dd>{said}</dd> })
    });
    view! { <div><dt>{obtained.of}</dt>{said.into_iter().collect_view()}</div> }
}

/// One event with its sign.
pub fn happened(event: &Event) -> AnyView {
    view! { <li class="event"><EventMark sign=sign(event.what)/><span>{event.words.clone()}</span></li> }.into_any()
}

/// What happened at all, each once.
fn kinds(events: &[Event]) -> Vec<Happened> {
    let there = |kind: &Happened| events.iter().any(|event| event.what == *kind);
    Happened::ALL.into_iter().filter(there).collect()
}

fn sign(what: Happened) -> EventSign {
    match what {
        Happened::Prescribed => EventSign::Glasses,
        Happened::Fitted => EventSign::Worn,
        Happened::Referred => EventSign::Sent,
        Happened::Drops => EventSign::Drop,
        Happened::Cataract => EventSign::Clouded,
        Happened::Implant => EventSign::Implant,
        Happened::Amended => EventSign::Changed,
    }
}

fn shown(told: &StorySoFar) -> Shown {
    let columns = told.exams.iter().map(|(_, on)| Column {
        day: in_years(*on),
        words: words::date(*on),
    });
    let flags = told.events.iter().map(|event| Flag {
        day: in_years(event.on),
        sign: sign(event.what),
        words: event.words.clone(),
    });
    Shown {
        columns: columns.collect(),
        lanes: told.followed.iter().map(lane).collect(),
        flags: flags.collect(),
    }
}

fn lane(followed: &Followed) -> Lane {
    let measure = followed.measure.clone();
    let eyes = Eye::BOTH.map(|eye| {
        let points = followed.points.iter();
        points.map(|eyes| spot(eyes.of(eye))).collect()
    });
    Lane {
        name: measure.slug(),
        title: titled(&measure),
        least: measure.least_stretch(),
        grows_downwards: measure.grows_downwards(),
        figure: Arc::new(move |value| words::number(&measure.written(value))),
        eyes,
    }
}

/// "acuity, the best read, logMAR, better is up".
fn titled(measure: &Measure) -> String {
    let unit = match measure.unit() {
        "" => String::new(),
        unit => format!(", {unit}"),
    };
    let up = if measure.grows_downwards() {
        say::better_is_up()
    } else {
        ""
    };
    format!("{}{unit}{up}", measure.title())
}

fn spot(point: &Noted) -> Spot {
    Spot {
        place: match point.stands {
            Stands::Number(value) => Place::At(value),
            Stands::Beyond => Place::Beyond,
            Stands::Missing => Place::Gap,
        },
        words: words::number(&point.words),
    }
}

/// One measure as a table, newest first.
fn table(told: &StorySoFar, followed: &Followed) -> AnyView {
    let rows = told.exams.iter().zip(&followed.points).rev();
    let rows = rows.map(|((_, on), eyes)| {
        let cells = eyes.each().map(|(_, point)| cell(point));
        view! { <tr><th scope="row">{words::date(*on)}</th>{cells.into_iter().collect_view()}</tr> }
    });
    view! {
        <table class="reading">
            <caption>{followed.measure.title()}</caption>
            <thead><tr><td></td><th scope="col">{say::right()}</th><th scope="col">{say::left()}</th></tr></thead>
            <tbody>{rows.collect_view()}</tbody>
        </table>
    }
    .into_any()
}

fn cell(point: &Noted) -> impl IntoView + use<> {
    let what = match point.words.as_str() {
        "" => words::NOTHING.to_owned(),
        said => words::number(said),
    };
    let how = (!point.how.is_empty())
        .then(|| view! { <br/><span class="soft">{words::number(&point.how)}</span> });
    view! { <td>{what}{how}</td> }
}
