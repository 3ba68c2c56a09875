//! `lightround log`: the visits as rows.

use super::open::open;
use super::options::LogAsked;
use super::write;
use crate::ended::{Ended, Failure};
use ::papers::log::{Column, csv, visits};

pub fn answer(asked: &LogAsked) -> Result<Ended, Failure> {
    let opened = open(&asked.records)?;
    let seen = visits(&opened.story, &asked.which.filter());
    let columns = columns(asked);
    let to = asked.out.as_deref();
    if asked.xlsx {
        write::out(to, &sheets::workbook(&columns, &seen)?)?;
    } else {
        write::piece_by_piece(to, |file| csv(file, &columns, &seen))?;
    }
    Ok(write::tell(&opened.damage))
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
