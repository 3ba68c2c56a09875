//! Earlier findings from a file: read as they are written, judged, taken; and whatever bytes come, no panic.

mod any;
mod judged;
mod saved;
mod written;

use record::earlier_list::{Earlier, Fault, Judged, Mapping, Table, judge};
use record::{Born, Identifier, PersonDetails, PersonId, Story};
use uuid::Uuid;

use crate::desk::{Desk, day, details};

pub const ORLA: PersonId = PersonId::from_uuid(Uuid::from_u128(71));
pub const AMBROSE: PersonId = PersonId::from_uuid(Uuid::from_u128(72));

/// Two people on record, with numbers and dates of birth.
pub fn desk() -> Desk {
    let mut desk = Desk::new(7);
    let known = |given, family, number: &str, born| PersonDetails {
        born: Some(Born::Date(born)),
        identifiers: vec![Identifier {
            number: number.into(),
            issuer: String::new(),
        }],
        ..details(given, family)
    };
    let orla = known("Orla", "Pennyquick", "12", day(1940, 1, 31));
    desk.write(desk.story.put_person(ORLA, orla));
    let ambrose = known("Ambrose", "Tidewell", "13", day(1933, 2, 4));
    desk.write(desk.story.put_person(AMBROSE, ambrose));
    desk
}

pub fn table(text: &str) -> Table {
    Table::read(text.as_bytes()).unwrap()
}

pub fn judged(text: &str, story: &Story) -> Vec<Judged> {
    let table = table(text);
    judge(&table, &Mapping::guess(&table), story, day(2026, 3, 4))
}

/// The one row of a file, for Orla on a day, with these columns more.
pub fn one(headings: &str, cells: &str) -> Result<Earlier, Vec<String>> {
    let text = format!("Number;Exam date;{headings}\n12;04/03/2025;{cells}\n");
    let mut judged = judged(&text, &desk().story);
    assert_eq!(judged.len(), 1);
    let verdict = judged.remove(0).verdict;
    verdict.map_err(|faults| faults.iter().map(Fault::to_string).collect())
}
