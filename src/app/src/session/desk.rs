//! Drafts: kept on every change, one write at a time, the newest always last.

use super::{Door, DraftOf, Keeping, Open};
use crate::edge::clock::now_ms;
use crate::edge::motion;
use ::words::app::session as say;
use leptos::prelude::*;
use record::{Draft, ExamId, Eye, Half, Section, SectionKind};
use said::InWords;
use std::rc::Rc;

/// The name that a draft is kept under, before it is keyed.
pub fn draft_name((exam, kind): DraftOf) -> Vec<u8> {
    [exam.as_uuid().as_bytes().as_slice(), kind.slug().as_bytes()].concat()
}

impl Door {
    /// A section that is being filled in; follows every change.
    pub fn draft(self, exam: ExamId, kind: SectionKind) -> Option<Draft> {
        self.drafts
            .with(|drafts| drafts.get(&(exam, kind)).cloned())
    }

    /// Follows every change of what stands in any section, half written or kept.
    pub fn follow_changes(self) {
        self.drafts.track();
        self.story.track();
    }

    /// Keeps a section as it now stands.
    pub fn keep_draft(self, exam: ExamId, section: Section) {
        self.change_draft((exam, section.kind()), |draft| draft.put(section));
    }

    /// Keeps words that belong to no field of the section.
    pub fn keep_typing(self, exam: ExamId, kind: SectionKind, name: &str, text: String) {
        self.change_draft((exam, kind), |draft| {
            draft.typing.insert(name.to_owned(), text);
        });
    }

    /// Keeps half of a finding beside the draft's section, or drops it.
    pub fn keep_half(self, of: DraftOf, eye: Eye, part: &str, half: Option<Half>) {
        let draft = self.draft_untracked(of);
        if draft.and_then(|draft| draft.half(eye, part)) != half {
            self.change_draft(of, |draft| draft.put_half(eye, part, half));
        }
    }

    pub(super) fn draft_untracked(self, of: DraftOf) -> Option<Draft> {
        self.drafts
            .with_untracked(|drafts| drafts.get(&of).cloned())
    }

    pub(super) fn change_draft(self, (exam, kind): DraftOf, change: impl FnOnce(&mut Draft)) {
        let Ok(open) = self.held() else { return };
        let saved = open.clock.borrow_mut().tick(now_ms());
        self.drafts.update(|drafts| {
            let draft = drafts.entry((exam, kind)).or_insert_with(|| Draft {
                exam,
                section: Section::empty(kind),
                typing: std::collections::BTreeMap::new(),
                based_on: self.story.with_untracked(|story| {
                    story
                        .exam(&exam)
                        .map(|exam| exam.head_ids(kind))
                        .unwrap_or_default()
                }),
                saved,
            });
            change(draft);
            draft.saved = saved;
        });
        open.changed.borrow_mut().insert((exam, kind));
        self.keep_changed(open);
    }

    /// Forgets a draft: what was kept before it holds again.
    pub fn drop_draft(self, exam: ExamId, kind: SectionKind) {
        self.drafts.update(|drafts| {
            drafts.remove(&(exam, kind));
        });
        if let Ok(open) = self.held() {
            open.changed.borrow_mut().insert((exam, kind));
            self.keep_changed(open);
        }
    }

    fn keep_changed(self, open: Rc<Open>) {
        self.keeping.set(Keeping::Underway);
        if !open.keeping_now.replace(true) {
            // The tap is answered first: keeping costs as much as drawing does.
            leptos::task::spawn_local(async move {
                motion::drawn().await;
                self.keep_all(&open).await;
            });
        }
    }

    /// Keeps what has changed until nothing has. A change that can't be kept is said, stays marked, and is tried again
    /// with the next one.
    async fn keep_all(self, open: &Open) {
        loop {
            let next = open.changed.borrow_mut().pop_first();
            let Some(of) = next else {
                self.keeping.set(Keeping::Kept);
                break;
            };
            if let Err(sentence) = self.keep_one(open, of).await {
                open.changed.borrow_mut().insert(of);
                self.keeping
                    .set(Keeping::Trouble(say::not_kept_yet(&sentence)));
                break;
            }
        }
        open.keeping_now.replace(false);
    }

    async fn keep_one(self, open: &Open, of: DraftOf) -> Result<(), String> {
        let draft = self
            .drafts
            .with_untracked(|drafts| drafts.get(&of).map(Draft::to_cbor));
        let name = draft_name(of);
        let kept = match draft {
            Some(plain) => open.ledger.put_draft(&name, &plain).await,
            None => open.ledger.remove_draft(&name).await,
        };
        kept.map_err(|error| error.in_words())
    }

    /// Waits until every draft is kept, or can't be.
    pub(super) async fn settle(self) {
        let Ok(open) = self.held() else { return };
        while *open.keeping_now.borrow() {
            gloo_timers::future::TimeoutFuture::new(5).await;
        }
        if !open.changed.borrow().is_empty() {
            open.keeping_now.replace(true);
            self.keep_all(&open).await;
        }
    }
}
