//! Entries: sealed, on disk, and only then on the screen.

use super::desk::draft_name;
use super::{Door, DraftOf, Open, REASON};
use crate::edge::clock::{new_id, now_ms, today};
use ::words::app::session as say;
use leptos::prelude::*;
use record::home_list::ToWrite;
use record::{
    DeviceId, Draft, EntryId, ExamId, Eye, PersonDetails, PersonId, Planned, RecordError, Rule,
    SectionKind, Settings, Story,
};
use said::InWords;
use sync::Writing;
use vault::{DraftName, Subject};

impl Door {
    /// Puts a person down.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn add_person(self, details: PersonDetails) -> Result<PersonId, String> {
        let person = PersonId::from_uuid(new_id());
        let planned = self
            .story
            .with_untracked(|story| story.put_person(person, details));
        self.write(planned, person, &[]).await?;
        Ok(person)
    }

    /// Begins an exam where the person is visited.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn open_exam(self, person: PersonId) -> Result<ExamId, String> {
        let exam = ExamId::from_uuid(new_id());
        let planned = self.plan(|story| {
            let place = story
                .person(&person)
                .map(|person| person.details().place.clone())
                .unwrap_or_default();
            story.open_exam(exam, person, place, today())
        })?;
        self.write(planned, person, &[]).await?;
        Ok(exam)
    }

    /// Turns a draft into the section's new version; says whether there was one.
    ///
    /// # Errors
    /// One sentence: a field that can't stand, an amendment without a reason, a full tablet. The draft stays then.
    pub async fn commit_draft(self, exam: ExamId, kind: SectionKind) -> Result<bool, String> {
        let of = (exam, kind);
        let Some(draft) = self.draft_untracked(of) else {
            return Ok(false);
        };
        if let Some(fault) = draft.check().into_iter().next() {
            return Err(fault.sentence);
        }
        let reason = draft.typing.get(REASON).cloned();
        let planned = self.plan(|story| story.put_draft(draft.clone(), reason))?;
        let person = self.person_of(exam)?;
        self.settle().await;
        let name = self.held()?.ledger.draft_name(&draft_name(of));
        self.write(planned, person, &[name]).await?;
        self.lay_aside(of, &draft);
        Ok(true)
    }

    /// Settles a section of which several versions stand: the chosen one is written in place of all.
    ///
    /// # Errors
    /// One sentence; all of them stand then.
    pub async fn settle_section(
        self,
        exam: ExamId,
        kind: SectionKind,
        chosen: EntryId,
    ) -> Result<(), String> {
        let planned = self.plan(|story| story.settle(&exam, kind, chosen))?;
        self.write(planned, self.person_of(exam)?, &[]).await
    }

    /// Takes a draft that was written off the desk; what was typed while it was being written begins a new one.
    fn lay_aside(self, of: DraftOf, written: &Draft) {
        let newer = self
            .drafts
            .try_update(|drafts| drafts.remove(&of).filter(|draft| draft != written));
        if let Some(mut newer) = newer.flatten() {
            // The reason belonged to what was written.
            newer.typing.remove(REASON);
            self.change_draft(of, |draft| {
                draft.section = newer.section;
                draft.typing = newer.typing;
            });
        }
    }

    /// Keeps every draft of an exam, then signs it.
    ///
    /// # Errors
    /// One sentence on what stands in the way.
    pub async fn sign(self, exam: ExamId) -> Result<(), String> {
        for kind in SectionKind::ALL {
            self.commit_draft(exam, kind).await?;
        }
        let signer = self
            .examiner
            .get_untracked()
            .ok_or(say::no_name_to_sign())?;
        let planned = self.plan(|story| story.sign(&exam, signer))?;
        self.write(planned, self.person_of(exam)?, &[]).await
    }

    /// Answers something that the second look asked. What it speaks of is kept first: an answer is of what is written down.
    ///
    /// # Errors
    /// One sentence; the question stays then.
    pub async fn answer(
        self,
        exam: ExamId,
        rule: Rule,
        eye: Option<Eye>,
        reason: String,
    ) -> Result<(), String> {
        if reason.trim().is_empty() {
            return Err(RecordError::NoAnswer.to_string());
        }
        for kind in rule.speaks_of() {
            self.commit_draft(exam, *kind).await?;
        }
        let planned = self.plan(|story| story.answer(&exam, rule, eye, reason))?;
        self.write(planned, self.person_of(exam)?, &[]).await
    }

    /// Changes what is set for all tablets of the vault.
    ///
    /// # Errors
    /// One sentence; nothing is set then.
    pub async fn set(
        self,
        change: impl FnOnce(&mut Settings) -> Result<(), String>,
    ) -> Result<(), String> {
        let mut settings = self.story.with_untracked(Story::settings);
        change(&mut settings)?;
        let planned = self
            .story
            .with_untracked(|story| story.put_settings(settings));
        self.write(planned, None::<PersonId>, &[]).await
    }

    pub(super) fn plan(
        self,
        plan: impl FnOnce(&Story) -> Result<Planned, RecordError>,
    ) -> Result<Planned, String> {
        self.story
            .with_untracked(plan)
            .map_err(|error| error.to_string())
    }

    pub(super) fn person_of(self, exam: ExamId) -> Result<PersonId, String> {
        let person = self
            .story
            .with_untracked(|story| story.exam(&exam).map(record::Exam::person));
        person.ok_or_else(|| say::no_such_exam().to_owned())
    }

    /// Seals an entry, waits until it is on disk, and admits it. What is about nobody is sealed for all of the vault.
    pub(super) async fn write(
        self,
        planned: Planned,
        about: impl Into<Option<PersonId>>,
        drop: &[DraftName],
    ) -> Result<(), String> {
        let about = about.into();
        self.write_all(vec![ToWrite { planned, about }], drop).await
    }

    /// Seals entries, waits until all of them are on disk, and admits them: all or none.
    pub(super) async fn write_all(
        self,
        writes: Vec<ToWrite>,
        drop: &[DraftName],
    ) -> Result<(), String> {
        let open = self.held()?;
        let subject = |about: PersonId| Subject::from_bytes(*about.as_uuid().as_bytes());
        let (mut entries, mut sealed) = (Vec::new(), Vec::new());
        for write in writes {
            let entry = self.entry(&open, write.planned);
            sealed.push((entry.to_cbor(), write.about.map(subject)));
            entries.push(entry);
        }
        let writings = sealed.iter().map(|(payload, subject)| Writing {
            payload,
            subject: *subject,
        });
        open.ledger
            .write_all(&writings.collect::<Vec<_>>(), drop)
            .await
            .map_err(|error| error.in_words())?;
        for entry in &entries {
            let own = open.ledger.device();
            self.standing.hear(own, entry.stamp.wall_ms);
        }
        self.standing.heard.notify();
        let admit =
            |story: &mut Story| entries.into_iter().try_for_each(|entry| story.admit(entry));
        let admitted = self.story.try_update(admit);
        self.go_home();
        admitted
            .unwrap_or(Ok(()))
            .map_err(|error| error.to_string())
    }

    fn entry(self, open: &Open, planned: Planned) -> record::Entry {
        let author = self.examiner.get_untracked().unwrap_or_default();
        let stamp = open.clock.borrow_mut().tick(now_ms());
        let device = DeviceId(*open.ledger.device().as_bytes());
        planned.into_entry(EntryId::from_uuid(new_id()), author, device, stamp)
    }
}
