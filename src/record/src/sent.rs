//! Papers as they left: what stood on each, and which of its words were changed before.
//!
//! A paper is made from the record whenever it is wanted, so what was sent can't be told from the record alone: its words may
//! have been changed, and the exam amended since. So a paper that leaves is kept with its exam as it stood.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::body::Body;
use crate::entry::Entry;
use crate::error::RecordError;
use crate::exam::Exam;
use crate::ids::ExamId;
use crate::plan::Planned;
use crate::story::Story;

/// A paper as it left, as it is kept and as it stands on the wire.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Sent {
    /// The exam.
    pub exam: ExamId,
    /// Which paper. A word, so that a paper that this version does not know stays readable.
    pub paper: String,
    /// The words that were changed or added before it left, by the names that the paper gives them.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub words: BTreeMap<String, String>,
    /// Everything that stood on it, in reading order.
    pub text: Vec<String>,
}

/// A paper that left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SentPaper<'a> {
    /// The entry: who and when.
    pub entry: &'a Entry,
    /// What it was.
    pub sent: &'a Sent,
}

impl Story {
    /// Keeps a paper with its exam as it leaves; nothing where the last one of its kind said just the same. A signed exam
    /// keeps its signature: nothing of it changes.
    ///
    /// # Errors
    /// [`RecordError::NoSuchExam`].
    pub fn send(&self, sent: Sent) -> Result<Option<Planned>, RecordError> {
        let known = self
            .exam(&sent.exam)
            .ok_or(RecordError::NoSuchExam(sent.exam))?;
        let last = known.last_sent(&sent.paper);
        if last.is_some_and(|last| *last.sent == sent) {
            return Ok(None);
        }
        let rests_on = last.map_or(known.opening.entry, |last| last.entry.id);
        Ok(Some(Planned {
            parents: vec![rests_on],
            body: Body::Sent(sent),
        }))
    }
}

impl Exam {
    /// Every paper that left, oldest first.
    pub fn sent(&self) -> Vec<SentPaper<'_>> {
        let mut all: Vec<_> = self.sent.all().filter_map(sent).collect();
        all.sort_by_key(|paper| (paper.entry.stamp, paper.entry.id));
        all
    }

    /// The last of a kind that left.
    pub fn last_sent(&self, paper: &str) -> Option<SentPaper<'_>> {
        let mut all = self.sent().into_iter().rev();
        all.find(|left| left.sent.paper == paper)
    }
}

fn sent(entry: &Entry) -> Option<SentPaper<'_>> {
    match &entry.body {
        Body::Sent(sent) => Some(SentPaper { entry, sent }),
        _ => None,
    }
}
