//! Whatever bytes come: an answer, never a panic; and what is written in a usual form comes back.

use optics::SphereCyl;
use proptest::prelude::*;
use record::earlier_list::{Bare, DateOrder, Field, Mapping, Table, judge, kept_aside};
use record::{ExamId, OneOf, Section, check};
use uuid::Uuid;

use super::{desk, one};
use crate::desk::day;

fn piece() -> impl Strategy<Value = Vec<u8>> {
    let known: Vec<&[u8]> = vec![
        b"Number",
        b"Exam date",
        b"RE Rx",
        b"R sph",
        b"R unaided",
        b"L IOP",
        b"12",
        b"13",
        b"04/03/2025",
        b"1/2/25",
        b"+2.50/-1.00x90",
        b"-1.00",
        b"6/12",
        b"0.3",
        b"0.3 logMAR",
        b"CF 50 cm",
        b"1e308",
        b"\"",
        b";",
        b"\n",
        b"\xE9",
    ];
    prop_oneof![
        8 => prop::sample::select(known).prop_map(<[u8]>::to_vec),
        1 => prop::collection::vec(any::<u8>(), 0..6),
    ]
}

fn file() -> impl Strategy<Value = Vec<u8>> {
    let rows = prop::collection::vec(piece(), 0..60).prop_map(|pieces| pieces.concat());
    rows.prop_map(|rows| {
        [
            b"Number;Exam date;RE Rx;R unaided\n12;04/03/2025;".as_slice(),
            &rows,
        ]
        .concat()
    })
}

fn column() -> impl Strategy<Value = Option<Field>> {
    prop::option::of(prop::sample::select(Field::all()))
}

/// A quarter of a dioptre, so many times.
fn quarters(range: std::ops::RangeInclusive<i32>) -> impl Strategy<Value = f64> {
    range.prop_map(|count| f64::from(count) / 4.0)
}

proptest! {
    #[test]
    fn no_bytes_bring_it_down(
        bytes in file(),
        columns in prop::collection::vec(column(), 0..8),
        dates in prop::sample::select(DateOrder::all()),
        bare in prop::option::of(prop::sample::select(vec![Bare::Decimal, Bare::LogMar])),
    ) {
        let Ok(table) = Table::read(&bytes) else { return Ok(()) };
        let story = desk().story;
        for mapping in [Mapping::guess(&table), Mapping { columns, dates, bare }] {
            let judged = judge(&table, &mapping, &story, day(2026, 3, 4));
            prop_assert_eq!(judged.len(), table.rows.len());
            prop_assert!(kept_aside(&table, &judged, record::DateOrder::DayFirst).starts_with("line"));
            let rows: Vec<_> = judged.into_iter().filter_map(|each| each.verdict.ok()).collect();
            for section in rows.iter().flat_map(|row| &row.sections) {
                prop_assert!(check(section).is_empty(), "{section:?}");
            }
            let exam = ExamId::from_uuid(Uuid::from_u128(1));
            let taken = story.take_earlier(&rows, || exam);
            prop_assert!(taken.is_ok());
            let _open = (mapping.dates_are_open(&table), mapping.bare_is_open(&table));
            let _asked = mapping.check();
        }
    }

    /// Any lens that a trial case holds, written as the record writes it.
    #[test]
    fn a_lens_comes_back_as_it_was_written(
        sphere in quarters(-80..=80),
        cylinder in quarters(-24..=24),
        axis in 1_u8..=180,
    ) {
        let lens = SphereCyl::new(sphere, cylinder, f64::from(axis)).unwrap();
        let row = one("RE Rx", &lens.to_string()).unwrap();
        let Section::Subjective(found) = &row.sections[0] else { panic!("{row:?}") };
        prop_assert_eq!(found.eyes.right.done().unwrap().lens, lens);
    }
}
