//! The fold: entries go in, in any order and any number of times; people and exams come out.
//!
//! An entry rests on its parents, a section, a signature, an answer or a paper that left also on its exam's opening, an opening on its person, what
//! is said of a visit on its round. Until all of that has come, the entry waits. So the same set of entries gives the same story in whatever order it came.

use std::collections::{BTreeMap, BTreeSet};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::Arc;

use crate::body::{Answered, Body};
use crate::entry::Entry;
use crate::error::FoldError;
use crate::exam::{Exam, Opening};
use crate::ids::{EntryId, ExamId, PersonId, PlaceId, RoundId};
use crate::lane::Lane;
use crate::person::{Joins, Person};
use crate::rounds::{PackedEntry, Place, PlaceEntry, Round, RoundEntry, VisitEntry};
use crate::sent::Sent;

/// Everything that the entries admitted so far tell.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Story {
    /// A print of every entry ever admitted, waiting ones among them, to tell a repeat from a clash.
    prints: BTreeMap<EntryId, u64>,
    /// Where each folded entry went.
    homes: BTreeMap<EntryId, Home>,
    waiting: BTreeMap<EntryId, Entry>,
    awaited: BTreeMap<Need, BTreeSet<EntryId>>,
    pub(crate) people: BTreeMap<PersonId, Person>,
    pub(crate) exams: BTreeMap<ExamId, Exam>,
    pub(crate) joins: Joins,
    exams_by_person: BTreeMap<PersonId, BTreeSet<ExamId>>,
    pub(crate) places: BTreeMap<PlaceId, Place>,
    pub(crate) rounds: BTreeMap<RoundId, Round>,
    pub(crate) kit: Lane,
    pub(crate) settings: Lane,
    unread: BTreeMap<EntryId, Entry>,
}

/// What an entry rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Need {
    Entry(EntryId),
    Person(PersonId),
    Exam(ExamId),
    Round(RoundId),
}

/// Which part of the story an entry belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Home {
    Person(PersonId),
    Exam(ExamId),
    Place(PlaceId),
    Round(RoundId),
    Kit,
    Joins,
    Settings,
    Nowhere,
}

impl Story {
    /// Takes an entry. One that was taken before changes nothing; one whose parents have not come waits for them.
    ///
    /// # Errors
    /// [`FoldError::Clash`] for a different entry of the same name; nothing is changed then.
    pub fn admit(&mut self, entry: Entry) -> Result<(), FoldError> {
        let print = print(&entry);
        match self.prints.get(&entry.id) {
            Some(known) if *known == print => return Ok(()),
            Some(_) => return Err(FoldError::Clash(entry.id)),
            None => self.prints.insert(entry.id, print),
        };
        let mut ready = vec![entry];
        while let Some(entry) = ready.pop() {
            let missing = self.missing(&entry);
            if missing.is_empty() {
                let met = self.fold(entry);
                ready.extend(self.released(&met));
            } else {
                self.wait(entry, missing);
            }
        }
        Ok(())
    }

    fn missing(&self, entry: &Entry) -> Vec<Need> {
        let parents = entry.parents.iter().copied().map(Need::Entry);
        let rests_on = match &entry.body {
            Body::ExamOpened { person, .. } => vec![Need::Person(*person)],
            Body::Section { exam, .. }
            | Body::Signed { exam, .. }
            | Body::Answered(Answered { exam, .. })
            | Body::Sent(Sent { exam, .. }) => vec![Need::Exam(*exam)],
            Body::Visit(VisitEntry { round, .. }) | Body::Packed(PackedEntry { round, .. }) => {
                vec![Need::Round(*round)]
            }
            Body::Same(same) => vec![Need::Person(same.kept), Need::Person(same.other)],
            Body::Apart(apart) => vec![Need::Entry(apart.same)],
            Body::Person { .. }
            | Body::Place(_)
            | Body::Round(_)
            | Body::Kit(_)
            | Body::Settings(_)
            | Body::Unread(_) => Vec::new(),
        };
        parents
            .chain(rests_on)
            .filter(|need| !self.has(need))
            .collect()
    }

    fn has(&self, need: &Need) -> bool {
        match need {
            Need::Entry(id) => self.homes.contains_key(id),
            Need::Person(id) => self.people.contains_key(id),
            Need::Exam(id) => self.exams.contains_key(id),
            Need::Round(id) => self.rounds.contains_key(id),
        }
    }

    fn wait(&mut self, entry: Entry, missing: Vec<Need>) {
        for need in missing {
            self.awaited.entry(need).or_default().insert(entry.id);
        }
        self.waiting.insert(entry.id, entry);
    }

    /// The entries that waited for what has just come. Those that lack something else go back to waiting.
    fn released(&mut self, met: &[Need]) -> Vec<Entry> {
        let ids: BTreeSet<EntryId> = met
            .iter()
            .filter_map(|need| self.awaited.remove(need))
            .flatten()
            .collect();
        ids.iter()
            .filter_map(|id| self.waiting.remove(id))
            .collect()
    }

