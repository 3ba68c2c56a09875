//! The visit log, and its file.

use papers::log::{Column, Filter, Outcome, Totals, Value, Visit, csv, in_order, safe, visits};
use papers::sample::{Desk, day, orla};
use record::{ExamId, Identifier, Name, PersonDetails, PersonId};
use std::convert::Infallible;
use uuid::Uuid;

/// Orla, seen and signed; Ivo, seen a day later elsewhere and not finished; a name that is a formula.
fn story() -> record::Story {
    let mut desk = Desk::full();
    let ivo = PersonId::from_uuid(Uuid::from_u128(0xBB));
    let name = Name {
        given: "=HYPERLINK(\"x\")".into(),
        family: "O’Castle, \"Ivo\"".into(),
    };
    let details = PersonDetails {
        name,
        room: "+3".into(),
        ..orla()
    };
    desk.write(desk.story.put_person(ivo, details));
    let exam = ExamId::from_uuid(Uuid::from_u128(0xE2));
    desk.open(exam, ivo, "Gull Harbour", day(2026, 3, 5));
    desk.story
}

fn file(columns: &[Column]) -> String {
    let mut file = Vec::new();
    csv(&mut file, columns, &visits(&story(), &Filter::default())).unwrap();
    String::from_utf8(file).unwrap()
}

/// A number with whoever gave it stands in the log and on the papers, as one from before numbers had an issuer does.
#[test]
fn every_number_of_a_person_stands_in_the_log_and_on_papers() {
    let details = PersonDetails {
        identifier: Some("12".into()),
        identifiers: vec![Identifier {
            number: "H-0014".into(),
            issuer: "Tern House".into(),
        }],
        ..orla()
    };
    let desk = Desk::full_of(details);
    let said = "12; H-0014 (Tern House)";
    assert_eq!(visits(&desk.story, &Filter::default())[0].number, said);
    let summary = papers::visit_summary(desk.person(), desk.exam(), day(2026, 3, 7)).unwrap();
    assert!(summary.words().contains(&said), "{:?}", summary.who);
}

#[test]
fn a_row_a_visit_by_day() {
    let seen = visits(&story(), &Filter::default());
    let row = |place: usize| -> Vec<Value<'_>> {
        Column::ALL
            .iter()
            .map(|column| column.of(&seen[place]))
            .collect()
    };
    let text = Value::Text;
    assert_eq!(
        row(0),
        [
            Value::Day(day(2026, 3, 4)),
            text("Saltmarsh Court"),
            text("12"),
            text("Orla Pennyquick"),
            Value::Count(86),
            Value::Blank,
            text("M. Farrow, optometrist"),
            text("glasses prescribed"),
            text("soon"),
            Value::Count(2),
            text("tropicamide"),
            Value::Day(day(2027, 3, 4)),
            Value::Count(0),
            text("signed"),
        ]
    );
    assert_eq!(seen[1].outcome, Outcome::Unfinished);
}

#[test]
fn visits_are_picked() {
    let story = story();
    let count = |filter: Filter| visits(&story, &filter).len();
    assert_eq!(count(Filter::default()), 2);
    for (filter, expected) in [
        (
            Filter {
                from: Some(day(2026, 3, 5)),
                ..Filter::default()
            },
            1,
        ),
        (
            Filter {
                through: Some(day(2026, 3, 4)),
                ..Filter::default()
            },
            1,
        ),
        (
            Filter {
                place: Some("saltmarsh court".into()),
                ..Filter::default()
            },
            1,
        ),
        (
            Filter {
                clinician: Some("nobody".into()),
                ..Filter::default()
            },
            0,
        ),
        (
            Filter {
                outcome: Some(Outcome::Prescribed),
                ..Filter::default()
            },
            1,
        ),
    ] {
        assert_eq!(count(filter.clone()), expected, "{filter:?}");
    }
}

// RFC 4180: lines end with CR LF; a field with a comma or a quote stands in quotes, and its quotes are doubled.
#[test]
fn the_file_is_as_the_standard_has_it() {
    let text = file(&[Column::Date, Column::Person, Column::Room]);
    let expected = "date,person,room\r\n\
        2026-03-04,Orla Pennyquick,12\r\n\
        2026-03-05,\"'=HYPERLINK(\"\"x\"\") O’Castle, \"\"Ivo\"\"\",'+3\r\n";
    assert_eq!(text, expected);
}

// The letters that OWASP's page on CSV injection names.
#[test]
fn no_cell_is_a_formula() {
    for words in [
        "=1+1", "+1", "-1", "@SUM(1)", "\t=1", "\r=1", "  =1", "＝1", "\n=1",
    ] {
        assert_eq!(safe(words), format!("'{words}"));
    }
    for words in ["Orla", "1+1", "O’Brien", "−2.00", ""] {
        assert_eq!(safe(words), words);
    }
}

#[test]
fn what_is_personal_is_left_out_in_one_switch() {
    let shown = Column::without_personal(Column::ALL);
    let text = file(&shown);
    for personal in [
        "Pennyquick",
        "Castle",
        "86",
        "room",
        "person",
        "number",
        "age",
    ] {
        assert!(!text.contains(personal), "{personal}: {text}");
    }
    assert!(text.contains("Saltmarsh Court"));
}

#[test]
fn columns_are_found_by_their_headings() {
    for column in Column::ALL {
        assert_eq!(
            Column::named(&column.heading().to_uppercase()),
            Some(*column)
        );
    }
    assert_eq!(Column::named("pressure"), None);
}

#[test]
fn totals_count_what_the_rows_say() {
    let totals = Totals::of(&visits(&story(), &Filter::default()));
    let counts = |totals: &[papers::log::Total]| -> Vec<(String, u32)> {
        totals
            .iter()
            .map(|total| (total.name.clone(), total.count))
            .collect()
    };
    assert_eq!((totals.visits, totals.pairs), (2, 2));
    assert_eq!(
        counts(&totals.places),
        [
            ("Gull Harbour".to_owned(), 1),
            ("Saltmarsh Court".to_owned(), 1)
        ]
    );
    assert_eq!(
        counts(&totals.outcomes)
            .iter()
            .map(|(_, count)| count)
            .sum::<u32>(),
        2
    );
    assert_eq!(counts(&totals.referrals)[1], ("soon".to_owned(), 1));
}

/// However few rows are held at a time, they come in the order in which all of them together are put, each once.
#[test]
fn a_long_log_is_in_order_too() {
    let two = visits(&story(), &Filter::default());
    let days = (1..=9).map(|on| Visit {
        date: day(2026, 1, (on * 7) % 10),
        exam: ExamId::from_uuid(Uuid::from_u128(on.into())),
        ..two[0].clone()
    });
    let mut all: Vec<Visit> = two.iter().cloned().chain(days).collect();
    // One day, place and person, twice.
    all.push(Visit {
        exam: ExamId::from_uuid(Uuid::from_u128(0xE9)),
        ..two[0].clone()
    });
    let mut sorted = all.clone();
    sorted.sort_by_key(|visit| (visit.date, visit.exam));
    for most in [1, 2, 3, 11, 12, 13, 100] {
        let mut given = Vec::new();
        let each = |each: &mut dyn FnMut(Visit)| {
            all.iter().cloned().for_each(each);
            Ok::<_, Infallible>(())
        };
        in_order(most, each, |visit| {
            given.push(visit.clone());
            Ok(())
        })
        .unwrap();
        assert_eq!(given, sorted, "{most}");
    }
}
