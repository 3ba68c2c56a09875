//! What is told on a paper beside the record: kept on every change, as any draft is, and with the exam once the paper leaves.

use super::{Door, Keeping};
use crate::edge::cbor;
use ::words::app::session as say;
use leptos::prelude::*;
use papers::{Document, PaperKind, Told};
use record::{ExamId, Sent};
use said::InWords;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Which paper of which exam.
pub(super) type PaperOf = (ExamId, PaperKind);

/// A draft as it is kept.
#[derive(Serialize, Deserialize)]
struct Kept {
    exam: ExamId,
    paper: String,
    told: Told,
}

/// The drafts of papers among all that is kept so.
pub(super) fn of(plain: &[Vec<u8>]) -> BTreeMap<PaperOf, Told> {
    let kept = plain.iter().filter_map(|plain| cbor::read::<Kept>(plain));
    kept.filter_map(|kept| Some(((kept.exam, PaperKind::from_slug(&kept.paper)?), kept.told)))
        .collect()
}

/// The name that it is kept under, before it is keyed.
fn name((exam, kind): PaperOf) -> Vec<u8> {
    let exam = *exam.as_uuid().as_bytes();
    [exam.as_slice(), b"paper-", kind.slug().as_bytes()].concat()
}

impl Door {
    /// What is told on a paper: as it was last changed here, else as it last left.
    pub fn told(self, exam: ExamId, kind: PaperKind) -> Told {
        let draft = self
            .wordings
            .with_untracked(|wordings| wordings.get(&(exam, kind)).cloned());
        let left = || {
            self.story.with_untracked(|story| {
                let sent = story.exam(&exam)?.last_sent(kind.slug())?;
                Some(sent.sent.words.clone())
            })
        };
        draft.or_else(left).unwrap_or_default()
    }

    /// Keeps what is told on a paper, as it now stands.
    pub fn keep_told(self, exam: ExamId, kind: PaperKind, told: Told) {
        let kept = Kept {
            exam,
            paper: kind.slug().to_owned(),
            told: told.clone(),
        };
        self.wordings.update(|wordings| {
            wordings.insert((exam, kind), told);
        });
        let Ok(open) = self.held() else { return };
        // Written down before anything else can happen: what is kept is what stood here now.
        let plain = cbor::write(&kept);
        leptos::task::spawn_local(async move {
            let put = open.ledger.put_draft(&name((exam, kind)), &plain).await;
            self.say_kept(put.map_err(|error| error.in_words()));
        });
    }

    /// Forgets what is told on a paper.
    fn drop_told(self, of: PaperOf) {
        self.wordings.update(|wordings| {
            wordings.remove(&of);
        });
        let Ok(open) = self.held() else { return };
        leptos::task::spawn_local(async move {
            let removed = open.ledger.remove_draft(&name(of)).await;
            self.say_kept(removed.map_err(|error| error.in_words()));
        });
    }

    fn say_kept(self, kept: Result<(), String>) {
        if let Err(sentence) = kept {
            let trouble = Keeping::Trouble(say::not_kept_yet(&sentence));
            self.keeping.set(trouble);
        }
    }

    /// What was told about somebody who is gone goes as well.
    pub(super) fn drop_stray_wordings(self) {
        let stray = self.wordings.with_untracked(|wordings| {
            self.story.with_untracked(|story| {
                let kept = wordings.keys().copied();
                kept.filter(|(exam, _)| story.exam(exam).is_none())
                    .collect::<Vec<_>>()
            })
        });
        for of in stray {
            self.drop_told(of);
        }
    }

    /// Keeps a paper with its exam as it leaves.
    ///
    /// # Errors
    /// One sentence; the words stay a draft then.
    pub async fn send(
        self,
        exam: ExamId,
        kind: PaperKind,
        document: &Document,
        words: Told,
    ) -> Result<(), String> {
        let sent = Sent {
            exam,
            paper: kind.slug().to_owned(),
            words,
            text: document.words().into_iter().map(str::to_owned).collect(),
        };
        let about = self.person_of(exam)?;
        self.change(|story| {
            let planned = story.send(sent)?.into_iter();
            let writes = planned.map(|planned| record::home_list::ToWrite {
                planned,
                about: Some(about),
            });
            Ok(writes.collect())
        })
        .await?;
        self.drop_told((exam, kind));
        Ok(())
    }
}
