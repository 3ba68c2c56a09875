//! Made-up people on made-up islands, with years of exams, from a seed.
//!
//! For looking around before anybody real is written down, and for tests that need a vault full of ordinary work. The same
//! seed and day give the same people. Everything is planned and signed as a practitioner's own work is
//! ([`record::Story`]); nothing here knows how it is kept.
//!
//! It is a crate of its own so that what is made up can't be reached from `record`, where what is true is written down.
//!
//! ```
//! use chrono::NaiveDate;
//! use demo::Demo;
//!
//! let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
//! let life = Demo::new(1, today).next().unwrap();
//! assert_eq!(life.entries, Demo::new(1, today).next().unwrap().entries);
//! assert!(life.entries.len() > 20);
//! ```

mod chance;
mod course;
mod desk;
mod eye;
mod names;
mod odd;
mod sections;
mod somebody;
mod visit;

pub use chance::Chance;
pub use course::Course;
pub use names::HOMES;

use chrono::NaiveDate;
use desk::Desk;
use odd::Odd;
use record::{Entry, PersonId};
use somebody::Somebody;

/// How many people there are.
pub const PEOPLE: usize = 60;

/// Who signs.
pub const EXAMINER: &str = "Maren Foxglove-Quay";

/// Made-up people, one life after the other.
#[derive(Clone, Debug)]
pub struct Demo {
    seed: u64,
    today: NaiveDate,
    scatter: f64,
    next: usize,
}

/// A person and everything that was written about them, in the order in which it was.
#[derive(Clone, Debug)]
pub struct Life {
    /// Who.
    pub person: PersonId,
    /// What becomes of their eyes.
    pub course: Course,
    /// What was written.
    pub entries: Vec<Entry>,
}

impl Demo {
    /// People whose exams lie before this day.
    pub const fn new(seed: u64, today: NaiveDate) -> Self {
        Self {
            seed,
            today,
            scatter: 1.0,
            next: 0,
        }
    }

    /// The same where every measurement finds just what is there: no two real ones do.
    #[must_use]
    pub const fn exact(mut self) -> Self {
        self.scatter = 0.0;
        self
    }
}

impl Iterator for Demo {
    type Item = Life;

    fn next(&mut self) -> Option<Life> {
        let place = self.next;
        if place >= PEOPLE {
            return None;
        }
        self.next += 1;
        let mut chance = Chance::of(self.seed, place);
        let mut somebody = Somebody::born(place, self.today, &mut chance);
        let mut found = chance.branch().scattered_by(self.scatter);
        let mut desk = Desk::new(chance.branch());
        let visits = somebody.visits(self.today);
        let first = visits.first().copied().unwrap_or_default();
        let person = desk.put_down(&somebody, first);
        let last = visits.len().saturating_sub(1);
        for (count, at) in visits.into_iter().enumerate() {
            if count > 0 {
                somebody.grow_older(&mut chance);
            }
            let odd = (count == last).then(|| Odd::of(place)).flatten();
            visit::visit(&mut desk, person, &mut somebody, at, odd, &mut found);
        }
        Some(Life {
            person,
            course: somebody.course,
            entries: desk.written,
        })
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let left = PEOPLE - self.next.min(PEOPLE);
        (left, Some(left))
    }
}

impl ExactSizeIterator for Demo {}
