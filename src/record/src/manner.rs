//! How figures, days and distances are shown to a reader: their habit, never what is kept.
//!
//! What is kept is in metres, with a point, and in days of the calendar. The words of a chart's lines are those that are
//! printed on it, and stay.

mod days;

pub(crate) use days::month_named;

use std::collections::VecDeque;

use ::words::record::days as say;
use chrono::{Datelike, NaiveDate, NaiveDateTime};
use optics::far::FOOT_M;
use optics::format::plain;
use serde::{Deserialize, Serialize};

/// A reader's habit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, rename_all = "kebab-case")]
pub struct Manner {
    /// In which order a day is written.
    pub dates: DateOrder,
    /// What stands before the decimals.
    pub decimal: DecimalMark,
    /// In what the distance of a chart is said.
    pub far: FarUnit,
}

/// In which order a day is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DateOrder {
    /// 25 November 2026.
    #[default]
    DayFirst,
    /// November 25, 2026.
    MonthFirst,
    /// 2026-11-25, as ISO 8601 writes it.
    YearFirst,
}

/// What stands before the decimals.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DecimalMark {
    /// 1.25
    #[default]
    Point,
    /// 1,25
    Comma,
}

/// In what the distance of a chart is said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum FarUnit {
    /// Metres.
    #[default]
    Metres,
    /// Feet.
    Feet,
}

impl FarUnit {
    /// One of it in metres.
    pub const fn in_metres(self) -> f64 {
        match self {
            Self::Metres => 1.0,
            Self::Feet => FOOT_M,
        }
    }

    /// A distance in metres as it is said: `3 m`, `9.8 ft`.
    ///
    /// ```
    /// use record::FarUnit;
    /// assert_eq!(FarUnit::Metres.said(2.5), "2.5 m");
    /// assert_eq!(FarUnit::Feet.said(6.096), "20 ft");
    /// ```
    pub fn said(self, metres: f64) -> String {
        match self {
            Self::Metres => format!("{} m", plain(metres, 2)),
            Self::Feet => format!("{} ft", plain(metres / FOOT_M, 1)),
        }
    }

    /// Words on a chart's distance with every length in metres in this unit.
    ///
    /// ```
    /// use record::FarUnit;
    /// assert_eq!(FarUnit::Feet.in_words("like 3 m; left out, 6 m is taken"), "like 9.8 ft; left out, 19.7 ft is taken");
    /// ```
    pub fn in_words(self, words: &str) -> String {
        self.in_words_after(words, |_| true)
    }

    /// The same for lengths that follow certain words.
    fn in_words_after(self, words: &str, follows: impl Fn(&str) -> bool) -> String {
        if self == Self::Metres {
            return words.to_owned();
        }
        let mut said: Vec<String> = Vec::new();
        let mut rest: VecDeque<&str> = words.split(' ').collect();
        while let Some(word) = rest.pop_front() {
            let after = rest.front().and_then(|unit| unit.strip_prefix('m'));
            let after = after.filter(|after| !after.starts_with(char::is_alphanumeric));
            let metres = word.parse().ok().filter(|metres: &f64| *metres > 0.0);
            let follows = follows(said.last().map_or("", String::as_str));
            if let (Some(metres), Some(after), true) = (metres, after, follows) {
                said.push(format!("{}{after}", self.said(metres)));
                rest.pop_front();
            } else {
                said.push(word.to_owned());
            }
        }
        said.join(" ")
    }

    /// What somebody who reads in this unit means by a length that was typed for one in metres: a bare number is in it.
    ///
    /// ```
    /// use record::FarUnit;
    /// assert_eq!(FarUnit::Feet.meant("20"), "20 ft");
    /// assert_eq!(FarUnit::Feet.meant("6 m"), "6 m");
    /// ```
    pub fn meant(self, typed: &str) -> String {
        let bare = typed.trim();
        let is_bare =
            !bare.is_empty() && bare.chars().all(|c| c.is_ascii_digit() || ".,".contains(c));
        match self {
            Self::Feet if is_bare => format!("{bare} ft"),
            _ => typed.to_owned(),
        }
    }
}

impl DateOrder {
    /// Days that stand in words as `4 March 2026` or `4 Mar 2026`, in this order.
    ///
    /// ```
    /// use record::DateOrder;
    /// assert_eq!(DateOrder::YearFirst.in_words("“0.3” on 4 March 2026"), "“0.3” on 2026-03-04");
    /// ```
    pub fn in_words(self, words: &str) -> String {
        if self == Self::DayFirst {
            return words.to_owned();
        }
        let manner = Manner {
            dates: self,
            ..Manner::default()
        };
        let mut said: Vec<String> = Vec::new();
        let mut rest: VecDeque<&str> = words.split(' ').collect();
        while let Some(word) = rest.pop_front() {
            let next = (rest.front(), rest.get(1));
            let written = match next {
                (Some(month), Some(year)) => Written::read(word, month, year),
                _ => None,
            };
            let Some(written) = written else {
                said.push(word.to_owned());
                continue;
            };
            let day = if written.short {
                manner.short_date(written.day)
            } else {
                manner.date(written.day)
            };
            said.push(format!("{}{day}{}", written.before, written.after));
            rest.drain(..2);
        }
        said.join(" ")
    }
}

