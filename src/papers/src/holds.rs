//! What a file tells whoever gets it, in one sentence, to be read before it is made.

use crate::document::Document;
use crate::log::Column;
use ::words::papers::{documents as of, holds as say};
use record::Whole;

/// Facts of a paper's head that say who somebody is.
const NAMES_SOMEBODY: [fn() -> &'static str; 4] =
    [of::name, of::date_of_birth, of::age, of::number];

/// A paper.
pub fn paper(document: &Document) -> String {
    let labels = document.who.iter().map(|fact| fact.label.as_str());
    let told: Vec<&str> = labels
        .filter(|label| NAMES_SOMEBODY.iter().any(|named| named() == *label))
        .collect();
    say::holds_page(&listed(&told), &say::in_the_clear())
}

/// So many visits of the log under these columns.
pub fn log(visits: usize, columns: &[Column]) -> String {
    let personal = columns.iter().filter(|column| column.is_personal());
    let personal: Vec<&str> = personal.map(|column| column.said()).collect();
    let visits = say::visits(visits);
    if personal.is_empty() {
        say::holds_log_bare(&visits, &say::in_the_clear())
    } else {
        say::holds_log(&visits, &listed(&personal), &say::in_the_clear())
    }
}

/// So many exams as FHIR.
pub fn exams(exams: usize) -> String {
    say::holds_exams(&say::exams(exams), &say::in_the_clear())
}

/// Everything that is on record of one person, as a paper and as FHIR.
pub fn whole_record(whole: &Whole<'_>) -> String {
    let (name, exams) = (&whole.person.details().name, whole.exams.len());
    say::holds_whole_record(name, &say::exams(exams), &say::in_the_clear())
}

/// `name, age and room`.
fn listed(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first @ .., last] => say::and_last(&first.join(", "), &last),
    }
}
