//! The workbook as another library reads it (`calamine`).

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

use std::io::Cursor;

use calamine::{Data, DataType, Range, Reader, Xlsx};
use papers::log::{Column, Filter, Visit, visits};
use papers::sample::{Desk, day, orla};
use record::{Name, PersonDetails};

fn seen(given: &str) -> Vec<Visit> {
    let details = PersonDetails {
        name: Name {
            given: given.into(),
            family: "O’Castle".into(),
        },
        ..orla()
    };
    visits(&Desk::full_of(details).story, &Filter::default())
}

fn sheet(columns: &[Column], seen: &[Visit], name: &str) -> Range<Data> {
    let bytes = sheets::workbook(columns, seen).unwrap();
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).unwrap();
    assert_eq!(book.sheet_names(), ["visits", "totals"]);
    assert!(
        book.worksheet_formula(name).unwrap().is_empty(),
        "no formula anywhere"
    );
    book.worksheet_range(name).unwrap()
}

#[test]
fn days_are_days_and_numbers_are_numbers() {
    let range = sheet(Column::ALL, &seen("Orla"), "visits");
    let column = |column: Column| Column::ALL.iter().position(|one| *one == column).unwrap() as u32;
    let cell = |one| range.get_value((1, column(one))).unwrap();
    assert!(cell(Column::Date).is_datetime());
    assert_eq!(cell(Column::Date).as_date(), Some(day(2026, 3, 4)));
    assert_eq!(cell(Column::Again).as_date(), Some(day(2027, 3, 4)));
    assert_eq!(cell(Column::Pairs), &Data::Float(2.0));
    // Born on 31 January 1940, seen on 4 March 2026: by hand.
    assert_eq!(cell(Column::Age), &Data::Float(86.0));
    assert_eq!(cell(Column::Place), &Data::String("Saltmarsh Court".into()));
    assert_eq!(cell(Column::Person), &Data::String("Orla O’Castle".into()));
    for (place, column) in Column::ALL.iter().enumerate() {
        let heading = range.get_value((0, place as u32)).unwrap();
        assert_eq!(heading, &Data::String(column.heading().into()));
    }
}

#[test]
fn what_looks_like_a_formula_is_words() {
    let range = sheet(&[Column::Person], &seen("=SUM(A1:A9)"), "visits");
    let words = range.get_value((1, 0)).unwrap();
    assert_eq!(words, &Data::String("=SUM(A1:A9) O’Castle".into()));
}

#[test]
fn totals_stand_on_their_own_sheet() {
    let range = sheet(Column::ALL, &seen("Orla"), "totals");
    let number = |name: &str| {
        let row = range
            .rows()
            .find(|row| row[0] == Data::String(name.into()))
            .unwrap();
        row[1].as_f64()
    };
    assert_eq!(number("visits"), Some(1.0));
    assert_eq!(number("pairs ordered"), Some(2.0));
    assert_eq!(number("Saltmarsh Court"), Some(1.0));
    assert_eq!(number("glasses prescribed"), Some(1.0));
    assert_eq!(number("glasses left alone"), Some(0.0));
    assert_eq!(number("soon"), Some(1.0));
}

#[test]
fn the_same_visits_give_the_same_file() {
    let seen = seen("Orla");
    let twice = [(), ()].map(|()| sheets::workbook(Column::ALL, &seen).unwrap());
    assert_eq!(twice[0], twice[1]);
}

#[test]
fn a_log_without_visits_opens() {
    let range = sheet(Column::ALL, &[], "visits");
    assert_eq!(range.height(), 1);
}
