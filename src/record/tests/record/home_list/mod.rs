//! The list that a home sends: read, guessed, judged, taken; and whatever bytes come, no panic.

mod any;
mod columns;
mod dates;
mod judged;
mod table;
mod taken;

use record::home_list::{Fault, Judged, Listed, Mapping, Table, judge};
use record::{PersonId, Story};

use crate::desk::day;

pub const HOME: &str = "Saltmarsh Court";

pub fn table(text: &str) -> Table {
    Table::read(text.as_bytes()).unwrap()
}

pub fn judged(text: &str, story: &Story) -> Vec<Judged> {
    let table = table(text);
    judge(
        &table,
        &Mapping::guess(&table),
        story,
        HOME,
        day(2026, 3, 4),
    )
}

pub fn good(judged: Vec<Judged>) -> Vec<Listed> {
    judged
        .into_iter()
        .filter_map(|each| each.verdict.ok())
        .collect()
}

pub fn faults(judged: &[Judged]) -> Vec<String> {
    let bad = judged.iter().filter_map(|each| each.verdict.as_ref().err());
    bad.flatten().map(Fault::to_string).collect()
}

pub fn counting(from: u128) -> impl FnMut() -> PersonId {
    let mut next = from;
    move || {
        next += 1;
        PersonId::from_uuid(uuid::Uuid::from_u128(next))
    }
}
