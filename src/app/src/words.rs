//! How what is on record reads on the screen. No rule lives here: only order and wording.

use chrono::NaiveDate;
use record::{ExamId, Finding, Person, PersonId, Seen};
use uuid::Uuid;

/// Where there is nothing to show.
pub const NOTHING: &str = "\u{2014}";

/// "Wednesday 25 November".
pub fn long_date(date: NaiveDate) -> String {
    date.format("%A %-d %B").to_string()
}

/// "25 November 2026".
pub fn date(date: NaiveDate) -> String {
    date.format("%-d %B %Y").to_string()
}

/// "November 2026", as a heading for what was found then.
pub fn month(date: NaiveDate) -> String {
    date.format("%B %Y").to_string()
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
        format!("Room {}", details.room.trim())
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

/// What was read, as the chart labels it; or why not.
pub fn acuity_finding(finding: &Finding<Seen>) -> String {
    match finding.done() {
        Some(seen) => seen.to_string(),
        None => finding.why_not().unwrap_or_else(|| NOTHING.to_owned()),
    }
}
