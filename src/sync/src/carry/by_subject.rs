//! Reading a carry file through, and then again subject by subject, however far apart one's entries stand in it.

use super::through::{PAGE, Through, read_and_note};
use super::{Walk, WalkError};
use crate::ledger::{Read as Entry, Reading};
use std::collections::BTreeMap;
use std::io::{Read, Seek};
use std::ops::Range;
use vault::{Frame, Keys, PersonKey, Subject};

/// A carry file that was read through. In memory are the keys of the people and where their entries stand: since whoever is
/// examined has their entries written one after the other, that is a few numbers for each exam, and none for what it says.
pub struct BySubject<R> {
    walk: Walk<R>,
    keys: Keys,
    reading: Reading,
    runs: BTreeMap<Option<Subject>, Vec<Run>>,
}

/// Frames about the same subject that stand one after the other.
struct Run {
    at: u64,
    frames: u32,
}

impl<R: Read + Seek> BySubject<R> {
    /// Reads a file through as [`super::read_through`] does.
    ///
    /// # Errors
    ///
    /// As there.
    pub fn read_through(
        mut walk: Walk<R>,
        keys: Keys,
        each: impl FnMut(Entry),
    ) -> Result<(Self, Through), WalkError> {
        let mut index = Index::default();
        let note = |reading: &Reading, frame: &Frame, at| {
            let key = reading.people.by_id(frame.header().key);
            // What is under a key that is not here can't be read.
            if key.is_some() || keys.is_epoch(frame) {
                index.add(key.map(PersonKey::subject), at);
            }
        };
        let (through, reading) = read_and_note(&mut walk, &keys, note, each)?;
        let sorted = Self {
            walk,
            keys,
            reading,
            runs: index.runs,
        };
        Ok((sorted, through))
    }

    /// Everybody about whom something was written, in the order of their ids, after none where something is about nobody.
    pub fn subjects(&self) -> Vec<Option<Subject>> {
        self.runs.keys().copied().collect()
    }

    /// Gives again every entry about a subject that can be read, in the order of the file; for none, those that are about nobody.
    ///
    /// # Errors
    ///
    /// The file can't be read any more.
    pub fn of(
        &mut self,
        subject: Option<Subject>,
        mut each: impl FnMut(Entry),
    ) -> Result<(), WalkError> {
        // What can't be read was told when the file was read through.
        let mut again = Through::default();
        let mut page = Vec::new();
        for run in self.runs.get(&subject).into_iter().flatten() {
            let (keys, reading) = (&self.keys, &mut self.reading);
            self.walk.some(run.at, run.frames, |frame| {
                page.push(frame);
                if page.len() == PAGE {
                    again.page(&mut page, keys, reading, &mut each);
                }
            })?;
        }
        again.page(&mut page, &self.keys, &mut self.reading, &mut each);
        Ok(())
    }
}

/// Where everybody's entries stand, while that is gathered.
#[derive(Default)]
struct Index {
    runs: BTreeMap<Option<Subject>, Vec<Run>>,
    /// Where the run that was met last ends, and whose it is.
    last: Option<(Option<Subject>, u64)>,
}

impl Index {
    fn add(&mut self, subject: Option<Subject>, at: Range<u64>) {
        let goes_on = self.last == Some((subject, at.start));
        let runs = self.runs.entry(subject).or_default();
        match runs.last_mut().filter(|_| goes_on) {
            Some(run) => run.frames += 1,
            None => runs.push(Run {
                at: at.start,
                frames: 1,
            }),
        }
        self.last = Some((subject, at.end));
    }
}
