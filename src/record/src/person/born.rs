//! What is known of a birth.

use ::words::record::person as say;
use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Serialize};

use crate::check::FieldError;
use crate::summary::Age;

/// What is known of a person's birth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Born {
    /// The date itself.
    Date(NaiveDate),
    /// Only an age, as somebody stated it.
    Stated {
        /// The age in whole years.
        years: u16,
        /// The year in which it was stated, so that the age can grow.
        in_year: i32,
    },
}

/// Ages above this are taken for a slip of the year. Common practice, no source.
const OLDEST: u16 = 125;

impl Born {
    /// The age on a day: exact from a date, about from a stated age. Nothing when `on` lies before the birth.
    pub fn age_on(&self, on: NaiveDate) -> Option<Age> {
        match *self {
            Self::Date(born) => Some(Age {
                years: u16::try_from(on.years_since(born)?).ok()?,
                exact: true,
            }),
            Self::Stated { years, in_year } => {
                let grown = i32::from(years).checked_add(on.year().checked_sub(in_year)?)?;
                Some(Age {
                    years: u16::try_from(grown).ok()?,
                    exact: false,
                })
            }
        }
    }

    /// What can't be of it, given today's date.
    pub(super) fn check(self, today: NaiveDate) -> Vec<FieldError> {
        let mut found = Vec::new();
        let mut say = |sentence: String| found.push(FieldError::new("born", sentence));
        match self {
            Self::Date(date) if date > today => {
                say(say::born_in_future().to_owned());
            }
            Self::Stated { in_year, .. } if in_year > today.year() => {
                say(say::stated_in_future().to_owned());
            }
            _ => {}
        }
        if self.age_on(today).is_some_and(|age| age.years > OLDEST) {
            say(say::too_old(&OLDEST));
        }
        found
    }
}
