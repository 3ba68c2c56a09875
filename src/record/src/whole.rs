//! Everything that is on record of one person, for whoever asks for all of it: the person, or whoever keeps the records next.

use std::collections::BTreeMap;

use chrono::{Months, NaiveDate};

use crate::exam::Exam;
use crate::ids::PersonId;
use crate::lane::{Lane, Version};
use crate::person::{Joined, Person, PersonDetails};
use crate::rounds::{Place, Round, Visit};
use crate::stamp::Stamp;
use crate::story::Story;
use crate::story_so_far::Local;

/// Everything on record of one person, oldest first. Where several records are one person, what stands in all of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Whole<'a> {
    /// Who.
    pub person: &'a Person,
    /// Every version of the details ever written.
    pub details: Vec<Version<'a, PersonDetails>>,
    /// What says that several records are one person.
    pub joined: Vec<Joined<'a>>,
    /// The exams, those from elsewhere among them.
    pub exams: Vec<&'a Exam>,
    /// The rounds on which the person was to be visited.
    pub rounds: Vec<OnRound<'a>>,
}

/// A round on which a person was to be visited, or was marked.
#[derive(Clone, Debug, PartialEq)]
pub struct OnRound<'a> {
    /// The round.
    pub round: &'a Round,
    /// Where it was, if at one place.
    pub place: Option<&'a Place>,
    /// Everything written down at the door.
    pub marks: Vec<Version<'a, Visit>>,
}

/// Somebody of whom nothing was written down for longer than records are kept here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PastKeeping {
    /// Who.
    pub person: PersonId,
    /// The day of the last thing that was found or written.
    pub last: NaiveDate,
}

impl Story {
    /// Everything on record of a person; nothing of somebody who is not.
    pub fn whole(&self, person: &PersonId) -> Option<Whole<'_>> {
        let shown = self.person(person)?;
        let names: Vec<PersonId> = self.joins.shown_as(shown.id()).collect();
        let people = names.iter().filter_map(|name| self.people.get(name));
        let mut details: Vec<_> = people.flat_map(Person::every_version).collect();
        details.sort_by_key(|version| (version.entry.stamp, version.entry.id));
        let mut exams = self.exams_of(person);
        exams.reverse();
        let rounds = self.rounds.values();
        let mut rounds: Vec<_> = rounds
            .filter_map(|round| self.on_round(round, &names))
            .collect();
        rounds.sort_by_key(|on| (on.round.details().date, on.round.id()));
        Some(Whole {
            person: shown,
            details,
            joined: self.joined(person),
            exams,
            rounds,
        })
    }

    fn on_round<'a>(&'a self, round: &'a Round, names: &[PersonId]) -> Option<OnRound<'a>> {
        let details = round.details();
        let planned = names.iter().any(|name| details.people.contains(name));
        let mut marks: Vec<_> = names.iter().flat_map(|name| round.marks_of(name)).collect();
        marks.sort_by_key(|mark| (mark.entry.stamp, mark.entry.id));
        (planned || !marks.is_empty()).then(|| OnRound {
            round,
            place: details.place.and_then(|place| self.place(&place)),
            marks,
        })
    }

    /// Of whom nothing was found or written for so many years, the longest ago first. Nothing is done about them: whether a
    /// record may go, somebody has to decide who knows the local rules. A stamp has no time zone: `local` gives it one.
    pub fn past_keeping(&self, years: f64, today: NaiveDate, local: Local<'_>) -> Vec<PastKeeping> {
        let months = Months::new((years.max(0.0) * 12.0).round() as u32);
        let Some(before) = today.checked_sub_months(months) else {
            return Vec::new();
        };
        let last = self.last_words(local).into_iter();
        let past = last.filter(|(person, last)| *last < before && self.person(person).is_some());
        let mut past: Vec<_> = past
            .map(|(person, last)| PastKeeping { person, last })
            .collect();
        past.sort_by_key(|past| (past.last, past.person));
        past
    }

    /// The day of the last thing that was found or written of each person, by the name that is shown.
    fn last_words(&self, local: Local<'_>) -> BTreeMap<PersonId, NaiveDate> {
        let people = self.people.values();
        let details = people.map(|person| (person.id(), last_of(&person.lane)));
        let marks = self.rounds.values().flat_map(|round| round.visits.iter());
        let marks = marks.map(|(person, lane)| (*person, last_of(lane)));
        let exams = self.exams.values();
        let written = exams.map(|exam| (exam.person(), exam.last_written()));
        let stamped = details.chain(marks).chain(written);
        let days = stamped.filter_map(|(person, last)| Some((person, local(last?).date())));
        let exams = self.exams.values();
        let found = exams.map(|exam| (exam.person(), exam.opened_on()));
        let mut last = BTreeMap::new();
        for (person, day) in days.chain(found) {
            let known = last.entry(self.shown_for(person)).or_insert(day);
            *known = day.max(*known);
        }
        last
    }
}

fn last_of(lane: &Lane) -> Option<Stamp> {
    lane.all().map(|entry| entry.stamp).max()
}

impl Exam {
    /// When the last entry of it was written.
    fn last_written(&self) -> Option<Stamp> {
        let lanes = self.sections.values();
        let lanes = lanes.chain([&self.signatures, &self.answers]);
        lanes.filter_map(last_of).chain([self.opening.stamp]).max()
    }
}
