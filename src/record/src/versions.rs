//! Every version of a section: who wrote it, when, where, why, what it changed, and whether it was signed. And how two
//! versions that did not know of each other are settled.

use ::words::record::exam as say;
use chrono::NaiveDateTime;

use crate::body::Body;
use crate::differences::{Change, Difference, differences};
use crate::entry::Entry;
use crate::error::RecordError;
use crate::exam::Exam;
use crate::ids::{DeviceId, EntryId, ExamId};
use crate::lane::{Lane, Version};
use crate::manner::FarUnit;
use crate::plan::Planned;
use crate::sections::{Section, SectionKind};
use crate::story::Story;
use crate::story_so_far::Local;

/// One version.
#[derive(Clone, Debug, PartialEq)]
pub struct Written<'a> {
    /// Its place among all versions of its section by the time of writing, from 1.
    pub number: usize,
    /// The entry, and what it says.
    pub version: Version<'a, Section>,
    /// When, by the clock where the reader is.
    pub at: NaiveDateTime,
    /// Why, where it was said.
    pub reason: Option<&'a str>,
    /// Who signed it, oldest signature first.
    pub signed_by: Vec<&'a str>,
    /// Whether nothing has replaced it.
    pub stands: bool,
    /// What it replaced, with what it changed in each. The first version replaced a blank section.
    pub against: Vec<Against>,
}

/// What a version changed in one that it replaced.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Against {
    /// Which version was replaced; none for a blank section.
    pub number: Option<usize>,
    /// The lines that differ.
    pub lines: Vec<Difference>,
}

impl Written<'_> {
    /// Who wrote it.
    pub fn author(&self) -> &str {
        &self.version.entry.author
    }

    /// On which device.
    pub const fn device(&self) -> DeviceId {
        self.version.entry.device
    }
}

impl Exam {
    /// Every version of a section, oldest first; its lines in the reader's unit of distance.
    pub fn versions(&self, kind: SectionKind, local: Local<'_>, far: FarUnit) -> Vec<Written<'_>> {
        let history = self.history(kind);
        let heads = self.head_ids(kind);
        let number = |id: &EntryId| {
            let place = history.iter().position(|version| version.entry.id == *id);
            place.map(|place| place + 1)
        };
        let written = history.iter().enumerate().map(|(place, version)| {
            let parents = version.entry.parents.iter();
            let replaced: Vec<usize> = parents.filter_map(number).collect();
            Written {
                number: place + 1,
                version: *version,
                at: local(version.entry.stamp),
                reason: reason(version.entry),
                signed_by: self.signed_by(version.entry.id),
                stands: heads.contains(&version.entry.id),
                against: against(&history, version.value, &replaced, far),
            }
        });
        written.collect()
    }

    /// The versions of a section that nothing has replaced, oldest first.
    pub fn standing(&self, kind: SectionKind, local: Local<'_>, far: FarUnit) -> Vec<Written<'_>> {
        let mut versions = self.versions(kind, local, far);
        versions.retain(|version| version.stands);
        versions
    }

    fn signed_by(&self, id: EntryId) -> Vec<&str> {
        let signatures = self.signatures().into_iter();
        signatures
            .filter(|signature| signature.heads.contains(&id))
            .map(|signature| signature.signer)
            .collect()
    }

    /// Whether a draft begun from these versions is written in place of all that stand.
    pub fn would_settle(&self, kind: SectionKind, based_on: &[EntryId]) -> bool {
        let heads = self.head_ids(kind);
        heads.iter().all(|head| based_on.contains(head))
    }
}

fn reason(entry: &Entry) -> Option<&str> {
    match &entry.body {
        Body::Section { reason, .. } => reason.as_deref(),
        _ => None,
    }
}

fn against(
    history: &[Version<'_, Section>],
    section: &Section,
    replaced: &[usize],
    far: FarUnit,
) -> Vec<Against> {
    let now = section.lines_in(far);
    let from = |number: Option<usize>| {
        let before = number.and_then(|number| history.get(number - 1));
        let before = before.map_or_else(Vec::new, |version| version.value.lines_in(far));
        let mut lines = differences(&before, &now);
        lines.retain(|line| line.change() != Change::Same);
        Against { number, lines }
    };
    if replaced.is_empty() {
        return vec![from(None)];
    }
    replaced.iter().map(|number| from(Some(*number))).collect()
}

impl Story {
    /// Settles a section of which several versions stand: the chosen one is written in place of all, as an entry of its own.
    /// Nothing of the others is lost. In a signed exam it is an amendment, and says itself why.
    ///
    /// # Errors
    /// [`RecordError::NothingToSettle`] where fewer than two stand or the chosen one is not among them;
    /// [`RecordError::NoSuchExam`].
    pub fn settle(
        &self,
        exam: &ExamId,
        kind: SectionKind,
        chosen: EntryId,
    ) -> Result<Planned, RecordError> {
        let known = self.exam(exam).ok_or(RecordError::NoSuchExam(*exam))?;
        let heads = known.head_ids(kind);
        let lane = known.sections.get(&kind);
        let entry = lane.and_then(|lane: &Lane| lane.get(&chosen));
        let section = entry.and_then(crate::exam::section);
        match (entry, section) {
            (Some(entry), Some(section)) if heads.len() > 1 && heads.contains(&chosen) => {
                let why = say::later_holds(&heads.len(), &entry.author);
                self.put_section(exam, section.clone(), Some(why))
            }
            _ => Err(RecordError::NothingToSettle(kind)),
        }
    }
}
