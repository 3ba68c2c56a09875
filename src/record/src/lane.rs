//! Versions that replace one another: who a person is, or one section of an exam.
//!
//! Each new version names the ones it replaces. A version that nothing has replaced is a head. Two tablets that
//! replaced the same version make two heads, and both are kept until somebody writes a version that names both.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::entry::Entry;
use crate::ids::EntryId;

/// One version of something, with the entry that wrote it: who, when, why, in place of what.
#[derive(Debug, PartialEq)]
pub struct Version<'a, T> {
    /// The entry.
    pub entry: &'a Entry,
    /// What it says.
    pub value: &'a T,
}

// Derived, these would ask the same of T, which stands behind a reference.
impl<T> Clone for Version<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Version<'_, T> {}

/// The versions that nothing has replaced.
#[derive(Clone, Debug, PartialEq)]
pub enum Heads<'a, T> {
    /// Never written.
    Empty,
    /// One version holds.
    One(Version<'a, T>),
    /// Several were written without knowing of each other; oldest first. Somebody has to choose or merge.
    Several(Vec<Version<'a, T>>),
}

impl<'a, T> Heads<'a, T> {
    pub(crate) fn from_versions(mut versions: Vec<Version<'a, T>>) -> Self {
        versions.sort_by_key(|version| (version.entry.stamp, version.entry.id));
        match versions.as_slice() {
            [] => Self::Empty,
            [only] => Self::One(*only),
            _ => Self::Several(versions),
        }
    }

    /// The version that holds, when there is exactly one.
    pub fn settled(&self) -> Option<Version<'a, T>> {
        match self {
            Self::One(version) => Some(*version),
            Self::Empty | Self::Several(_) => None,
        }
    }

    /// The version written last, to show something; whether it holds is another question.
    pub fn latest(&self) -> Option<Version<'a, T>> {
        self.versions().last().copied()
    }

    /// All of them, oldest first.
    pub fn versions(&self) -> &[Version<'a, T>] {
        match self {
            Self::Empty => &[],
            Self::One(version) => std::slice::from_ref(version),
            Self::Several(versions) => versions,
        }
    }
}

/// Every version ever written, and which of them are heads.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Lane {
    all: BTreeMap<EntryId, Arc<Entry>>,
    heads: BTreeSet<EntryId>,
}

impl Lane {
    /// Takes a version whose parents have been taken before it, so nothing can have replaced it yet.
    pub fn take(&mut self, entry: Arc<Entry>) {
        for parent in &entry.parents {
            self.heads.remove(parent);
        }
        self.heads.insert(entry.id);
        self.all.insert(entry.id, entry);
    }

    pub fn head_ids(&self) -> impl Iterator<Item = EntryId> {
        self.heads.iter().copied()
    }

    pub fn heads(&self) -> impl Iterator<Item = &Entry> {
        self.heads.iter().filter_map(|id| self.get(id))
    }

    pub fn get(&self, id: &EntryId) -> Option<&Entry> {
        self.all.get(id).map(Arc::as_ref)
    }

    /// Every version, in order of id.
    pub fn all(&self) -> impl Iterator<Item = &Entry> {
        self.all.values().map(Arc::as_ref)
    }
}
