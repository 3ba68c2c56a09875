//! How days, figures and distances are shown. The orders of a day are common practice, no source, but for ISO 8601.

use proptest::prelude::*;
use record::{Acuity, Chart, DateOrder, DecimalMark, FarUnit, Manner, Part, Said};

use crate::desk::day;

fn manner(dates: DateOrder) -> Manner {
    Manner {
        dates,
        ..Manner::default()
    }
}

#[test]
fn a_day_in_every_order() {
    let on = day(2026, 3, 4);
    let at = on.and_hms_opt(9, 5, 59).unwrap();
    for (dates, date, weekday, month, moment) in [
        (
            DateOrder::DayFirst,
            "4 March 2026",
            "Wednesday 4 March",
            "March 2026",
            "4 March 2026, 09:05",
        ),
        (
            DateOrder::MonthFirst,
            "March 4, 2026",
            "Wednesday, March 4",
            "March 2026",
            "March 4, 2026, 09:05",
        ),
        (
            DateOrder::YearFirst,
            "2026-03-04",
            "Wednesday 2026-03-04",
            "2026-03",
            "2026-03-04, 09:05",
        ),
    ] {
        let manner = manner(dates);
        assert_eq!(manner.date(on), date);
        assert_eq!(manner.weekday(on), weekday);
        assert_eq!(manner.month(on), month);
        assert_eq!(manner.moment(at), moment);
    }
}

/// Computed from the formula: a foot is 0.3048 m exactly (international yard and pound agreement, 1959), so 3 m is 9.84 ft
/// and 6 m is 19.69 ft.
#[test]
fn a_distance_in_feet() {
    assert_eq!(FarUnit::Feet.said(3.0), "9.8 ft");
    assert_eq!(FarUnit::Feet.said(6.0), "19.7 ft");
    assert_eq!(FarUnit::Metres.said(3.0), "3 m");
}

#[test]
fn a_chart_is_read_in_the_readers_unit() {
    let chart = Chart {
        made_for_m: 6.096,
        used_at_m: 3.0,
    };
    let section = Acuity {
        chart,
        ..Acuity::default()
    }
    .into_section();
    let said = |far| section.lines_in(far).remove(0).said;
    assert_eq!(
        said(FarUnit::Feet),
        Said::One("made for 20 ft, used at 9.8 ft".into())
    );
    assert_eq!(
        said(FarUnit::Metres),
        Said::One("made for 6.1 m, used at 3 m".into())
    );
}

/// The orders of a day as in [`a_day_in_every_order`]; 3 m is 9.84 ft and 2.5 m is 8.20 ft, computed as above.
#[test]
fn words_are_shown_in_the_readers_manner() {
    let month_first = Manner {
        dates: DateOrder::MonthFirst,
        decimal: DecimalMark::Comma,
        far: FarUnit::Feet,
    };
    let year_first = manner(DateOrder::YearFirst);
    for (words, in_one, in_other) in [
        (
            "seen 4 March 2026, 09:05",
            "seen March 4, 2026, 09:05",
            "seen 2026-03-04, 09:05",
        ),
        (
            "(2 Mar 2027; then 31 May 2027)",
            "(Mar 2, 2027; then May 31, 2027)",
            "(2027-03-02; then 2027-05-31)",
        ),
        (
            "at a chart 2.5 m away: by −0.40 D",
            "at a chart 8,2 ft away: by −0,40 D",
            "at a chart 2.5 m away: by −0.40 D",
        ),
        // No day, and no chart: what somebody typed stays.
        ("walks 3 m", "walks 3 m", "walks 3 m"),
        ("31 June 2026", "31 June 2026", "31 June 2026"),
        ("14 March 20261", "14 March 20261", "14 March 20261"),
        (
            "room 4 March wing",
            "room 4 March wing",
            "room 4 March wing",
        ),
        ("4 March", "4 March", "4 March"),
        ("", "", ""),
    ] {
        assert_eq!(month_first.in_words(words), in_one);
        assert_eq!(year_first.in_words(words), in_other);
        assert_eq!(Manner::default().in_words(words), words);
    }
}

#[test]
fn a_length_is_meant_as_its_writer_reads() {
    for (typed, meant) in [
        ("20", "20 ft"),
        (" 9,5 ", "9,5 ft"),
        ("3 m", "3 m"),
        ("", ""),
    ] {
        assert_eq!(FarUnit::Feet.meant(typed), meant);
        assert_eq!(FarUnit::Metres.meant(typed), typed);
    }
}

#[test]
fn a_comma_stands_only_in_figures() {
    for (words, shown) in [
        ("logMAR 0.30, 6/7.5 +2", "logMAR 0,30, 6/7,5 +2"),
        (
            "rebound, 14:05, mean of 15, 16.5",
            "rebound, 14:05, mean of 15, 16,5",
        ),
        ("0.5 % drop. Told twice.", "0,5 % drop. Told twice."),
        ("e.g. a lamp", "e.g. a lamp"),
        ("+2.50/-1.00x90", "+2,50/-1,00x90"),
        ("1.2.2026, version 1.2.3", "1.2.2026, version 1.2.3"),
        ("", ""),
    ] {
        assert_eq!(DecimalMark::Comma.in_words(words), shown);
        assert_eq!(DecimalMark::Point.in_words(words), words);
    }
}

proptest! {
    /// Showing words twice shows what showing them once does, and nothing brings it down.
    #[test]
    fn words_are_shown_once_and_for_all(
        words in "(([0-9]{1,4}|March|Mar|May|2026|chart|m|.{0,5}|[0-9.]{1,6}) ){0,14}",
        comma in any::<bool>(),
        dates in 0..3_usize,
    ) {
        let reader = Manner {
            dates: [DateOrder::DayFirst, DateOrder::MonthFirst, DateOrder::YearFirst][dates],
            decimal: if comma { DecimalMark::Comma } else { DecimalMark::Point },
            far: FarUnit::Metres,
        };
        let once = reader.in_words(&words);
        prop_assert_eq!(reader.in_words(&once), once.clone());
    }

    #[test]
    fn only_dots_ever_change(words in "[0-9a-z .,]{0,40}") {
        let shown = DecimalMark::Comma.in_words(&words);
        prop_assert_eq!(shown.len(), words.len());
        for (was, is) in words.chars().zip(shown.chars()) {
            prop_assert!(was == is || (was, is) == ('.', ','));
        }
    }
}
