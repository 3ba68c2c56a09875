//! What was signed, what came after, and whether an exam can be signed now.
//!
//! A signature names the present version of each section, and covers it. A version that no signature covers came later:
//! an **amendment** when its writer knew of a signature and gave a reason, otherwise **uncovered**: written on a tablet
//! that had not heard of the signature yet. Neither is thrown away and neither slips by unseen. An order and a fitting come
//! after the signature in the ordinary course of things ([`SectionKind::follows_signing`]) and are neither.

use ::words::record::exam as say;
use std::collections::BTreeSet;

use crate::body::Body;
use crate::check::{blank, check};
use crate::entry::Entry;
use crate::exam::{Amendment, Exam, ExamState, Signature};
use crate::finding::Eye;
use crate::ids::EntryId;
use crate::lane::{Heads, Lane};
use crate::sections::{Section, SectionKind};

impl Exam {
    /// Whether the exam is open, signed, or signed and changed since.
    pub fn state(&self) -> ExamState {
        if !self.is_signed() {
            ExamState::Open
        } else if self.amendments().is_empty() && self.uncovered().is_empty() {
            ExamState::Signed
        } else {
            ExamState::Amended
        }
    }

    /// Whether anybody has signed.
    pub fn is_signed(&self) -> bool {
        self.signatures.head_ids().next().is_some()
    }

    /// Every signature, oldest first.
    pub fn signatures(&self) -> Vec<Signature<'_>> {
        let mut signatures: Vec<_> = self.signatures.all().filter_map(signature).collect();
        signatures.sort_by_key(|signature| (signature.entry.stamp, signature.entry.id));
        signatures
    }

    /// Every change made in knowledge of a signature, oldest first.
    pub fn amendments(&self) -> Vec<Amendment<'_>> {
        let all = self.sections.values().flat_map(Lane::all);
        let mut amendments: Vec<_> = all.filter_map(|entry| self.amendment(entry)).collect();
        amendments.sort_by_key(|amendment| (amendment.entry.stamp, amendment.entry.id));
        amendments
    }

    fn amendment<'a>(&self, entry: &'a Entry) -> Option<Amendment<'a>> {
        let knew = |parent: &EntryId| self.signatures.get(parent).is_some();
        match &entry.body {
            Body::Section {
                section,
                reason: Some(reason),
                ..
            } if !blank(reason) && entry.parents.iter().any(knew) => Some(Amendment {
                kind: section.kind(),
                entry,
                reason,
            }),
            _ => None,
        }
    }

    /// Sections of a signed exam whose present version no signature covers and that is no amendment either: somebody
    /// wrote it before hearing of the signature. Look at it and sign again. Empty while the exam is open.
    pub fn uncovered(&self) -> Vec<SectionKind> {
        if !self.is_signed() {
            return Vec::new();
        }
        let covered = self.covered();
        let loose = |entry: &Entry| !covered.contains(&entry.id) && self.amendment(entry).is_none();
        let mut kinds = self.kinds_with(loose);
        kinds.retain(|kind| !kind.follows_signing());
        kinds
    }

    /// Whether every present version of every section stands under a signature, save those that follow it.
    pub(crate) fn is_covered(&self) -> bool {
        let covered = self.covered();
        let open = self.kinds_with(|entry| !covered.contains(&entry.id));
        self.is_signed() && open.iter().all(|kind| kind.follows_signing())
    }

    /// The sections that have a head for which `test` holds.
    fn kinds_with(&self, test: impl Fn(&Entry) -> bool) -> Vec<SectionKind> {
        let lanes = self.sections.iter();
        let with = lanes.filter(|(_, lane)| lane.heads().any(&test));
        with.map(|(kind, _)| *kind).collect()
    }

    /// The section versions that some signature names. What those replaced can't be present any more.
    fn covered(&self) -> BTreeSet<EntryId> {
        let signatures = self.signatures.all().filter_map(signature);
        signatures
            .flat_map(|signed| signed.heads)
            .copied()
            .collect()
    }

    /// What stands in the way of signing, one plain sentence each. Empty when the exam can be signed.
    pub fn ready_to_sign(&self) -> Vec<String> {
        let mut missing = Vec::new();
        if self.has_unread() {
            missing.push(say::newer_version().to_owned());
        }
        for kind in SectionKind::ALL {
            match self.section(kind) {
                Heads::Several(_) => missing.push(say::two_versions_of(&kind.named())),
                Heads::One(version) => missing.extend(unfinished(version.value)),
                Heads::Empty if kind == SectionKind::Decision => {
                    missing.push(say::nothing_decided().to_owned());
                }
                Heads::Empty => {}
            }
        }
        missing.extend(self.lenses_missing());
        missing
    }

    /// A decision to prescribe needs a lens to prescribe, and a word on an eye that has none.
    fn lenses_missing(&self) -> Vec<String> {
        let decided = self.decision().settled();
        if !decided.is_some_and(|decision| decision.value.prescribes()) {
            return Vec::new();
        }
        let lenses = self.final_lenses();
        if lenses.right.is_none() && lenses.left.is_none() {
            return vec![say::no_lens_yet().to_owned()];
        }
        let without = lenses
            .each()
            .into_iter()
            .filter(|(eye, lens)| lens.is_none() && self.why_no_lens(*eye).is_none());
        without
            .map(|(eye, _)| say::eye_without_lens(&eye.said()))
            .collect()
    }

    /// Why an eye has no lens, in the examiner's words: `not done: …`, `unable: …`.
    pub fn why_no_lens(&self, eye: Eye) -> Option<String> {
        let subjective = self.subjective().settled();
        let chosen = subjective.and_then(|version| version.value.eyes.of(eye).why_not());
        chosen.or_else(|| self.retinoscopy().settled()?.value.eyes.of(eye).why_not())
    }
}

fn signature(entry: &Entry) -> Option<Signature<'_>> {
    match &entry.body {
        Body::Signed { heads, signer, .. } => Some(Signature {
            entry,
            signer,
            heads,
        }),
        _ => None,
    }
}

/// What a section that was begun still lacks.
fn unfinished(section: &Section) -> Vec<String> {
    let kind = section.kind().named();
    let faults = check(section).into_iter();
    let mut missing: Vec<String> = faults
        .map(|fault| format!("{kind}: {}", fault.sentence))
        .collect();
    if let Section::Decision(decision) = section
        && !decision.is_made()
    {
        missing.push(say::nothing_decided().to_owned());
    }
    let open = section.filled().unanswered();
    missing.extend(
        open.into_iter()
            .map(|eye| say::eye_blank(&kind, &eye.said())),
    );
    missing
}
