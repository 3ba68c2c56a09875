//! Dates as homes write them. How a date is written is common practice, no source; that a date exists or not is the calendar's.

use chrono::NaiveDate;
use record::home_list::{DateOrder, Mapping};

use super::{faults, good, judged, table};
use crate::desk::day;

fn read(order: DateOrder, text: &str) -> Option<NaiveDate> {
    order.read(text, day(2026, 3, 4))
}

#[test]
fn the_same_figures_are_another_day_in_another_order() {
    assert_eq!(
        read(DateOrder::DayFirst, "03/04/1940"),
        Some(day(1940, 4, 3))
    );
    assert_eq!(
        read(DateOrder::MonthFirst, "03/04/1940"),
        Some(day(1940, 3, 4))
    );
    assert_eq!(
        read(DateOrder::YearFirst, "1940-03-04"),
        Some(day(1940, 3, 4))
    );
    assert_eq!(
        read(DateOrder::DayFirst, "1940-03-04"),
        Some(day(1940, 3, 4)),
        "nothing else has four figures"
    );
}

#[test]
fn dates_are_read_however_they_are_written() {
    for text in [
        "31.1.1940",
        "31 January 1940",
        "31. Januar 1940",
        "31. Jan. 1940",
        "31-Jan-1940",
        "31st Jan 1940",
        "January 31, 1940",
        "1940-01-31T00:00:00",
        "31/01/1940 00:00",
        "31/01/40",
        "1940.01.31",
    ] {
        assert_eq!(
            read(DateOrder::DayFirst, text),
            Some(day(1940, 1, 31)),
            "{text}"
        );
    }
}

#[test]
fn what_is_no_date_is_none() {
    for text in [
        "31/02/1940",
        "29/02/1939",
        "00/01/1940",
        "1/1",
        "about 1940",
        "1/1/194",
        "1/1/1940/2",
        "31/01/19400",
        "14",
    ] {
        assert_eq!(read(DateOrder::DayFirst, text), None, "{text}");
    }
    assert_eq!(
        read(DateOrder::DayFirst, "29/02/1940"),
        Some(day(1940, 2, 29))
    );
}

/// Own choice, stated in `dates.rs`: the earlier century up to an age of 105.
#[test]
fn two_figures_are_the_year_that_makes_an_age() {
    assert_eq!(
        read(DateOrder::DayFirst, "04/03/21"),
        Some(day(1921, 3, 4)),
        "105"
    );
    assert_eq!(read(DateOrder::DayFirst, "04/03/20"), Some(day(2020, 3, 4)));
    assert_eq!(read(DateOrder::DayFirst, "04/03/03"), Some(day(2003, 3, 4)));
    assert_eq!(
        read(DateOrder::DayFirst, "29/02/00"),
        Some(day(2000, 2, 29)),
        "1900 had no such day"
    );
}

fn guess(dates: &[&str]) -> (DateOrder, bool) {
    let table = table(&format!("Name;DOB\nx;{}\n", dates.join("\nx;")));
    let mapping = Mapping::guess(&table);
    (mapping.dates, mapping.dates_are_open(&table))
}

#[test]
fn the_order_is_told_by_the_dates_where_they_tell_it() {
    assert_eq!(
        guess(&["03/04/1940", "31/01/1933"]),
        (DateOrder::DayFirst, false)
    );
    assert_eq!(
        guess(&["03/04/1940", "01/31/1933"]),
        (DateOrder::MonthFirst, false)
    );
    assert_eq!(
        guess(&["03/04/1940", "04/05/1933"]),
        (DateOrder::DayFirst, true),
        "it could be either"
    );
    assert_eq!(
        guess(&["04/04/1940"]),
        (DateOrder::DayFirst, false),
        "either way the same day"
    );
    assert_eq!(
        guess(&["1940-04-03"]),
        (DateOrder::DayFirst, false),
        "the year in front says it itself"
    );
    assert_eq!(guess(&["40-04-13", "33-12-01"]).0, DateOrder::YearFirst);
}

#[test]
fn a_birth_in_the_future_or_long_ago_is_kept_aside() {
    let list = "Name;DOB\nOrla Pennyquick;05/03/2026\nIvo Castlemere;31/01/1840\nMaud Ellingsea;\n";
    let judged = judged(list, &record::Story::default());
    assert_eq!(
        faults(&judged),
        [
            "line 2, DOB: the date of birth lies in the future",
            "line 3, DOB: that makes the person more than 125 years old",
        ]
    );
    assert_eq!(good(judged)[0].born, None);
}
