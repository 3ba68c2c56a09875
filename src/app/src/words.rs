//! How what is on record reads on the screen. No rule lives here: only order and wording.

use crate::shell::App;
use ::words::app::shell as say;
use chrono::{NaiveDate, NaiveDateTime};
use leptos::prelude::*;
use leptos::reactive::graph::Observer;
use optics::SphereCyl;
use record::{ExamId, Finding, Manner, Person, PersonId, PlaceId, RoundId, Seen};
use uuid::Uuid;

/// Where there is nothing to show.
pub const NOTHING: &str = "\u{2014}";

/// How the reader writes days, figures and distances; follows every change. Outside a page, the usual manner.
pub fn manner() -> Manner {
    use_context::<App>()
        .map(|app| followed(app.manner))
        .unwrap_or_default()
}

/// What it is now; followed where something follows, as in a view, and not where nothing can, as where a page is begun.
pub fn followed<T: Clone + Send + Sync + 'static>(memo: Memo<T>) -> T {
    if Observer::get().is_some() {
        memo.get()
    } else {
        memo.get_untracked()
    }
}

/// "Wednesday 25 November".
pub fn long_date(date: NaiveDate) -> String {
    manner().weekday(date)
}

/// "25 November 2026".
pub fn date(date: NaiveDate) -> String {
    manner().date(date)
}

/// "November 2026", as a heading for what was found then.
pub fn month(date: NaiveDate) -> String {
    manner().month(date)
}

/// "25 November 2026, 14:05".
pub fn moment(at: NaiveDateTime) -> String {
    manner().moment(at)
}

/// Words as the reader writes their figures, days and distances.
pub fn number(words: &str) -> String {
    manner().in_words(words)
}

/// A size in dioptres, to two places: "1.49 D".
pub fn dioptres(size: f64) -> String {
    say::dioptres(&format_args!("{size:.2}"))
}

/// A chart's distance: "3 m", "9.8 ft".
pub fn far(metres: f64) -> String {
    let manner = manner();
    manner.decimal.in_words(&manner.far.said(metres))
}

/// A lens as results are written: with the reader's sign of the cylinder, and decimal mark.
pub fn lens(lens: &SphereCyl) -> String {
    let written = use_context::<App>().map(|app| followed(app.written));
    let lens = written.map_or(*lens, |sign| lens.with_cylinder(sign));
    number(&lens.to_string())
}

/// "Orla Pennyquick".
pub fn name(person: &Person) -> String {
    person.details().name.to_string()
}

/// "86 · Room 14 · Saltmarsh Court", leaving out what is not known.
pub fn whereabouts(person: &Person, today: NaiveDate) -> String {
    let details = person.details();
    let age = details
        .age_on(today)
        .map(|age| age.to_string())
        .unwrap_or_default();
    let room = if details.room.trim().is_empty() {
        String::new()
    } else {
        say::room(&details.room.trim())
    };
    let parts = [age, room, details.place.trim().to_owned()];
    parts
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" \u{b7} ")
}

/// The address of a person's story.
pub fn person_path(person: &PersonId) -> String {
    format!("/people/{person}")
}

/// The address of a section of an exam.
pub fn exam_path(exam: &ExamId, section: &str) -> String {
    format!("/exams/{exam}/{section}")
}

/// The person that an address names.
pub fn person_id(text: &str) -> Option<PersonId> {
    Uuid::parse_str(text).ok().map(PersonId::from_uuid)
}

/// The exam that an address names.
pub fn exam_id(text: &str) -> Option<ExamId> {
    Uuid::parse_str(text).ok().map(ExamId::from_uuid)
}

/// The address of a round.
pub fn round_path(round: &RoundId) -> String {
    format!("/rounds/{round}")
}

/// The address of a place.
pub fn place_path(place: &PlaceId) -> String {
    format!("/places/{place}")
}

/// The round that an address names.
pub fn round_id(text: &str) -> Option<RoundId> {
    Uuid::parse_str(text).ok().map(RoundId::from_uuid)
}

/// The place that an address names.
pub fn place_id(text: &str) -> Option<PlaceId> {
    Uuid::parse_str(text).ok().map(PlaceId::from_uuid)
}

/// What was read, as the chart labels it; or why not.
pub fn acuity_finding(finding: &Finding<Seen>) -> String {
    match finding.done() {
        Some(seen) => number(&seen.to_string()),
        None => finding.why_not().unwrap_or_else(|| NOTHING.to_owned()),
    }
}
