//! `lightround log`: the visits as rows.

use super::by_family::Opened;
use super::options::LogAsked;
use super::write::{self, Cut};
use crate::ended::{Ended, Failure};
use ::papers::log::{Column, CsvFile, Filter, Visit, in_order, wanted};
use sheets::LogBook;

/// Rows in memory at a time. For each so many the records are gone through once more.
const ROWS: usize = 20_000;

pub fn answer(asked: &LogAsked) -> Result<Ended, Failure> {
    let mut opened = Opened::open(&asked.records)?;
    let (columns, filter) = (columns(asked), asked.which.filter());
    let to = asked.out.as_deref();
    if asked.xlsx {
        let mut book = LogBook::begin(&columns)?;
        rows(&mut opened, &filter, |visit| {
            Ok::<_, Failure>(book.row(visit)?)
        })?;
        write::out(to, &book.end()?)?;
    } else {
        write::piece_by_piece(to, |file| {
            let mut lines = CsvFile::begin(file, &columns)?;
            rows(&mut opened, &filter, |visit| {
                Ok::<_, Cut>(lines.row(visit)?)
            })?;
            Ok(lines.end()?)
        })?;
    }
    Ok(write::tell(&opened.damage()))
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
