//! The visit log as a workbook: a sheet of visits with real days and numbers, and a sheet of totals.
//!
//! Words are written as words, so that nothing that somebody typed becomes a formula. This is a crate of its own because it
//! weighs half as much as the rest of the app.
//!
//! ```
//! use papers::log::{Column, Filter, visits};
//! # let desk = papers::sample::Desk::full();
//! let seen = visits(&desk.story, &Filter::default());
//! let bytes = sheets::workbook(Column::ALL, &seen)?;
//! assert!(bytes.starts_with(b"PK"));
//! # Ok::<(), sheets::SheetError>(())
//! ```

mod totals;
mod visits;

use papers::log::{Column, Tally, Visit};
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook, XlsxError};
use std::io::{self, Write};
use thiserror::Error;
use visits::Rows;

/// Why no workbook could be made.
#[derive(Debug, Error)]
pub enum SheetError {
    /// There are more rows than a sheet has, or words longer than a cell holds.
    #[error("{}", words::papers::pages::no_workbook(.0))]
    Refused(#[source] XlsxError),
    /// The disk takes no more, or never did.
    #[error("{}", words::papers::pages::no_workbook(.0))]
    Written(#[source] io::Error),
}

impl From<XlsxError> for SheetError {
    fn from(error: XlsxError) -> Self {
        match error {
            XlsxError::IoError(error) => Self::Written(error),
            #[cfg(feature = "on_disk")]
            XlsxError::TempFileError(_, error) => Self::Written(error),
            error => Self::Refused(error),
        }
    }
}

/// Makes a workbook of visits under these columns, and their totals.
///
/// # Errors
/// [`SheetError::Refused`] beyond what a sheet holds: 1,048,576 rows, 32,767 letters in a cell.
pub fn workbook(columns: &[Column], seen: &[Visit]) -> Result<Vec<u8>, SheetError> {
    let mut log = LogBook::begin(columns)?;
    seen.iter().try_for_each(|visit| log.row(visit))?;
    log.end()
}

/// A workbook for whoever has one visit after the other.
pub struct LogBook {
    book: Workbook,
    rows: Rows,
    tally: Tally,
}

impl LogBook {
    /// Begins one under these columns, in memory up to the end.
    ///
    /// # Errors
    /// [`SheetError::Refused`] for more columns than a sheet has.
    pub fn begin(columns: &[Column]) -> Result<Self, SheetError> {
        let mut book = Workbook::new();
        book.add_worksheet();
        Self::on(book, columns)
    }

    /// Begins one whose rows are on the disk up to the end, in a file without a name that is gone when this is. It is as little
    /// encrypted as the workbook, so the folder is the one where that will stand.
    ///
    /// # Errors
    /// As [`LogBook::begin`], and [`SheetError::Written`] where nothing can be written there.
    #[cfg(feature = "on_disk")]
    pub fn begin_in(folder: &std::path::Path, columns: &[Column]) -> Result<Self, SheetError> {
        let mut book = Workbook::new();
        book.set_tempdir(folder)?;
        book.add_worksheet_with_constant_memory()?;
        Self::on(book, columns)
    }

    /// On a workbook of one sheet.
    fn on(mut book: Workbook, columns: &[Column]) -> Result<Self, SheetError> {
        // A fixed day, so that the same visits give the same file.
        let made = ExcelDateTime::from_ymd(2000, 1, 1)?;
        book.set_properties(
            &DocProperties::new()
                .set_title("Visit log")
                .set_creation_datetime(&made),
        );
        let rows = Rows::begin(book.worksheet_from_index(0)?, columns)?;
        Ok(Self {
            book,
            rows,
            tally: Tally::default(),
        })
    }

    /// Puts a visit into it.
    ///
    /// # Errors
    /// [`SheetError::Refused`] beyond what a sheet holds.
    pub fn row(&mut self, visit: &Visit) -> Result<(), SheetError> {
        self.tally.count(visit);
        let sheet = self.book.worksheet_from_index(0)?;
        Ok(self.rows.row(sheet, visit)?)
    }

    /// The finished file.
    ///
    /// # Errors
    /// [`SheetError::Refused`] where it can't be put together.
    pub fn end(self) -> Result<Vec<u8>, SheetError> {
        Ok(self.totalled()?.save_to_buffer()?)
    }

    /// The same, as it is put together.
    ///
    /// # Errors
    /// [`SheetError::Refused`] where it can't be put together, [`SheetError::Written`] where it can't be written.
    pub fn end_into(self, file: impl Write + Send) -> Result<(), SheetError> {
        Ok(self.totalled()?.save_to_writer(file)?)
    }

    fn totalled(mut self) -> Result<Workbook, SheetError> {
        self.rows.end(self.book.worksheet_from_index(0)?)?;
        totals::write(self.book.add_worksheet(), &self.tally.totals())?;
        Ok(self.book)
    }
}
