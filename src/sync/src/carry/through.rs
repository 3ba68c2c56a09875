//! Reading what a carry file says, one page of frames after the other, and keeping nothing of it.

use super::{Apart, CarryError, Span, Walk, WalkError};
use crate::damage::Damage;
use crate::ledger::{Read as Entry, Reader, Reading};
use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read, Seek};
use std::ops::Range;
use vault::{DeviceId, Frame, Keys, Purpose};

/// Frames opened at a time.
pub(super) const PAGE: usize = 500;

/// What came of reading a carry file through.
#[derive(Debug, Default)]
pub struct Through {
    /// How many entries were read.
    pub entries: u64,
    /// Everything that can't be read.
    pub damage: Vec<Damage>,
    /// How many frames are of kinds that only a later version reads.
    pub unread: usize,
    /// Logs of which nothing was read, because their beginning is not in the file.
    pub apart: Vec<Apart>,
    /// What each device calls itself.
    pub names: BTreeMap<DeviceId, String>,
}

/// Gives every entry to `each`, in the order of the file, after all of it was checked. Of a person's entries none is given
/// if the file says that they were erased. In memory are the keys of the people and one page of frames, however long the
/// file is.
///
/// # Errors
///
/// The file is foreign, not genuine or has a device that holds no key of the vault: nothing was given then. It can't be
/// read.
pub fn read_through<R: Read + Seek>(
    walk: &mut Walk<R>,
    keys: &Keys,
    each: impl FnMut(Entry),
) -> Result<Through, WalkError> {
    let (through, _) = read_and_note(walk, keys, |_, _, _| {}, each)?;
    Ok(through)
}

/// [`read_through`], and tells `note` of every entry's frame where it stands in the file, before it is read.
pub(super) fn read_and_note<R: Read + Seek>(
    walk: &mut Walk<R>,
    keys: &Keys,
    mut note: impl FnMut(&Reading, &Frame, Range<u64>),
    mut each: impl FnMut(Entry),
) -> Result<(Through, Reading), WalkError> {
    if walk.vault() != keys.vault() {
        return Err(CarryError::OtherVault.into());
    }
    let logs = walk.check()?;
    let mut reading = Reading::default();
    let mut through = Through::default();
    let apart = apart(&logs);
    let left_out = |frame: &Frame| apart.contains(&frame.device());
    let is_entry = |frame: &Frame| frame.header().purpose == Purpose::Entry;

    // The keys first, for a person's may stand in a log that comes after the one that writes under it.
    let mut reader = Reader::new(keys, &mut reading);
    walk.each(|_, frame| {
        if !left_out(&frame) && !is_entry(&frame) {
            reader.take(&frame);
        }
        Ok::<_, WalkError>(())
    })?;
    through.add(reader, &mut each);
    strangers(&logs, keys, &reading)?;

    let mut page = Vec::new();
    walk.each_at(|_, at, frame| {
        if !left_out(&frame) && is_entry(&frame) {
            note(&reading, &frame, at);
            page.push(frame);
        }
        if page.len() == PAGE {
            through.page(&mut page, keys, &mut reading, &mut each);
        }
        Ok::<_, WalkError>(())
    })?;
    through.page(&mut page, keys, &mut reading, &mut each);
    through.apart = logs.iter().filter_map(gap).collect();
    through.names = reading.names();
    Ok((through, reading))
}

fn apart(logs: &[Span]) -> BTreeSet<DeviceId> {
    let begun = logs.iter().filter(|log| gap(log).is_some());
    begun.map(|log| log.key.device()).collect()
}

/// What is missing before a log's first frame.
fn gap(log: &Span) -> Option<Apart> {
    (log.first > 1).then(|| Apart::Gap {
        device: log.key.device(),
        from: 1,
        through: log.first - 1,
    })
}

/// Every device that is read has introduced itself under a key of the vault.
fn strangers(logs: &[Span], keys: &Keys, reading: &Reading) -> Result<(), CarryError> {
    let read = logs.iter().filter(|log| log.first == 1);
    for log in read {
        let device = log.key.device();
        if device != keys.device() && reading.introduced_as(device) != Some(log.key) {
            return Err(CarryError::Stranger(device));
        }
    }
    Ok(())
}

impl Through {
    pub(super) fn page(
        &mut self,
        page: &mut Vec<Frame>,
        keys: &Keys,
        reading: &mut Reading,
        each: &mut impl FnMut(Entry),
    ) {
        let mut reader = Reader::new(keys, reading);
        page.drain(..).for_each(|frame| reader.take(&frame));
        self.add(reader, each);
        reading.wait_no_longer();
    }

    fn add(&mut self, reader: Reader<'_>, each: &mut impl FnMut(Entry)) {
        let (found, _) = reader.finish();
        self.entries += found.entries.len() as u64;
        self.unread += found.unread;
        self.damage.extend(found.damage);
        found.entries.into_iter().for_each(each);
    }
}
