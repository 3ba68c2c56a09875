//! Dates of birth as homes write them.

use ::words::record::lists as say;
use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Serialize};

use crate::manner::month_named;
use crate::sections::OneOf;

/// In which order day, month and year stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DateOrder {
    /// 31/01/1940.
    DayFirst,
    /// 01/31/1940.
    MonthFirst,
    /// 1940-01-31.
    YearFirst,
}

impl OneOf for DateOrder {
    fn all() -> Vec<Self> {
        vec![Self::DayFirst, Self::MonthFirst, Self::YearFirst]
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::DayFirst => say::day_first(),
            Self::MonthFirst => say::month_first(),
            Self::YearFirst => say::year_first(),
        }
    }
}

/// Of two centuries that a year of two figures may mean, the earlier is taken up to this age. Own choice: few of the people visited
/// are younger than ten, and few older than this.
const OLDEST_OF_TWO_FIGURES: i32 = 105;

impl DateOrder {
    /// The order in which most of the dates can be dates; of equals day first, then month first.
    pub(crate) fn guess<'a>(values: impl Iterator<Item = &'a str>) -> Self {
        let values: Vec<&str> = values.collect();
        let can_be = |order: &Self| values.iter().filter(|text| order.fits(text)).count();
        let orders = Self::all().into_iter().rev();
        orders.max_by_key(can_be).unwrap_or(Self::DayFirst)
    }

    /// Whether every date that could be read day first could be read month first as well, and one would differ.
    pub(crate) fn is_open<'a>(values: impl Iterator<Item = &'a str>) -> bool {
        let (mut differ, mut settled) = (false, false);
        for text in values {
            let day_first = parts(text).and_then(|parts| Self::DayFirst.place(parts));
            let month_first = parts(text).and_then(|parts| Self::MonthFirst.place(parts));
            settled |= day_first.is_some() != month_first.is_some();
            differ |= day_first.is_some() && month_first.is_some() && day_first != month_first;
        }
        differ && !settled
    }

    fn fits(self, text: &str) -> bool {
        parts(text).and_then(|parts| self.place(parts)).is_some()
    }

    /// Reads a date; nothing where it is none. A month in words says itself where it stands. A year of two figures is the last one
    /// that makes the person at most 105 years old, seen from `today`.
    pub fn read(self, text: &str, today: NaiveDate) -> Option<NaiveDate> {
        let date = self.place(parts(text)?)?;
        if date.year() >= 100 {
            return Some(date);
        }
        let earlier = 1900 + date.year();
        let year = if today.year() - earlier <= OLDEST_OF_TWO_FIGURES {
            earlier
        } else {
            earlier + 100
        };
        NaiveDate::from_ymd_opt(year, date.month(), date.day())
    }

    /// Reads the date of something that has happened: of a year of two figures the last one that is not to come, seen from
    /// `today`.
    pub fn read_past(self, text: &str, today: NaiveDate) -> Option<NaiveDate> {
        let date = self.place(parts(text)?)?;
        if date.year() >= 100 {
            return Some(date);
        }
        let in_century =
            |century| NaiveDate::from_ymd_opt(century + date.year(), date.month(), date.day());
        in_century(2000)
            .filter(|date| *date <= today)
            .or_else(|| in_century(1900))
    }

    /// Three parts in their places. A year of four figures in front is a year whatever the order says, for nothing else has four.
    fn place(self, [a, b, c]: [Part; 3]) -> Option<NaiveDate> {
        let (year, month, day) = match (a, b, c) {
            (day, Part::Month(month), year) | (Part::Month(month), day, year) => {
                (year.year()?, month, day.small()?)
            }
            (a, b, c) if a.is_long() => (a.year()?, b.small()?, c.small()?),
            (a, b, c) => match self {
                Self::DayFirst => (c.year()?, b.small()?, a.small()?),
                Self::MonthFirst => (c.year()?, a.small()?, b.small()?),
                Self::YearFirst => (a.year()?, b.small()?, c.small()?),
            },
        };
        NaiveDate::from_ymd_opt(year, month, day)
    }
}

/// One of the three parts of a date.
#[derive(Clone, Copy)]
enum Part {
    /// A number and how many figures it has.
    Number(u16, usize),
    /// A month in words, from 1.
    Month(u32),
}

impl Part {
    const fn is_long(self) -> bool {
        matches!(self, Self::Number(_, 4))
    }

    fn small(self) -> Option<u32> {
        match self {
            Self::Number(number, 1 | 2) => Some(number.into()),
            _ => None,
        }
    }

    fn year(self) -> Option<i32> {
        match self {
            Self::Number(number, 2 | 4) => Some(number.into()),
            _ => None,
        }
    }
}

/// Three parts between separators; a time of day after them is left away.
fn parts(text: &str) -> Option<[Part; 3]> {
    let split =
        |c: char| c.is_whitespace() || matches!(c, '/' | '-' | '.' | ',' | '\u{2010}'..='\u{2015}');
    let (date, _time) = text
        .split_once('T')
        .filter(|(date, _)| date.len() == 10)
        .unwrap_or((text, ""));
    let mut parts = date.split(split).filter(|part| !part.is_empty());
    let three = [
        part(parts.next()?)?,
        part(parts.next()?)?,
        part(parts.next()?)?,
    ];
    let is_time = |rest: &str| rest.contains(':') || matches!(rest, "AM" | "PM" | "am" | "pm");
    parts.all(is_time).then_some(three)
}

fn part(text: &str) -> Option<Part> {
    if text.len() <= 4 && text.bytes().all(|byte| byte.is_ascii_digit()) {
        return Some(Part::Number(text.parse().ok()?, text.len()));
    }
    let bare = text.trim_end_matches(|c: char| c.is_ascii_lowercase());
    if matches!(text.strip_prefix(bare), Some("st" | "nd" | "rd" | "th")) && !bare.is_empty() {
        return part(bare);
    }
    month_named(text).map(Part::Month)
}
