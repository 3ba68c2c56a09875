//! Answers to what was asked: planned, kept, and how long each holds.

use super::{Raised, Rule};
use crate::body::{Answered, Body};
use crate::check::blank;
use crate::entry::Entry;
use crate::error::RecordError;
use crate::exam::Exam;
use crate::finding::Eye;
use crate::ids::{EntryId, ExamId};
use crate::plan::Planned;
use crate::sections::Section;
use crate::story::Story;

/// An answer to something that was asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer<'a> {
    /// The entry: who and when.
    pub entry: &'a Entry,
    /// What it says.
    pub answered: &'a Answered,
}

impl Answer<'_> {
    /// What was asked; nothing where a newer version asked it.
    pub fn rule(&self) -> Option<Rule> {
        Rule::from_slug(&self.answered.rule)
    }
}

impl Story {
    /// Answers something that was asked of the present versions of the sections that the rule speaks of. An exam that is
    /// signed can be answered for as well: nothing of it changes.
    ///
    /// # Errors
    /// [`RecordError::NoSuchExam`]; [`RecordError::NoAnswer`] without a reason.
    pub fn answer(
        &self,
        exam: &ExamId,
        rule: Rule,
        eye: Option<Eye>,
        reason: String,
    ) -> Result<Planned, RecordError> {
        let known = self.exam(exam).ok_or(RecordError::NoSuchExam(*exam))?;
        if blank(&reason) {
            return Err(RecordError::NoAnswer);
        }
        let heads = known.spoken_of(rule);
        let opening = heads.is_empty().then_some(known.opening.entry);
        Ok(Planned {
            parents: heads.iter().copied().chain(opening).collect(),
            body: Body::Answered(Answered {
                exam: *exam,
                rule: rule.slug().to_owned(),
                eye,
                reason,
                heads,
            }),
        })
    }
}

impl Exam {
    /// Every answer to what was asked of this exam, oldest first.
    pub fn answers(&self) -> Vec<Answer<'_>> {
        let mut answers: Vec<_> = self.answers.all().filter_map(answer).collect();
        answers.sort_by_key(|answer| (answer.entry.stamp, answer.entry.id));
        answers
    }

    /// The present versions of the sections that a rule speaks of.
    fn spoken_of(&self, rule: Rule) -> Vec<EntryId> {
        let kinds = rule.speaks_of().iter();
        kinds.flat_map(|kind| self.head_ids(*kind)).collect()
    }

    /// Whether somebody answered this of just these versions, and nothing unsaved changes them.
    pub(super) fn is_answered(&self, asked: &Raised, unsaved: &[Section]) -> bool {
        if unsaved
            .iter()
            .any(|section| self.is_changed_by(section, asked.rule))
        {
            return false;
        }
        let heads = self.spoken_of(asked.rule);
        self.answers.all().filter_map(answer).any(|answer| {
            let Answered {
                rule,
                eye,
                heads: known,
                ..
            } = answer.answered;
            rule == asked.rule.slug()
                && *eye == asked.eye
                && heads.iter().all(|head| known.contains(head))
        })
    }

    /// Whether a section that the rule speaks of would be another than the one that holds.
    fn is_changed_by(&self, unsaved: &Section, rule: Rule) -> bool {
        let held = self.section(unsaved.kind()).settled();
        rule.speaks_of().contains(&unsaved.kind())
            && held.is_none_or(|version| version.value != unsaved)
    }
}

fn answer(entry: &Entry) -> Option<Answer<'_>> {
    match &entry.body {
        Body::Answered(answered) => Some(Answer { entry, answered }),
        _ => None,
    }
}
