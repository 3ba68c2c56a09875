//! The files as another library reads them (`lopdf`).

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

mod read;
mod said;
mod tagged;
mod together;
mod written;

use papers::sample::{Desk, day};
use papers::{
    Document, InFrame, Letter, NoteOptions, Prescription, care_staff_note, fitting_sheet,
    lab_order, person_note, visit_summary,
};

/// Every paper of a full visit.
fn every(desk: &Desk) -> Vec<Document> {
    let (person, exam, on) = (desk.person(), desk.exam(), day(2026, 3, 7));
    let frame = InFrame {
        middles_mm: Some(68.0),
        compensate: true,
    };
    let note = NoteOptions::default();
    let letter = Letter::proposed(person, exam).unwrap();
    vec![
        Prescription::from_exam(person, exam, on)
            .unwrap()
            .document(),
        lab_order(person, exam, &[frame], on).unwrap(),
        letter.document(person, exam, on).unwrap(),
        person_note(person, exam, &note, on).unwrap(),
        care_staff_note(person, exam, &note, on).unwrap(),
        visit_summary(person, exam, on).unwrap(),
        fitting_sheet(person, exam, on).unwrap(),
    ]
}
