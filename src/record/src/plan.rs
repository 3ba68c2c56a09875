//! The writing side: what an entry would have to say, and what it would rest on. Pure; nothing is changed here.

use chrono::NaiveDate;

use crate::body::Body;
use crate::check::blank;
use crate::draft::Draft;
use crate::entry::Entry;
use crate::error::RecordError;
use crate::exam::Exam;
use crate::ids::{DeviceId, EntryId, ExamId, PersonId};
use crate::lane::{Heads, Lane};
use crate::person::PersonDetails;
use crate::sections::{Section, SectionKind};
use crate::stamp::Stamp;
use crate::story::Story;

/// What is about to be written: a body and the entries that it rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// What it says.
    pub body: Body,
    /// What it rests on, or replaces.
    pub parents: Vec<EntryId>,
}

impl Planned {
    /// Makes the entry. Id, author, device and stamp come from whoever writes.
    pub fn into_entry(self, id: EntryId, author: String, device: DeviceId, stamp: Stamp) -> Entry {
        Entry::new(id, self.parents, author, device, stamp, self.body)
    }
}

impl Story {
    /// Writes down who a person is: somebody new, or new details in place of all present versions.
    pub fn put_person(&self, person: PersonId, details: PersonDetails) -> Planned {
        let person = self.shown_for(person);
        let lane = self.person(&person).map(|known| &known.lane);
        Planned {
            body: Body::Person { person, details },
            parents: lane.into_iter().flat_map(Lane::head_ids).collect(),
        }
    }

    /// Begins an exam of somebody on record.
    ///
    /// # Errors
    /// [`RecordError::NoSuchPerson`].
    pub fn open_exam(
        &self,
        exam: ExamId,
        person: PersonId,
        place: String,
        opened_on: NaiveDate,
    ) -> Result<Planned, RecordError> {
        let known = self
            .person(&person)
            .ok_or(RecordError::NoSuchPerson(person))?;
        Ok(Planned {
            body: Body::ExamOpened {
                exam,
                person: known.id(),
                place,
                opened_on,
            },
            parents: known.lane.head_ids().collect(),
        })
    }

    /// Writes a section in place of all its present versions. Where there are two, this settles them.
    ///
    /// # Errors
    /// [`RecordError::ReasonNeeded`] for a signed exam without a reason, [`RecordError::NoSuchExam`].
    pub fn put_section(
        &self,
        exam: &ExamId,
        section: Section,
        reason: Option<String>,
    ) -> Result<Planned, RecordError> {
        let known = self.known(exam)?;
        let based_on = known.head_ids(section.kind());
        known.replace(section, based_on, reason)
    }

    /// Writes a draft in place of the versions that it was begun from. Where another tablet wrote one meanwhile, that
    /// one stays beside it.
    ///
    /// # Errors
    /// As [`Story::put_section`].
    pub fn put_draft(&self, draft: Draft, reason: Option<String>) -> Result<Planned, RecordError> {
        let known = self.known(&draft.exam)?;
        known.replace(draft.section, draft.based_on, reason)
    }

    /// Signs the present version of every section.
    ///
    /// # Errors
    /// [`RecordError::TwoVersions`], [`RecordError::NoDecision`], [`RecordError::WrittenByNewer`] or
    /// [`RecordError::NotReady`] exactly where [`Exam::ready_to_sign`] has something to say;
    /// [`RecordError::NothingToSign`] when all of it is signed already; [`RecordError::NoSuchExam`].
    pub fn sign(&self, exam: &ExamId, signer: String) -> Result<Planned, RecordError> {
        let known = self.known(exam)?;
        known.signable()?;
        let heads: Vec<EntryId> = SectionKind::ALL
            .into_iter()
            .flat_map(|kind| known.head_ids(kind))
            .collect();
        let earlier = known.signatures.head_ids();
        Ok(Planned {
            parents: heads.iter().copied().chain(earlier).collect(),
            body: Body::Signed {
                exam: *exam,
                heads,
                signer,
            },
        })
    }

    fn known(&self, exam: &ExamId) -> Result<&Exam, RecordError> {
        self.exam(exam).ok_or(RecordError::NoSuchExam(*exam))
    }
}

impl Exam {
    /// The names of a section's present versions: what a draft begun now is based on.
    pub fn head_ids(&self, kind: SectionKind) -> Vec<EntryId> {
        let lane = self.sections.get(&kind).into_iter();
        lane.flat_map(Lane::head_ids).collect()
    }

    /// A first version rests on the opening; a change after signing rests on the signatures too, and so says that its
    /// writer knew of them.
    fn replace(
        &self,
        section: Section,
        based_on: Vec<EntryId>,
        reason: Option<String>,
    ) -> Result<Planned, RecordError> {
        let reason = reason.filter(|reason| !blank(reason));
        if self.is_signed() && !section.kind().follows_signing() && reason.is_none() {
            return Err(RecordError::ReasonNeeded(section.kind()));
        }
        let mut parents = based_on;
        if parents.is_empty() {
            parents.push(self.opening.entry);
        }
        parents.extend(self.signatures.head_ids());
        Ok(Planned {
            body: Body::Section {
                exam: self.id,
                section,
                reason,
            },
            parents,
        })
    }

    fn signable(&self) -> Result<(), RecordError> {
        if self.has_unread() {
            return Err(RecordError::WrittenByNewer);
        }
        if let Some(kind) = self.unsettled().first() {
            return Err(RecordError::TwoVersions(*kind));
        }
        if self.decision() == Heads::Empty {
            return Err(RecordError::NoDecision);
        }
        let missing = self.ready_to_sign();
        if !missing.is_empty() {
            return Err(RecordError::NotReady(missing));
        }
        if self.is_covered() {
            return Err(RecordError::NothingToSign);
        }
        Ok(())
    }
}
