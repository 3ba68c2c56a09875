//! Whatever bytes come: an answer, never a panic; and nobody is lost between good and kept aside.

use proptest::prelude::*;
use record::Story;
use record::home_list::{DateOrder, Field, Mapping, Table, judge, kept_aside};

use super::{HOME, counting, good};
use crate::desk::day;
use crate::rounds::PLACE;

/// Pieces that lists are made of, and pieces that break them.
fn piece() -> impl Strategy<Value = Vec<u8>> {
    let known: Vec<&[u8]> = vec![
        b"Name",
        b"DOB",
        b"Room",
        b"Floor",
        b"31/01/1940",
        b"1/2/33",
        b"1940-01-31T00:00",
        b"\"",
        b"\"\"",
        b",",
        b";",
        b"\t",
        b"\r",
        b"\n",
        b"\r\n",
        b"\xEF\xBB\xBF",
        b"\xE9",
        b"\xC3\xA9",
        b"\xFF\xFE",
        b"Pennyquick, Orla",
        b" ",
        b"99999999999999999999",
    ];
    prop_oneof![
        8 => prop::sample::select(known).prop_map(<[u8]>::to_vec),
        1 => prop::collection::vec(any::<u8>(), 0..6),
    ]
}

fn file() -> impl Strategy<Value = Vec<u8>> {
    prop::collection::vec(piece(), 0..60).prop_map(|pieces| pieces.concat())
}

fn column() -> impl Strategy<Value = Option<Field>> {
    use record::OneOf;
    prop::option::of(prop::sample::select(Field::all()))
}

fn order() -> impl Strategy<Value = DateOrder> {
    use record::OneOf;
    prop::sample::select(DateOrder::all())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    /// With the mapping that is guessed, and with any that somebody might choose on the screen.
    #[test]
    fn no_bytes_bring_it_down(bytes in file(), columns in prop::collection::vec(column(), 0..8), dates in order()) {
        let Ok(table) = Table::read(&bytes) else { return Ok(()) };
        for mapping in [Mapping::guess(&table), Mapping { columns, dates }] {
            let judged = judge(&table, &mapping, &Story::default(), HOME, day(2026, 3, 4));
            prop_assert_eq!(judged.len(), table.rows.len());
            let aside = kept_aside(&table, &judged, record::DateOrder::DayFirst);
            prop_assert!(aside.starts_with("line"));
            let bad = judged.iter().filter(|each| each.verdict.is_err()).count();
            let rows = good(judged);
            prop_assert_eq!(rows.len() + bad, table.rows.len());
            let home = record::PlaceDetails { name: HOME.into(), ..record::PlaceDetails::default() };
            let taken = Story::default().take_list(PLACE, &home, &rows, counting(0));
            prop_assert_eq!(taken.people.len(), rows.len());
            let _asked = (mapping.check(), mapping.dates_are_open(&table));
        }
    }

    #[test]
    fn noise_gives_an_error_or_a_table(noise in prop::collection::vec(any::<u8>(), 0..400)) {
        if let Ok(table) = Table::read(&noise) {
            prop_assert!(!table.rows.is_empty() && !table.heading.is_empty());
        }
    }

    /// The calendar's own days, written three ways, come back as themselves.
    #[test]
    fn a_date_comes_back_as_it_was_written(days in 0..45_000_i64) {
        let date = day(1900, 1, 1) + chrono::TimeDelta::days(days);
        for (order, format) in [
            (DateOrder::DayFirst, "%d/%m/%Y"),
            (DateOrder::MonthFirst, "%-m-%-d-%Y"),
            (DateOrder::YearFirst, "%Y.%m.%d"),
            (DateOrder::MonthFirst, "%-d %B %Y"),
        ] {
            prop_assert_eq!(order.read(&date.format(format).to_string(), day(2026, 3, 4)), Some(date));
        }
    }

    /// Whatever text: a date that any order reads back from the calendar's own writing, or none.
    #[test]
    fn no_text_brings_a_date_down(text in ".{0,20}", order in order()) {
        if let Some(date) = order.read(&text, day(2026, 3, 4)) {
            prop_assert_eq!(order.read(&date.format("%Y-%m-%d").to_string(), day(2026, 3, 4)), Some(date));
        }
    }
}
