//! A person's story so far: what every exam found of each eye, measure by measure over the years, and what happened
//! between.
//!
//! A measure is followed through all exams, whether they have it or not: what was not found is a gap, never a zero, and
//! is not bridged. What could only be said in a category (an eye that counts fingers) is told, and lies beyond the scale.
//! Of a section with two unsettled versions nothing is taken.
//!
//! The days are those of the examinations. Only an amendment has a time of its own: see [`Local`].

mod acuity;
mod cup;
mod events;
mod measure;
mod pressure;
mod refraction;
mod timeline;

pub use events::{Event, Happened};
pub use measure::Measure;
pub use timeline::Moment;

use ::words::record::story as say;
use chrono::{Datelike, NaiveDate, NaiveDateTime};

use crate::exam::Exam;
use crate::finding::{Eye, Eyes};
use crate::ids::{ExamId, PersonId};
use crate::lane::Heads;
use crate::sections::Part;
use crate::stamp::Stamp;
use crate::story::Story;

/// What a clock showed where the tablet is when a stamp was made.
pub type Local<'a> = &'a dyn Fn(Stamp) -> NaiveDateTime;

/// Everything that is followed, and everything that happened.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StorySoFar {
    /// Every exam, oldest first.
    pub exams: Vec<(ExamId, NaiveDate)>,
    /// Each measure of which anything was found; one point for each exam, in the order of [`StorySoFar::exams`].
    pub followed: Vec<Followed>,
    /// What happened, oldest first.
    pub events: Vec<Event>,
}

/// One measure through all exams.
#[derive(Clone, Debug, PartialEq)]
pub struct Followed {
    /// What is measured.
    pub measure: Measure,
    /// What each exam found, oldest first.
    pub points: Vec<Eyes<Noted>>,
}

/// What one exam found of one eye.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Noted {
    /// Where it stands on the scale.
    pub stands: Stands,
    /// What was found with its unit, or why nothing was: `+3.00 D`, `not done: asleep`. Empty where it is blank.
    pub words: String,
    /// How it was obtained: `chosen by the person`, `rebound, 14:05`. Empty where nothing was found.
    pub how: String,
}

/// Where a finding stands on its measure's scale.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Stands {
    /// In the measure's unit.
    Number(f64),
    /// Found, and worse than the scale can say.
    Beyond,
    /// Not found.
    #[default]
    Missing,
}

impl Noted {
    fn found(value: f64, words: String, how: String) -> Self {
        Self {
            stands: Stands::Number(value),
            words,
            how,
        }
    }

    /// Nothing, with the reason where there is one.
    fn missing(why: Option<String>) -> Self {
        Self {
            words: why.unwrap_or_default(),
            ..Self::default()
        }
    }

    /// Whether anything was found.
    pub fn is_found(&self) -> bool {
        self.stands != Stands::Missing
    }
}

/// The settled version of a section; of two, the reason why nothing is taken.
fn settled<'a, T: Part>(heads: &Heads<'a, T>) -> Result<Option<&'a T>, String> {
    match heads {
        Heads::Several(_) => Err(say::unsettled().to_owned()),
        heads => Ok(heads.settled().map(|version| version.value)),
    }
}

impl Story {
    /// What is known of a person over the years. Empty for somebody who is not on record.
    pub fn story_so_far(&self, person: &PersonId, local: Local<'_>) -> StorySoFar {
        let mut exams = self.exams_of(person);
        exams.reverse();
        let measures = Measure::through(&exams);
        let followed = measures
            .into_iter()
            .map(|measure| Followed::through(&exams, measure));
        StorySoFar {
            exams: exams
                .iter()
                .map(|exam| (exam.id(), exam.opened_on()))
                .collect(),
            followed: followed.filter(Followed::has_any).collect(),
            events: events::all(&exams, local),
        }
    }
}

/// How something was obtained in one exam, of each eye; empty where nothing was found of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Obtained {
    /// What it is of: `final lens`, `pressure, rebound`.
    pub of: String,
    /// How.
    pub how: Eyes<String>,
}

impl StorySoFar {
    /// How the values of one exam were obtained, each thing once: three measures of one lens are said together.
    pub fn obtained(&self, at: usize) -> Vec<Obtained> {
        let mut all: Vec<Obtained> = Vec::new();
        for followed in &self.followed {
            let of = followed.measure.comes_from();
            let Some(eyes) = followed.points.get(at) else {
                continue;
            };
            let how = eyes.map(|noted| noted.how.clone());
            let any = !how.right.is_empty() || !how.left.is_empty();
            if any && all.last().is_none_or(|last| last.of != of) {
                all.push(Obtained { of, how });
            }
        }
        all
    }
}

impl Followed {
    fn through(exams: &[&Exam], measure: Measure) -> Self {
        let of = |exam: &Exam, eye| measure.of(exam, eye);
        let points = exams.iter().map(|exam| Eyes {
            right: of(exam, Eye::Right),
            left: of(exam, Eye::Left),
        });
        Self {
            points: points.collect(),
            measure,
        }
    }

    fn has_any(&self) -> bool {
        let mut points = self.points.iter();
        points.any(|eyes| eyes.right.is_found() || eyes.left.is_found())
    }
}

/// A day as a year with its part that has passed, so that days can be laid on a line: 1 July 2026 is about 2026.5.
///
/// ```
/// use chrono::NaiveDate;
/// let new_year = NaiveDate::from_ymd_opt(2026, 1, 1).unwrap();
/// assert_eq!(record::in_years(new_year), 2026.0);
/// ```
pub fn in_years(day: NaiveDate) -> f64 {
    let long = if day.leap_year() { 366.0 } else { 365.0 };
    f64::from(day.year()) + f64::from(day.ordinal0()) / long
}
