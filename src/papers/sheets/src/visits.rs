//! The sheet of visits.

use chrono::{Datelike, NaiveDate};
use papers::log::{Column, Value, Visit};
use rust_xlsxwriter::{ExcelDateTime, Format, FormatBorder, Worksheet, XlsxError};

/// The sheet while rows are put on it.
pub(crate) struct Rows {
    columns: Vec<Column>,
    day: Format,
    /// Which one comes next; the headings are row 0.
    next: u32,
}

impl Rows {
    /// Writes the headings.
    pub fn begin(sheet: &mut Worksheet, columns: &[Column]) -> Result<Self, XlsxError> {
        let heading = Format::new()
            .set_bold()
            .set_border_bottom(FormatBorder::Thin);
        sheet.set_name("visits")?;
        for (place, column) in (0u16..).zip(columns) {
            sheet.write_string_with_format(0, place, column.heading(), &heading)?;
            sheet.set_column_width(place, width(*column))?;
        }
        Ok(Self {
            columns: columns.to_vec(),
            day: Format::new().set_num_format("yyyy-mm-dd"),
            next: 1,
        })
    }

    pub fn row(&mut self, sheet: &mut Worksheet, visit: &Visit) -> Result<(), XlsxError> {
        for (place, column) in (0u16..).zip(&self.columns) {
            match column.of(visit) {
                Value::Blank => continue,
                Value::Text(words) => sheet.write_string(self.next, place, words),
                Value::Count(count) => sheet.write_number(self.next, place, count),
                Value::Day(date) => {
                    let date = date_of(date)?;
                    sheet.write_datetime_with_format(self.next, place, &date, &self.day)
                }
            }?;
        }
        self.next += 1;
        Ok(())
    }

    pub fn end(self, sheet: &mut Worksheet) -> Result<(), XlsxError> {
        sheet.set_freeze_panes(1, 0)?;
        if let (Some(last), 2..) = (self.columns.len().checked_sub(1), self.next) {
            sheet.autofilter(0, 0, self.next - 1, last as u16)?;
        }
        Ok(())
    }
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