impl DecimalMark {
    /// Words with this mark in their figures. A dot between two digits is one, unless another dot goes on: `1.2.2026` is a
    /// day and stays.
    ///
    /// ```
    /// use record::DecimalMark::Comma;
    /// assert_eq!(Comma.in_words("+1.25 / −0.50 × 90, at 14.5 cm."), "+1,25 / −0,50 × 90, at 14,5 cm.");
    /// assert_eq!(Comma.in_words("+1.25/−0.50×90, seen 1.2.2026"), "+1,25/−0,50×90, seen 1.2.2026");
    /// ```
    pub fn in_words(self, words: &str) -> String {
        if self == Self::Point || !words.contains('.') {
            return words.to_owned();
        }
        let mut said = String::with_capacity(words.len());
        for (at, letter) in words.char_indices() {
            let stands = letter == '.' && is_decimal(&words[..at], &words[at + 1..]);
            said.push(if stands { ',' } else { letter });
        }
        said
    }
}

/// Whether a dot between these begins decimals.
fn is_decimal(before: &str, after: &str) -> bool {
    let digit = |letter: char| letter.is_ascii_digit();
    let whole = before.trim_end_matches(digit);
    let part = after.trim_start_matches(digit);
    let goes_on = |from: &str| {
        from.strip_prefix('.')
            .is_some_and(|next| next.starts_with(digit))
    };
    let went_on = whole
        .strip_suffix('.')
        .is_some_and(|last| last.ends_with(digit));
    before.len() > whole.len() && after.len() > part.len() && !went_on && !goes_on(part)
}

impl Manner {
    /// Words in the usual manner as this reader writes them: figures with the decimal mark, days in their order, and how far
    /// away a chart stood in the reader's unit. Whatever is shown goes through this; what is kept does not.
    ///
    /// ```
    /// use record::{DateOrder, DecimalMark, FarUnit, Manner};
    /// let reader = Manner { dates: DateOrder::MonthFirst, decimal: DecimalMark::Comma, far: FarUnit::Feet };
    /// assert_eq!(
    ///     reader.in_words("+2.50, chosen on 4 March 2026 at a chart 2.5 m away"),
    ///     "+2,50, chosen on March 4, 2026 at a chart 8,2 ft away"
    /// );
    /// ```
    pub fn in_words(self, words: &str) -> String {
        let words = self
            .far
            .in_words_after(words, |before| matches!(before, "chart" | "Tafel"));
        self.decimal.in_words(&self.dates.in_words(&words))
    }

    /// A day as short as it can be without doubt: `25 Nov 2026`, `Nov 25, 2026`, `2026-11-25`.
    pub fn short_date(self, day: NaiveDate) -> String {
        self.day_of(day, days::short_month(day))
    }

    /// A day: `25 November 2026`, `November 25, 2026`, `2026-11-25`.
    pub fn date(self, day: NaiveDate) -> String {
        self.day_of(day, days::month(day))
    }

    fn day_of(self, day: NaiveDate, month: &str) -> String {
        match self.dates {
            DateOrder::DayFirst => say::day_first(&day.day(), &month, &day.year()),
            DateOrder::MonthFirst => say::month_first(&month, &day.day(), &day.year()),
            DateOrder::YearFirst => day.to_string(),
        }
    }

    /// A day of this year with its weekday: `Wednesday 25 November`.
    pub fn weekday(self, day: NaiveDate) -> String {
        let (weekday, month) = (days::weekday(day), days::month(day));
        match self.dates {
            DateOrder::DayFirst => say::weekday_day_first(&weekday, &day.day(), &month),
            DateOrder::MonthFirst => say::weekday_month_first(&weekday, &month, &day.day()),
            DateOrder::YearFirst => format!("{weekday} {day}"),
        }
    }

    /// A month: `November 2026`, `2026-11`.
    pub fn month(self, day: NaiveDate) -> String {
        match self.dates {
            DateOrder::DayFirst | DateOrder::MonthFirst => {
                format!("{} {}", days::month(day), day.year())
            }
            DateOrder::YearFirst => day.format("%Y-%m").to_string(),
        }
    }

    /// A moment: `25 November 2026, 14:05`.
    pub fn moment(self, at: NaiveDateTime) -> String {
        format!("{}, {}", self.date(at.date()), at.format("%H:%M"))
    }
}

/// A day as it stands in words.
struct Written<'a> {
    day: NaiveDate,
    /// With three letters of the month.
    short: bool,
    /// Signs before the day, and behind the year.
    before: &'a str,
    after: &'a str,
}

impl<'a> Written<'a> {
    fn read(day: &'a str, month: &str, year: &'a str) -> Option<Self> {
        let number = day.trim_start_matches(|sign: char| !sign.is_alphanumeric());
        let before = &day[..day.len() - number.len()];
        let (year, after) = year.split_at_checked(4)?;
        let goes_on = after.starts_with(char::is_alphanumeric);
        // A German day has a dot behind its number.
        let number = number.strip_suffix('.').unwrap_or(number);
        if goes_on || number.len() > 2 || !year.bytes().all(|byte| byte.is_ascii_digit()) {
            return None;
        }
        let (month, short) = days::read_month(month)?;
        let day = NaiveDate::from_ymd_opt(year.parse().ok()?, month, number.parse().ok()?)?;
        Some(Self {
            day,
            short,
            before,
            after,
        })
    }
}
