//! Which visits are wanted.

use chrono::NaiveDate;
use record::Story;

use super::{Outcome, Visit};

/// Which visits are wanted; what is left out asks nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Filter {
    /// From this day on.
    pub from: Option<NaiveDate>,
    /// Up to this day, itself among them.
    pub through: Option<NaiveDate>,
    /// At this place.
    pub place: Option<String>,
    /// By this clinician, as they sign.
    pub clinician: Option<String>,
    /// With this outcome.
    pub outcome: Option<Outcome>,
}

impl Filter {
    /// Whether a visit is wanted. Capitals do not matter.
    pub fn wants(&self, visit: &Visit) -> bool {
        let same = |wanted: &Option<String>, found: &str| {
            let wanted = wanted.as_ref().map(|wanted| wanted.trim().to_lowercase());
            wanted.is_none_or(|wanted| wanted == found.to_lowercase())
        };
        self.from.is_none_or(|from| visit.date >= from)
            && self.through.is_none_or(|through| visit.date <= through)
            && same(&self.place, &visit.place)
            && same(&self.clinician, &visit.clinician)
            && self.outcome.is_none_or(|outcome| outcome == visit.outcome)
    }
}

/// The visits that are wanted, in the order of [`Visit::order`].
pub fn visits(story: &Story, filter: &Filter) -> Vec<Visit> {
    let mut visits: Vec<Visit> = wanted(story, filter).collect();
    visits.sort_by(|one, other| one.order().cmp(&other.order()));
    visits
}

/// The visits that are wanted, in no particular order. Findings that were taken from elsewhere are no visits.
pub fn wanted<'a>(story: &'a Story, filter: &'a Filter) -> impl Iterator<Item = Visit> + 'a {
    let people = story.people().into_iter();
    let exams = people.flat_map(|person| {
        let exams = story.exams_of(&person.id()).into_iter();
        let ours = exams.filter(|exam| !exam.is_from_elsewhere());
        ours.map(move |exam| Visit::of(person, exam))
    });
    exams.filter(|visit| filter.wants(visit))
}
