//! A birth as somebody types it: `12.3.1938`, `12/3/38`, `1938-03-12`, `12 March 1938`, `12. März 1938`, `12031938`, or the year alone.

use chrono::{Datelike, NaiveDate};

use crate::manner::month_named;
use crate::person::Born;

/// What a typed birth says. What is left out fits anything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Like {
    day: Option<u32>,
    month: Option<u32>,
    year: Option<Year>,
    /// Whether the month was taken to stand before the day.
    month_first: bool,
}

/// A year in four figures, or the last two of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Year {
    Whole(i32),
    LastTwo(i32),
}

/// A typed birth, with every way to take it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Birth(Vec<Like>);

/// How well a birth goes with what was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// The age was stated, and goes with the year.
    Stated,
    /// The date, if the month stands first.
    MonthFirst,
    /// The date, or as much of it as was typed.
    Date,
}

impl Birth {
    /// Reads one piece without blanks; nothing where it is no birth.
    pub fn read(piece: &str) -> Option<Self> {
        let parts: Vec<&str> = piece.split(['.', '/', '-']).collect();
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        match parts.as_slice() {
            [only] if only.len() == piece.len() => Self::of_one(only),
            [_] => None,
            parts => Self::of_parts(parts),
        }
    }

    /// The same from figures and months that stand apart: `12`, `March`, `1938`.
    pub fn of_parts(parts: &[&str]) -> Option<Self> {
        let ways = match *parts {
            [year, month, day] if year.len() == 4 => {
                vec![Like::new(Some(day), Some(month), Some(year), false)]
            }
            [one, other, year] => vec![
                Like::new(Some(one), Some(other), Some(year), false),
                Like::new(Some(other), Some(one), Some(year), true),
            ],
            [month, year] if year.len() == 4 => {
                vec![Like::new(None, Some(month), Some(year), false)]
            }
            [one, other] => vec![
                Like::new(Some(one), Some(other), None, false),
                Like::new(Some(other), Some(one), None, true),
            ],
            _ => return None,
        };
        let ways: Vec<Like> = ways.into_iter().flatten().collect();
        (!ways.is_empty()).then_some(Self(ways))
    }

    /// A year of four figures, or a date of eight without signs between them.
    fn of_one(figures: &str) -> Option<Self> {
        if !figures.bytes().all(|figure| figure.is_ascii_digit()) {
            return None;
        }
        match figures.len() {
            4 => {
                let year = Like::new(None, None, Some(figures), false)?;
                Some(Self(vec![year]))
            }
            8 => {
                let at = |from: usize, to: usize| figures.get(from..to).unwrap_or_default();
                let ways = [
                    Like::new(Some(at(0, 2)), Some(at(2, 4)), Some(at(4, 8)), false),
                    Like::new(Some(at(2, 4)), Some(at(0, 2)), Some(at(4, 8)), true),
                    Like::new(Some(at(6, 8)), Some(at(4, 6)), Some(at(0, 4)), false),
                ];
                let ways: Vec<Like> = ways.into_iter().flatten().collect();
                (!ways.is_empty()).then_some(Self(ways))
            }
            _ => None,
        }
    }

    /// How well a birth goes with it; nothing where it does not.
    pub fn fits(&self, born: Born) -> Option<Fit> {
        self.0.iter().filter_map(|like| like.fits(born)).max()
    }
}

impl Like {
    /// What was given and can't be read spoils the whole; what was not given does not.
    fn new(
        day: Option<&str>,
        month: Option<&str>,
        year: Option<&str>,
        month_first: bool,
    ) -> Option<Self> {
        Some(Self {
            day: match day {
                Some(day) => Some(day_in(day)?),
                None => None,
            },
            month: match month {
                Some(month) => Some(month_in(month)?),
                None => None,
            },
            year: match year {
                Some(year) => Some(year_in(year)?),
                None => None,
            },
            month_first,
        })
    }

    fn fits(&self, born: Born) -> Option<Fit> {
        match born {
            Born::Date(date) => self.fits_date(date).then_some(if self.month_first {
                Fit::MonthFirst
            } else {
                Fit::Date
            }),
            Born::Stated { years, in_year } => {
                let about = in_year.checked_sub(i32::from(years))?;
                // Who is 86 some time in 2026 was born in 1940 or the year before.
                let near = [about, about.checked_sub(1)?];
                let year = self.year?;
                near.into_iter()
                    .any(|about| year.is(about))
                    .then_some(Fit::Stated)
            }
        }
    }

    fn fits_date(&self, date: NaiveDate) -> bool {
        self.day.is_none_or(|day| day == date.day())
            && self.month.is_none_or(|month| month == date.month())
            && self.year.is_none_or(|year| year.is(date.year()))
    }
}

impl Year {
    fn is(self, year: i32) -> bool {
        match self {
            Self::Whole(whole) => whole == year,
            Self::LastTwo(two) => two == year.rem_euclid(100),
        }
    }
}

fn day_in(text: &str) -> Option<u32> {
    let figures = ["st", "nd", "rd", "th"]
        .into_iter()
        .find_map(|end| text.strip_suffix(end))
        .unwrap_or(text);
    number(figures, 2).filter(|day| (1..=31).contains(day))
}

/// A month by its number, or its name in any language.
fn month_in(text: &str) -> Option<u32> {
    match number(text, 2) {
        Some(month) => (1..=12).contains(&month).then_some(month),
        None => month_named(text),
    }
}

fn year_in(text: &str) -> Option<Year> {
    let year = i32::try_from(number(text, 4)?).ok()?;
    match text.len() {
        2 => Some(Year::LastTwo(year)),
        // Nobody who is met was born before, and a room of four figures is no year.
        4 if (1850..2200).contains(&year) => Some(Year::Whole(year)),
        _ => None,
    }
}

fn number(text: &str, figures: usize) -> Option<u32> {
    let plain =
        (1..=figures).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit());
    plain.then(|| text.parse().ok()).flatten()
}
