//! Visits by home and week, with what came of them.

use ::words::papers::log as say;
use std::collections::BTreeMap;

use chrono::{Datelike, Days, NaiveDate};

use super::{Outcome, Visit};

/// The visits of one home, week by week.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WeeksAt {
    /// The home.
    pub place: String,
    /// Every week from the first to the last of all visits, none left out.
    pub weeks: Vec<Week>,
}

/// One week.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Week {
    /// Its Monday (ISO 8601).
    pub monday: NaiveDate,
    /// How many visits came to each outcome, in the order of [`Outcome::ALL`].
    pub outcomes: [u32; 4],
}

impl Week {
    /// All visits of the week.
    pub fn visits(&self) -> u32 {
        self.outcomes.iter().sum()
    }
}

impl WeeksAt {
    /// All visits of the home.
    pub fn visits(&self) -> u32 {
        self.weeks.iter().map(Week::visits).sum()
    }

    /// How many visits, and how dense: `12 visits, at most 3 a week`.
    pub fn in_words(&self) -> String {
        say::visits_a_week(self.visits() as usize, &self.most())
    }

    /// The most visits of any week.
    pub fn most(&self) -> u32 {
        self.weeks.iter().map(Week::visits).max().unwrap_or(0)
    }
}

/// Visits by home and week; the homes with most visits first.
pub fn weeks(visits: &[Visit]) -> Vec<WeeksAt> {
    let mondays = mondays(visits);
    let mut counts: BTreeMap<&str, BTreeMap<NaiveDate, [u32; 4]>> = BTreeMap::new();
    for visit in visits {
        let at = counts.entry(&visit.place).or_default();
        at.entry(monday(visit.date)).or_default()[place(visit.outcome)] += 1;
    }
    let of_week = |counted: &BTreeMap<NaiveDate, [u32; 4]>, monday: NaiveDate| Week {
        monday,
        outcomes: counted.get(&monday).copied().unwrap_or_default(),
    };
    let homes = counts.iter().map(|(place, counted)| WeeksAt {
        place: (*place).to_owned(),
        weeks: mondays
            .iter()
            .map(|monday| of_week(counted, *monday))
            .collect(),
    });
    let mut homes: Vec<WeeksAt> = homes.collect();
    homes.sort_by_key(|home| std::cmp::Reverse(home.visits()));
    homes
}

/// Every Monday from the first visit's to the last one's.
fn mondays(visits: &[Visit]) -> Vec<NaiveDate> {
    let days = || visits.iter().map(|visit| visit.date);
    let (Some(first), Some(last)) = (days().min(), days().max()) else {
        return Vec::new();
    };
    let following = |day: &NaiveDate| day.checked_add_days(Days::new(7));
    let all = std::iter::successors(Some(monday(first)), following);
    all.take_while(|monday| *monday <= last).collect()
}

fn monday(day: NaiveDate) -> NaiveDate {
    let since = day.weekday().num_days_from_monday();
    // Only in the first week that the calendar knows is there no Monday before.
    day.checked_sub_days(Days::new(since.into())).unwrap_or(day)
}

fn place(outcome: Outcome) -> usize {
    let found = Outcome::ALL.iter().position(|other| *other == outcome);
    found.expect("every outcome stands among all of them")
}
