//! Finding one's way among places and rounds.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use chrono::NaiveDate;

use super::place::plain;
use super::{Kit, Place, Round, Standing, VisitState, room_order, round::heads};
use crate::body::Body;
use crate::exam::Exam;
use crate::ids::{PersonId, PlaceId, RoundId};
use crate::person::Person;
use crate::story::Story;

/// Rounds by their day, seen from today.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Days<'a> {
    /// Today's; after them yesterday's where somebody was seen and somebody is still to be seen: past midnight the day goes on.
    pub at_hand: Vec<&'a Round>,
    /// Those to come, the next one first.
    pub to_come: Vec<&'a Round>,
    /// Those that are over or called off, the latest first.
    pub over: Vec<&'a Round>,
}

impl Story {
    /// Every place, by name.
    pub fn places(&self) -> Vec<&Place> {
        let mut places: Vec<_> = self.places.values().collect();
        places.sort_by_key(|place| (plain(&place.details().name), place.id()));
        places
    }

    /// One place.
    pub fn place(&self, id: &PlaceId) -> Option<&Place> {
        self.places.get(id)
    }

    /// The place that goes by a name, or went by it.
    pub fn place_called(&self, name: &str) -> Option<&Place> {
        let places = self.places();
        let now = places
            .iter()
            .find(|place| plain(&place.details().name) == plain(name));
        now.or_else(|| places.iter().find(|place| place.goes_by(name)))
            .copied()
    }

    /// The places that stand in people's details and were never written down as places: each in its first spelling, by name.
    pub fn places_in_words(&self) -> Vec<String> {
        let mut met = BTreeMap::new();
        for person in self.people() {
            let name = person.details().place.trim();
            met.entry(plain(name)).or_insert(name);
        }
        let named = met.into_values();
        named
            .filter(|name| !name.is_empty() && self.place_called(name).is_none())
            .map(str::to_owned)
            .collect()
    }

    /// Who lives at a place, by name.
    pub fn people_at<'a>(&'a self, place: &PlaceId) -> Vec<&'a Person> {
        let Some(place) = self.place(place) else {
            return Vec::new();
        };
        // Whoever lives together has the place written alike: each way to write it is compared once.
        let mut met = BTreeMap::new();
        let mut lives_there = |person: &'a Person| {
            let written = person.details().place.as_str();
            *met.entry(written).or_insert_with(|| place.goes_by(written))
        };
        let mut people = self.people();
        people.retain(|person| lives_there(person));
        people
    }

    /// One round.
    pub fn round(&self, id: &RoundId) -> Option<&Round> {
        self.rounds.get(id)
    }

    /// Every round by its day, seen from today.
    pub fn days(&self, today: NaiveDate) -> Days<'_> {
        let mut rounds: Vec<_> = self.rounds.values().collect();
        rounds.sort_by_key(|round| (Reverse(round.details().date), round.id()));
        let (at_hand, rest): (Vec<_>, Vec<_>) = rounds
            .into_iter()
            .partition(|round| self.is_at_hand(round, today));
        let (mut to_come, over): (Vec<_>, Vec<_>) = rest.into_iter().partition(|round| {
            let details = round.details();
            details.date > today && !details.called_off
        });
        to_come.reverse();
        Days {
            at_hand,
            to_come,
            over,
        }
    }

    fn is_at_hand(&self, round: &Round, today: NaiveDate) -> bool {
        let details = round.details();
        let yesterdays = details.date.succ_opt() == Some(today);
        let goes_on = || {
            let glance = self.glance(round);
            glance.seen + glance.under_way > 0 && glance.to_see + glance.under_way > 0
        };
        !details.called_off && (details.date == today || yesterdays && goes_on())
    }

    /// The people of a round, in its order. Somebody of whom nothing is on record here is left out.
    pub fn people_of(&self, round: &Round) -> Vec<&Person> {
        let people = round.details().people.iter();
        people.filter_map(|person| self.person(person)).collect()
    }

    /// How things stand with a person on a round. A signed exam is what counts; between an open one and a mark, the later.
    pub fn standing<'a>(&'a self, round: &'a Round, person: &PersonId) -> Standing<'a> {
        let mark = round
            .visit(person)
            .filter(|visit| visit.value.state != VisitState::ToSee);
        match (self.exam_on(round, person), mark) {
            (Some(exam), _) if exam.is_signed() => Standing::Seen(exam),
            (Some(exam), Some(mark)) if mark.entry.stamp > exam.opening.stamp => {
                Standing::Marked(mark.value)
            }
            (Some(exam), _) => Standing::UnderWay(exam),
            (None, Some(mark)) => Standing::Marked(mark.value),
            (None, None) => Standing::ToSee,
        }
    }

    /// The newest exam of a person that belongs to a round: of its day, or of the day after where the day went on past
    /// midnight, unless the person is on another round of that day.
    fn exam_on(&self, round: &Round, person: &PersonId) -> Option<&Exam> {
        let date = round.details().date;
        let after = date
            .succ_opt()
            .filter(|after| !self.visited_on(person, *after));
        let exams = self.exams_of(person).into_iter();
        let exams = exams.filter(|exam| !exam.is_from_elsewhere());
        let mut of_it =
            exams.filter(|exam| exam.opened_on() == date || Some(exam.opened_on()) == after);
        of_it.next()
    }

    fn visited_on(&self, person: &PersonId, date: NaiveDate) -> bool {
        self.rounds.values().any(|round| {
            let details = round.details();
            details.date == date && !details.called_off && details.people.contains(person)
        })
    }

    /// Whom to go to next: whose exam is open, then who is still to be seen, then who was asleep or out. In the round's order.
    pub fn next_on(&self, round: &Round) -> Option<PersonId> {
        let people = self.people_of(round).into_iter().map(Person::id);
        let ranked = people.filter_map(|person| {
            let rank = match self.standing(round, &person) {
                Standing::UnderWay(_) => 0,
                Standing::ToSee => 1,
                Standing::Marked(visit) if visit.state.knock_again() => 2,
                Standing::Marked(_) | Standing::Seen(_) => return None,
            };
            Some((rank, person))
        });
        ranked
            .min_by_key(|(rank, _)| *rank)
            .map(|(_, person)| person)
    }

    /// People in the order in which one walks past their doors: by unit, then by room, then by name.
    pub fn by_room(&self, place: Option<PlaceId>, people: &[PersonId]) -> Vec<PersonId> {
        let units = place
            .and_then(|place| self.place(&place))
            .map(Place::details);
        let mut known: Vec<_> = people
            .iter()
            .filter_map(|person| {
                let details = self.person(person)?.details();
                let unit = units.and_then(|place| place.unit_of(&details.room));
                Some((unit.unwrap_or(usize::MAX), details, *person))
            })
            .collect();
        known.sort_by(|(unit, one, id), (other_unit, other, other_id)| {
            unit.cmp(other_unit)
                .then_with(|| room_order(&one.room, &other.room))
                .then_with(|| {
                    (&one.name.family, &one.name.given)
                        .cmp(&(&other.name.family, &other.name.given))
                })
                .then_with(|| id.cmp(other_id))
        });
        known.into_iter().map(|(_, _, person)| person).collect()
    }

    /// The kit list: of several unsettled versions the one written last.
    pub fn kit(&self) -> Kit {
        let lists = heads(&self.kit, |body| match body {
            Body::Kit(kit) => Some(kit),
            _ => None,
        });
        lists
            .latest()
            .map(|version| version.value.clone())
            .unwrap_or_default()
    }
}