    /// Puts an entry in its place and tells which needs that meets.
    fn fold(&mut self, entry: Entry) -> Vec<Need> {
        let id = entry.id;
        let home = self.home(&entry);
        self.homes.insert(id, home);
        let own = Need::Entry(id);
        match home {
            Home::Person(person) => {
                self.fold_person(person, entry);
                vec![own, Need::Person(person)]
            }
            Home::Exam(exam) => {
                self.fold_into_exam(exam, entry);
                vec![own, Need::Exam(exam)]
            }
            Home::Place(place) => {
                self.fold_place(place, entry);
                vec![own]
            }
            Home::Round(round) => {
                self.fold_into_round(round, entry);
                vec![own, Need::Round(round)]
            }
            Home::Kit => {
                self.kit.take(Arc::new(entry));
                vec![own]
            }
            Home::Joins => {
                self.joins.take(entry);
                vec![own]
            }
            Home::Settings => {
                self.settings.take(Arc::new(entry));
                vec![own]
            }
            Home::Nowhere => {
                self.unread.insert(id, entry);
                vec![own]
            }
        }
    }

    /// An entry that can't be read belongs where its parents do: what it changed is not what it seems any more.
    fn home(&self, entry: &Entry) -> Home {
        match &entry.body {
            Body::Person { person, .. } => Home::Person(*person),
            Body::ExamOpened { exam, .. }
            | Body::Section { exam, .. }
            | Body::Signed { exam, .. }
            | Body::Answered(Answered { exam, .. })
            | Body::Sent(Sent { exam, .. }) => Home::Exam(*exam),
            Body::Place(PlaceEntry { place, .. }) => Home::Place(*place),
            Body::Round(RoundEntry { round, .. })
            | Body::Visit(VisitEntry { round, .. })
            | Body::Packed(PackedEntry { round, .. }) => Home::Round(*round),
            Body::Kit(_) => Home::Kit,
            Body::Same(_) | Body::Apart(_) => Home::Joins,
            Body::Settings(_) => Home::Settings,
            Body::Unread(_) => {
                let mut homes = entry.parents.iter().filter_map(|id| self.homes.get(id));
                let exam = homes.find(|home| matches!(home, Home::Exam(_)));
                exam.copied().unwrap_or(Home::Nowhere)
            }
        }
    }

    fn fold_person(&mut self, id: PersonId, entry: Entry) {
        let person = self.people.entry(id).or_insert_with(|| Person {
            id,
            lane: Lane::default(),
        });
        person.lane.take(Arc::new(entry));
    }

    fn fold_into_exam(&mut self, id: ExamId, entry: Entry) {
        if let Body::ExamOpened {
            person,
            ref place,
            opened_on,
            ..
        } = entry.body
        {
            let opening = Opening {
                stamp: entry.stamp,
                entry: entry.id,
                person,
                place: place.clone(),
                opened_on,
            };
            return self.open(id, opening);
        }
        let Some(exam) = self.exams.get_mut(&id) else {
            return;
        };
        match &entry.body {
            Body::Section { section, .. } => {
                let lane = exam.sections.entry(section.kind()).or_default();
                lane.take(Arc::new(entry));
            }
            Body::Signed { .. } => exam.signatures.take(Arc::new(entry)),
            Body::Answered(_) => exam.answers.take(Arc::new(entry)),
            Body::Sent(_) => exam.sent.take(Arc::new(entry)),
            _ => {
                exam.unread.insert(entry.id);
                self.unread.insert(entry.id, entry);
            }
        }
    }

    /// The earliest opening counts, so that it does not matter which came first.
    fn open(&mut self, id: ExamId, opening: Opening) {
        let exam = match self.exams.remove(&id) {
            None => Exam::new(id, opening),
            Some(mut exam) => {
                self.forget_exam_of(exam.person(), id);
                exam.reopenings.insert(exam.opening.clone());
                exam.reopenings.insert(opening);
                exam.opening = exam
                    .reopenings
                    .pop_first()
                    .expect("two openings were put in just now");
                exam
            }
        };
        self.exams_by_person
            .entry(exam.person())
            .or_default()
            .insert(id);
        self.exams.insert(id, exam);
    }

    fn forget_exam_of(&mut self, person: PersonId, exam: ExamId) {
        if let Some(exams) = self.exams_by_person.get_mut(&person) {
            exams.remove(&exam);
            if exams.is_empty() {
                self.exams_by_person.remove(&person);
            }
        }
    }

    /// The exams of everybody who is shown as this person.
    pub(crate) fn exam_ids_of(&self, person: &PersonId) -> impl Iterator<Item = &ExamId> {
        let shown = self.joins.shown_as(self.shown_for(*person));
        shown.flat_map(|one| self.exams_by_person.get(&one).into_iter().flatten())
    }

    /// How many entries wait for others that have not come yet.
    pub fn waiting(&self) -> usize {
        self.waiting.len()
    }

    /// How many different entries were admitted, waiting and unread ones among them.
    pub fn len(&self) -> usize {
        self.prints.len()
    }

    /// Whether nothing was admitted yet.
    pub fn is_empty(&self) -> bool {
        self.prints.is_empty()
    }

    /// Entries of kinds that this version can't read, carried unharmed, in order of id.
    pub fn unread(&self) -> impl Iterator<Item = &Entry> {
        self.unread.values()
    }
}

fn print(entry: &Entry) -> u64 {
    let mut hasher = DefaultHasher::new();
    entry.to_cbor().hash(&mut hasher);
    hasher.finish()
}
