//! Two records of one person: said to be the same, and taken back where that was a mistake.
//!
//! Nothing is merged in what is written down. An entry says that two names on record are one person and whose details hold;
//! another takes it back. While it stands, the fold shows one person, with the exams of both; once it is taken back it
//! shows two again, each with its own.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::Families;
use crate::body::Body;
use crate::entry::Entry;
use crate::error::RecordError;
use crate::ids::{EntryId, PersonId};
use crate::lane::Lane;
use crate::plan::Planned;
use crate::story::Story;

/// Two names on record are one person.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Same {
    /// Whose details hold.
    pub kept: PersonId,
    /// Who is the same person.
    pub other: PersonId,
    /// How that was made sure of, in words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub why: String,
}

/// That was a mistake: they are two.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Apart {
    /// The entry that is taken back.
    pub same: EntryId,
    /// Why, in words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub why: String,
}

/// A statement that two are one, which stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joined<'a> {
    /// The entry: who said it and when. Taking it back names this.
    pub entry: &'a Entry,
    /// What it says.
    pub same: &'a Same,
}

/// Every such statement, and who stands for whom because of those that stand.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Joins {
    made: BTreeMap<EntryId, Arc<Entry>>,
    taken_back: BTreeMap<EntryId, BTreeMap<EntryId, Arc<Entry>>>,
    /// Everybody who is the same as somebody, and who is shown for them.
    shown_for: BTreeMap<PersonId, PersonId>,
}

impl Joins {
    /// Takes an entry of either kind.
    pub fn take(&mut self, entry: Entry) {
        let (id, entry) = (entry.id, Arc::new(entry));
        match &entry.body {
            Body::Same(_) => {
                self.made.insert(id, entry);
            }
            Body::Apart(apart) => {
                let same = apart.same;
                self.taken_back.entry(same).or_default().insert(id, entry);
            }
            _ => return,
        }
        self.shown_for = self.reckoned();
    }

    /// The statements that stand, oldest first.
    pub fn standing(&self) -> Vec<Joined<'_>> {
        let standing = self.made.values();
        let mut standing: Vec<Joined<'_>> = standing
            .filter(|entry| !self.taken_back.contains_key(&entry.id))
            .filter_map(|entry| joined(entry))
            .collect();
        standing.sort_by_key(|joined| (joined.entry.stamp, joined.entry.id));
        standing
    }

    /// Who is shown for somebody: themselves, unless they are the same as somebody else.
    pub fn shown_for(&self, person: PersonId) -> PersonId {
        self.shown_for.get(&person).copied().unwrap_or(person)
    }

    /// Everybody who is shown as this person, who must be one that is shown.
    pub fn shown_as(&self, person: PersonId) -> impl Iterator<Item = PersonId> + '_ {
        let others = self.shown_for.iter();
        let others = others.filter(move |(other, shown)| **shown == person && **other != person);
        std::iter::once(person).chain(others.map(|(other, _)| *other))
    }

    fn reckoned(&self) -> BTreeMap<PersonId, PersonId> {
        let standing = self.standing();
        let mut families = Families::default();
        for Joined { same, .. } in &standing {
            families.join(same);
        }
        let shown = families.all().iter().flat_map(|group| {
            let shown = shown(group, &standing);
            group
                .iter()
                .filter_map(move |person| Some((*person, shown?)))
        });
        shown.collect()
    }
}

/// Who of a group is shown: the one that was kept last and that no statement gave up for another. Where two tablets kept the
/// one for the other and the other for the one, the later word holds.
fn shown(group: &BTreeSet<PersonId>, standing: &[Joined<'_>]) -> Option<PersonId> {
    let given_up = |person: PersonId| standing.iter().any(|joined| joined.same.other == person);
    let kept = standing.iter().rev().map(|joined| joined.same.kept);
    let mut kept = kept.filter(|person| group.contains(person));
    kept.clone()
        .find(|person| !given_up(*person))
        .or_else(|| kept.next())
}

fn joined(entry: &Entry) -> Option<Joined<'_>> {
    match &entry.body {
        Body::Same(same) => Some(Joined { entry, same }),
        _ => None,
    }
}

impl Story {
    /// Says that two on record are one person, and whose details hold.
    ///
    /// # Errors
    /// [`RecordError::NoSuchPerson`]; [`RecordError::SameAlready`] where they are shown as one already.
    pub fn say_same(
        &self,
        kept: PersonId,
        other: PersonId,
        why: String,
    ) -> Result<Planned, RecordError> {
        let mut parents = Vec::new();
        for person in [kept, other] {
            let known = self.people.get(&person);
            let known = known.ok_or(RecordError::NoSuchPerson(person))?;
            parents.extend(Lane::head_ids(&known.lane));
        }
        if self.joins.shown_for(kept) == self.joins.shown_for(other) {
            return Err(RecordError::SameAlready);
        }
        Ok(Planned {
            body: Body::Same(Same { kept, other, why }),
            parents,
        })
    }

    /// Takes it back that two are one person.
    ///
    /// # Errors
    /// [`RecordError::NotSame`] where no such statement stands.
    pub fn say_apart(&self, same: EntryId, why: String) -> Result<Planned, RecordError> {
        let standing = self.joins.standing();
        if !standing.iter().any(|joined| joined.entry.id == same) {
            return Err(RecordError::NotSame(same));
        }
        Ok(Planned {
            body: Body::Apart(Apart { same, why }),
            parents: vec![same],
        })
    }

    /// Whoever is shown for a person: themselves, unless they are said to be the same as somebody else.
    pub fn shown_for(&self, person: PersonId) -> PersonId {
        self.joins.shown_for(person)
    }

    /// The statements by which others are shown as this person, oldest first.
    pub fn joined(&self, person: &PersonId) -> Vec<Joined<'_>> {
        let shown = self.shown_for(*person);
        let mut standing = self.joins.standing();
        standing.retain(|joined| self.shown_for(joined.same.kept) == shown);
        standing
    }

    /// What somebody was called before they were said to be somebody else.
    pub fn name_of(&self, person: &PersonId) -> Option<String> {
        let known = self.people.get(person)?;
        Some(known.details().name.to_string())
    }
}
