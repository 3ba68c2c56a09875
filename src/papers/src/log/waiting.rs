//! Who is still to be seen again: how many people each month, and how many should have been seen already.

use chrono::{Datelike, Months, NaiveDate};
use record::Story;

use super::Visit;

/// People who are to be seen again.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Waiting {
    /// Whose day has passed.
    pub overdue: u32,
    /// From this month on, month by month, none left out.
    pub months: Vec<Month>,
    /// After the last of those months.
    pub later: u32,
}

/// One month.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Month {
    /// Its first day.
    pub first: NaiveDate,
    /// How many people are to be seen in it.
    pub people: u32,
}

/// How many months are told apart.
const AHEAD: u32 = 12;

impl Waiting {
    /// Everybody who waits.
    pub fn people(&self) -> u32 {
        let ahead: u32 = self.months.iter().map(|month| month.people).sum();
        self.overdue + ahead + self.later
    }
}

/// Who of the people seen in these visits is to be seen again, by what was decided last about each ([`Story::due`]).
pub fn waiting(story: &Story, visits: &[Visit], today: NaiveDate) -> Waiting {
    let mut people: Vec<_> = visits
        .iter()
        .filter_map(|visit| Some(story.person(&story.exam(&visit.exam)?.person())?.id()))
        .collect();
    people.sort_unstable();
    people.dedup();
    let dues = people.iter().filter_map(|person| story.due(person));
    let mut waiting = Waiting {
        months: months(today),
        ..Waiting::default()
    };
    for due in dues {
        if due.on < today {
            waiting.overdue += 1;
        } else {
            waiting.count(due.on);
        }
    }
    waiting
}

impl Waiting {
    fn count(&mut self, on: NaiveDate) {
        let same = |month: &&mut Month| {
            (month.first.year(), month.first.month()) == (on.year(), on.month())
        };
        match self.months.iter_mut().find(same) {
            Some(month) => month.people += 1,
            None => self.later += 1,
        }
    }
}

fn months(today: NaiveDate) -> Vec<Month> {
    let first = today.with_day(1).unwrap_or(today);
    let each = (0..AHEAD).filter_map(|ahead| first.checked_add_months(Months::new(ahead)));
    each.map(|first| Month { first, people: 0 }).collect()
}
