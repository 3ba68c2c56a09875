//! An exam as the entries tell it: opened, its sections and their versions, signed, amended.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::body::Body;
use crate::entry::Entry;
use crate::finding::{Eye, Eyes};
use crate::ids::{EntryId, ExamId, PersonId};
use crate::lane::{Heads, Lane, Version};
use crate::sections::{Acuity, Decision, Part, Retinoscopy, Section, SectionKind, Subjective};
use crate::stamp::Stamp;
use crate::summary::FinalLens;

/// One examination of one person.
#[derive(Clone, Debug, PartialEq)]
pub struct Exam {
    pub(crate) id: ExamId,
    pub(crate) opening: Opening,
    /// Openings of the same exam that came later by stamp: nobody writes them, but nothing is thrown away.
    pub(crate) reopenings: BTreeSet<Opening>,
    pub(crate) sections: BTreeMap<SectionKind, Lane>,
    pub(crate) signatures: Lane,
    pub(crate) answers: Lane,
    /// Papers that left.
    pub(crate) sent: Lane,
    pub(crate) unread: BTreeSet<EntryId>,
}

/// How an exam began.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Opening {
    pub stamp: Stamp,
    pub entry: EntryId,
    pub person: PersonId,
    pub place: String,
    pub opened_on: NaiveDate,
}

/// Whether an exam still changes freely.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum ExamState {
    /// Not signed yet.
    Open,
    /// Signed, and nothing was written since.
    Signed,
    /// Signed, and something was written since.
    Amended,
}

/// A signature under an exam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Signature<'a> {
    /// The entry: when and where.
    pub entry: &'a Entry,
    /// Who signed, as it is printed.
    pub signer: &'a str,
    /// The section versions that were signed.
    pub heads: &'a [EntryId],
}

/// A change to a section after it was signed, with its reason.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amendment<'a> {
    /// Which section changed.
    pub kind: SectionKind,
    /// The entry: who and when.
    pub entry: &'a Entry,
    /// Why.
    pub reason: &'a str,
}

impl Exam {
    pub(crate) fn new(id: ExamId, opening: Opening) -> Self {
        Self {
            id,
            opening,
            reopenings: BTreeSet::new(),
            sections: BTreeMap::new(),
            signatures: Lane::default(),
            answers: Lane::default(),
            sent: Lane::default(),
            unread: BTreeSet::new(),
        }
    }

    /// The exam's name.
    pub const fn id(&self) -> ExamId {
        self.id
    }

    /// Who is examined.
    pub const fn person(&self) -> PersonId {
        self.opening.person
    }

    /// Where.
    pub fn place(&self) -> &str {
        &self.opening.place
    }

    /// On which day.
    pub const fn opened_on(&self) -> NaiveDate {
        self.opening.opened_on
    }

    /// The versions of a section that nothing has replaced.
    pub fn section(&self, kind: SectionKind) -> Heads<'_, Section> {
        self.heads(kind, |section| Some(section))
    }

    /// The versions of a section that nothing has replaced, typed.
    pub fn part<T: Part>(&self) -> Heads<'_, T> {
        self.heads(T::KIND, T::of)
    }

    /// The acuity section, typed.
    pub fn acuity(&self) -> Heads<'_, Acuity> {
        self.part()
    }

    /// The retinoscopy section, typed.
    pub fn retinoscopy(&self) -> Heads<'_, Retinoscopy> {
        self.part()
    }

    /// The subjective section, typed.
    pub fn subjective(&self) -> Heads<'_, Subjective> {
        self.part()
    }

    /// The decision, typed.
    pub fn decision(&self) -> Heads<'_, Decision> {
        self.part()
    }

    fn heads<T>(&self, kind: SectionKind, pick: fn(&Section) -> Option<&T>) -> Heads<'_, T> {
        let heads = self.sections.get(&kind).into_iter().flat_map(Lane::heads);
        let version = |entry| {
            let value = pick(section(entry)?)?;
            Some(Version { entry, value })
        };
        Heads::from_versions(heads.filter_map(version).collect())
    }

    /// Every version of a section ever written, oldest first.
    pub fn history(&self, kind: SectionKind) -> Vec<Version<'_, Section>> {
        let all = self.sections.get(&kind).into_iter().flat_map(Lane::all);
        let version = |entry| {
            Some(Version {
                entry,
                value: section(entry)?,
            })
        };
        let mut versions: Vec<_> = all.filter_map(version).collect();
        versions.sort_by_key(|version| (version.entry.stamp, version.entry.id));
        versions
    }

    /// Sections of which two tablets wrote a version without knowing of each other, and nobody has chosen.
    pub fn unsettled(&self) -> Vec<SectionKind> {
        let several = |kind: &SectionKind| matches!(self.section(*kind), Heads::Several(_));
        SectionKind::ALL.into_iter().filter(several).collect()
    }

    /// Whether a newer version of the app wrote something into this exam that can't be read here.
    pub fn has_unread(&self) -> bool {
        !self.unread.is_empty()
    }

    /// The lens for an eye: as the person chose it, else retinoscopy's net on the quarter-dioptre step. Nothing where
    /// neither was done, or where two versions of it stand unsettled.
    pub fn final_lens(&self, eye: Eye) -> Option<FinalLens> {
        if let Heads::Several(_) = self.subjective() {
            return None;
        }
        let chosen = self.subjective().settled().map(|version| version.value);
        let found = self.retinoscopy().settled().map(|version| version.value);
        FinalLens::of(eye, chosen, found)
    }

    /// Both eyes' [`Exam::final_lens`].
    pub fn final_lenses(&self) -> Eyes<Option<FinalLens>> {
        Eyes {
            right: self.final_lens(Eye::Right),
            left: self.final_lens(Eye::Left),
        }
    }
}

pub(crate) fn section(entry: &Entry) -> Option<&Section> {
    match &entry.body {
        Body::Section { section, .. } => Some(section),
        _ => None,
    }
}
