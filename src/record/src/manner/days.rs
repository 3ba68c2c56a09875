//! Months and days of the week in the language spoken. The short ones are those of the Unicode CLDR.

use ::words::record::days as say;
use ::words::{Language, in_language};
use chrono::{Datelike, NaiveDate};

use crate::find::fold;

/// What gives a name in the language spoken.
type Name = fn() -> &'static str;

/// Each month, long and short.
const MONTHS: [(Name, Name); 12] = [
    (say::january, say::january_short),
    (say::february, say::february_short),
    (say::march, say::march_short),
    (say::april, say::april_short),
    (say::may, say::may_short),
    (say::june, say::june_short),
    (say::july, say::july_short),
    (say::august, say::august_short),
    (say::september, say::september_short),
    (say::october, say::october_short),
    (say::november, say::november_short),
    (say::december, say::december_short),
];

const WEEKDAYS: [Name; 7] = [
    say::monday,
    say::tuesday,
    say::wednesday,
    say::thursday,
    say::friday,
    say::saturday,
    say::sunday,
];

/// The month of a day: `November`.
pub(super) fn month(day: NaiveDate) -> &'static str {
    MONTHS[day.month0() as usize].0()
}

/// The same, shorter: `Nov`.
pub(super) fn short_month(day: NaiveDate) -> &'static str {
    MONTHS[day.month0() as usize].1()
}

/// The day of the week: `Wednesday`.
pub(super) fn weekday(day: NaiveDate) -> &'static str {
    WEEKDAYS[day.weekday().num_days_from_monday() as usize]()
}

/// Which month a word is in any language, from 1, and whether it is the shorter of two.
pub(super) fn read_month(word: &str) -> Option<(u32, bool)> {
    let named = |language: Language| {
        in_language(language, || {
            (1..).zip(MONTHS).find_map(|(number, (long, short))| {
                let is_long = word == long();
                (is_long || word == short()).then_some((number, !is_long))
            })
        })
    };
    Language::ALL.into_iter().find_map(named)
}

/// The month, from 1, that a word names in any language, or begins to: three letters are enough. Accents and capitals may be
/// left out.
pub(crate) fn month_named(word: &str) -> Option<u32> {
    // Spreadsheets that speak German shorten März to what no word begins with.
    const SHORTENED: (&str, u32) = ("mrz", 3);
    let word = fold(word).replace("ae", "a");
    if word.chars().count() < 3 {
        return None;
    }
    let named = |language: Language| {
        in_language(language, || {
            (1..)
                .zip(MONTHS)
                .find_map(|(number, (long, _))| fold(long()).starts_with(&word).then_some(number))
        })
    };
    let (shortened, march) = SHORTENED;
    let begun = Language::ALL.into_iter().find_map(named);
    begun.or((word == shortened).then_some(march))
}

#[cfg(test)]
mod tests {
    use super::month_named;
    use crate::manner::{DateOrder, Manner};
    use chrono::NaiveDate;
    use words::{Language, in_language};

    /// Unicode CLDR, German: the long date is `d. MMMM y`, the medium month of September is `Sept.`
    #[test]
    fn a_german_day_has_a_dot_behind_its_number() {
        let day = NaiveDate::from_ymd_opt(2026, 9, 4).unwrap();
        let said = |manner: Manner| {
            [
                manner.date(day),
                manner.short_date(day),
                manner.weekday(day),
            ]
        };
        assert_eq!(
            in_language(Language::German, || said(Manner::default())),
            [
                "4. September 2026",
                "4. Sept. 2026",
                "Freitag, 4. September"
            ]
        );
        assert_eq!(
            said(Manner::default()),
            ["4 September 2026", "4 Sep 2026", "Friday 4 September"]
        );
    }

    /// The months of the calendar; three letters tell each in both languages.
    #[test]
    fn a_month_is_known_by_its_name_in_every_language() {
        for (word, month) in [
            ("March", Some(3)),
            ("mar", Some(3)),
            ("März", Some(3)),
            ("MÄRZ", Some(3)),
            ("Marz", Some(3)),
            ("Maerz", Some(3)),
            ("Mrz", Some(3)),
            ("May", Some(5)),
            ("Mai", Some(5)),
            ("Okt", Some(10)),
            ("Oct", Some(10)),
            ("Sept", Some(9)),
            ("Dezember", Some(12)),
            ("De", None),
            ("Margaret", None),
            ("Decade", None),
        ] {
            assert_eq!(month_named(word), month, "{word}");
        }
    }

    /// What was written down in one language is read by whoever speaks the other.
    #[test]
    fn days_in_words_are_found_in_every_language() {
        let dates = DateOrder::YearFirst;
        let reader = Manner {
            dates,
            ..Manner::default()
        };
        let words = "(4. März 2026), 4 March 2026, 1 Okt. 2026; 4 Marz 2026";
        assert_eq!(
            reader.in_words(words),
            "(2026-03-04), 2026-03-04, 2026-10-01; 4 Marz 2026"
        );
    }
}
