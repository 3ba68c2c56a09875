//! A round: the people to be visited on a day, in their order.

use ::words::record::rounds as say;
use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::{Notice, Visit};
use crate::body::Body;
use crate::check::{Checks, FieldError, blank};
use crate::entry::Entry;
use crate::ids::{PersonId, PlaceId, RoundId};
use crate::lane::{Heads, Lane, Version};

/// Everything planned for a round. A change writes a whole new version.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RoundDetails {
    /// The day, as the calendar at the place shows it.
    pub date: NaiveDate,
    /// Where; none for a day of several addresses.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<PlaceId>,
    /// Who, in the order of the day. Nobody stands here twice.
    #[serde(default)]
    pub people: Vec<PersonId>,
    /// Notice to a local body, where one wants it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notice: Option<Notice>,
    /// Anything to know on the day.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Whether it does not take place.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub called_off: bool,
}

impl RoundDetails {
    /// A round without anybody yet.
    pub const fn new(date: NaiveDate, place: Option<PlaceId>) -> Self {
        Self {
            date,
            place,
            people: Vec::new(),
            notice: None,
            note: String::new(),
            called_off: false,
        }
    }

    /// One plain sentence for each field that can't be kept as it is.
    pub fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        if let Some(notice) = &self.notice
            && blank(&notice.to)
        {
            checks.say("notice.to", say::ask_notice_to());
        }
        checks.done()
    }

    /// Puts people at the end, those who are not on the round yet.
    pub fn add(&mut self, people: impl IntoIterator<Item = PersonId>) {
        for person in people {
            if !self.people.contains(&person) {
                self.people.push(person);
            }
        }
    }

    /// Takes a person off.
    pub fn remove(&mut self, person: &PersonId) {
        self.people.retain(|other| other != person);
    }

    /// Moves a person to a place in the order, counted from 0; beyond the end is the end. Somebody who is not on the round stays
    /// off it.
    pub fn move_to(&mut self, person: &PersonId, to: usize) {
        if let Some(from) = self.people.iter().position(|other| other == person) {
            let person = self.people.remove(from);
            self.people.insert(to.min(self.people.len()), person);
        }
    }

    /// Nobody twice: the first mention stands.
    pub(crate) fn each_once(mut self) -> Self {
        let mut met = BTreeSet::new();
        self.people.retain(|person| met.insert(*person));
        self
    }
}

/// A round as the entries tell it.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    pub(crate) id: RoundId,
    pub(crate) lane: Lane,
    pub(crate) visits: BTreeMap<PersonId, Lane>,
    pub(crate) packed: Lane,
}

impl Round {
    /// The round's name on the wire.
    pub const fn id(&self) -> RoundId {
        self.id
    }

    /// The versions that nothing has replaced: one, or several that nobody has settled.
    pub fn versions(&self) -> Heads<'_, RoundDetails> {
        heads(&self.lane, |body| match body {
            Body::Round(written) => Some(&written.details),
            _ => None,
        })
    }

    /// The details to show: of several unsettled versions the one written last.
    ///
    /// # Panics
    /// Never: the fold knows no round without details, and a version is replaced only by another.
    pub fn details(&self) -> &RoundDetails {
        let latest = self.versions().latest();
        latest
            .expect("a round is on record from the first version of its details on")
            .value
    }

    /// The details that everybody on any of several unsettled versions has a place in: the last one's, and the others' people
    /// after its own.
    pub fn together(&self) -> RoundDetails {
        let mut together = self.details().clone();
        for version in self.versions().versions() {
            together.add(version.value.people.iter().copied());
        }
        together
    }

    /// What was last written down of a person's visit.
    pub fn visit(&self, person: &PersonId) -> Option<Version<'_, Visit>> {
        let visits = heads(self.visits.get(person)?, |body| match body {
            Body::Visit(written) => Some(&written.visit),
            _ => None,
        });
        visits.latest()
    }

    /// Everything ever written down of a person's visit, in order of the entries' ids.
    pub(crate) fn marks_of(&self, person: &PersonId) -> Vec<Version<'_, Visit>> {
        let all = self.visits.get(person).into_iter().flat_map(Lane::all);
        all.filter_map(|entry| match &entry.body {
            Body::Visit(written) => Some(Version {
                entry,
                value: &written.visit,
            }),
            _ => None,
        })
        .collect()
    }

    /// What of the kit is in the bag, in the words of the kit list.
    pub fn packed(&self) -> &[String] {
        let packed = heads(&self.packed, |body| match body {
            Body::Packed(written) => Some(&written.items),
            _ => None,
        });
        packed.latest().map_or(&[], |version| version.value)
    }
}

pub(super) fn heads<T>(lane: &Lane, pick: fn(&Body) -> Option<&T>) -> Heads<'_, T> {
    let version = |entry| {
        let entry: &Entry = entry;
        let value = pick(&entry.body)?;
        Some(Version { entry, value })
    };
    Heads::from_versions(lane.heads().filter_map(version).collect())
}
