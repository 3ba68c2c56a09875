//! The sheet of visits.

use chrono::{Datelike, NaiveDate};
use papers::log::{Column, Value, Visit};
use rust_xlsxwriter::{ExcelDateTime, Format, FormatBorder, Worksheet, XlsxError};

pub(crate) fn write(
    sheet: &mut Worksheet,
    columns: &[Column],
    seen: &[Visit],
) -> Result<(), XlsxError> {
    let heading = Format::new()
        .set_bold()
        .set_border_bottom(FormatBorder::Thin);
    let day = Format::new().set_num_format("yyyy-mm-dd");
    sheet.set_name("visits")?;
    for (place, column) in (0u16..).zip(columns) {
        sheet.write_string_with_format(0, place, column.heading(), &heading)?;
        sheet.set_column_width(place, width(*column))?;
    }
    for (row, visit) in (1u32..).zip(seen) {
        for (place, column) in (0u16..).zip(columns) {
            match column.of(visit) {
                Value::Blank => {}
                Value::Text(words) => {
                    sheet.write_string(row, place, words)?;
                }
                Value::Count(count) => {
                    sheet.write_number(row, place, count)?;
                }
                Value::Day(date) => {
                    sheet.write_datetime_with_format(row, place, &date_of(date)?, &day)?;
                }
            }
        }
    }
    sheet.set_freeze_panes(1, 0)?;
    if let (Some(last), false) = (columns.len().checked_sub(1), seen.is_empty()) {
        sheet.autofilter(0, 0, seen.len() as u32, last as u16)?;
    }
    Ok(())
}

fn date_of(date: NaiveDate) -> Result<ExcelDateTime, XlsxError> {
    // A year that is none for a workbook is refused there.
    let year = u16::try_from(date.year()).unwrap_or(u16::MAX);
    ExcelDateTime::from_ymd(year, date.month() as u8, date.day() as u8)
}

/// Wide enough for what usually stands there, in letters.
const fn width(column: Column) -> f64 {
    match column {
        Column::Date | Column::Again => 11.0,
        Column::Place | Column::Person | Column::Clinician | Column::Outcome => 26.0,
        Column::Drops => 20.0,
        Column::Room
        | Column::Age
        | Column::Number
        | Column::Referred
        | Column::Pairs
        | Column::Minutes
        | Column::State => 13.0,
    }
}
