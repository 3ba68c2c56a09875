//! `lightround log`: the visits as rows.

use super::by_family::Opened;
use super::options::LogAsked;
use super::write::{self, Cut};
use crate::ended::{Ended, Failure};
use ::papers::log::{Column, CsvFile, Filter, Visit, in_order, wanted};
use sheets::LogBook;
use std::path::Path;

/// Rows in memory at a time. For each so many the records are gone through once more.
const ROWS: usize = 20_000;

pub fn answer(asked: &LogAsked) -> Result<Ended, Failure> {
    let mut opened = Opened::open(&asked.records)?;
    let (columns, filter) = (columns(asked), asked.which.filter());
    let to = asked.out.as_deref();
    write::piece_by_piece(to, |file| {
        if let Some(path) = to.filter(|_| asked.xlsx) {
            let mut book = LogBook::begin_in(folder_of(path), &columns)?;
            rows(&mut opened, &filter, |visit| Ok::<_, Cut>(book.row(visit)?))?;
            return Ok(book.end_into(file)?);
        }
        let mut lines = CsvFile::begin(file, &columns)?;
        rows(&mut opened, &filter, |visit| {
            Ok::<_, Cut>(lines.row(visit)?)
        })?;
        Ok(lines.end()?)
    })?;
    Ok(write::tell(&opened.damage()))
}

/// Where a file will stand.
fn folder_of(file: &Path) -> &Path {
    match file.parent() {
        Some(folder) if folder.as_os_str().is_empty() => Path::new("."),
        Some(folder) => folder,
        None => file,
    }
}

/// Every visit that is wanted, in the order of the log.
fn rows<E: From<Failure>>(
    opened: &mut Opened,
    filter: &Filter,
    row: impl FnMut(&Visit) -> Result<(), E>,
) -> Result<(), E> {
    let all = |each: &mut dyn FnMut(Visit)| {
        opened.each_family(|story| {
            wanted(story, filter).for_each(&mut *each);
            Ok(())
        })
    };
    in_order(ROWS, all, row)
}

fn columns(asked: &LogAsked) -> Vec<Column> {
    let chosen = if asked.columns.is_empty() {
        Column::ALL
    } else {
        &asked.columns
    };
    if asked.without_personal {
        Column::without_personal(chosen)
    } else {
        chosen.to_vec()
    }
}
