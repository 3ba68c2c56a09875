//! What goes to the worker that makes files comes back whole from the bytes that it goes as. Held against itself: the bytes have
//! no reader but this version of the app.

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

use ciborium::Value;
use papers::log::{Column, Filter, visits};
use papers::sample::{Desk, EXAM, day};
use papers::{PaperKind, Wording};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_bytes::ByteBuf;
use workers::{Earlier, Job, Log, Made, PaperSize, Taken};

/// Out and in again, as the messages go.
fn carried<T: Serialize + DeserializeOwned>(value: &T) -> T {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).unwrap();
    let value: Value = ciborium::from_reader(bytes.as_slice()).unwrap();
    value.deserialized().unwrap()
}

#[test]
fn every_paper_comes_whole() {
    let desk = Desk::full();
    for kind in PaperKind::ALL {
        let made = kind.document(
            desk.person(),
            desk.exam(),
            &Wording::default(),
            day(2026, 3, 7),
        );
        let document = made.unwrap();
        let job = Job::Pdf {
            document: document.clone(),
            size: PaperSize::Letter,
        };
        let Job::Pdf {
            document: come,
            size,
        } = carried(&job)
        else {
            panic!("a paper stays a paper")
        };
        assert_eq!((come, size), (document, PaperSize::Letter));
    }
}

#[test]
fn the_log_comes_whole() {
    let seen = visits(&Desk::full().story, &Filter::default());
    let job = Job::Csv(Log {
        columns: Column::ALL.to_vec(),
        visits: seen.clone(),
    });
    let Job::Csv(log) = carried(&job) else {
        panic!("a log stays a log")
    };
    assert_eq!((log.columns.as_slice(), log.visits), (Column::ALL, seen));
}

#[test]
fn what_was_read_comes_whole_with_its_sections() {
    let desk = Desk::full();
    let sections = record::SectionKind::ALL
        .into_iter()
        .filter_map(|kind| Some(desk.exam().section(kind).settled()?.value.clone()));
    let taken = Taken {
        earlier: vec![Earlier {
            person: Some("Orla Pennyquick".into()),
            born: Some(day(1940, 1, 31)),
            on: day(2024, 6, 1),
            sections: sections.collect(),
            left_over: vec!["prism".into()],
        }],
        report: vec!["one lens".into()],
        left_over: Vec::new(),
    };
    let Made::Taken(come) = carried(&Made::Taken(taken.clone())) else {
        panic!("what was read stays so")
    };
    assert_eq!(come, taken);
}

#[test]
fn entries_and_files_come_byte_by_byte() {
    let entries = Desk::full().story.excerpt(&[EXAM]);
    let bytes: Vec<ByteBuf> = entries
        .iter()
        .map(|entry| ByteBuf::from(entry.to_cbor()))
        .collect();
    let job = Job::Bundle {
        entries: bytes.clone(),
        exams: vec![EXAM],
    };
    let Job::Bundle { entries, exams } = carried(&job) else {
        panic!("a bundle stays a bundle")
    };
    assert_eq!((entries, exams), (bytes, vec![EXAM]));
}
