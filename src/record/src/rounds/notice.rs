//! Notice to a local body, where local rules want one before a visit.
//!
//! Who wants to know, and how long before, differs from region to region: the words are the examiner's, and so is the day of the
//! reminder.

use ::words::record::rounds as say;
use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

/// To whom notice of a round is given, and whether it was.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Notice {
    /// To whom.
    pub to: String,
    /// What was said or sent, or a number that came back.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub words: String,
    /// On which day; none while it has not been given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub given_on: Option<NaiveDate>,
    /// From which day on to be reminded; at once where none is named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub remind_on: Option<NaiveDate>,
}

impl Notice {
    /// What to be reminded of today: nothing once the notice is given, and nothing before the day that was named.
    pub fn reminder(&self, today: NaiveDate) -> Option<String> {
        let early = self.remind_on.is_some_and(|day| day > today);
        if self.given_on.is_some() || early || self.to.trim().is_empty() {
            return None;
        }
        Some(say::notice_not_given(&self.to.trim()))
    }
}
