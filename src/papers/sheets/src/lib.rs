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

use papers::log::{Column, Totals, Visit};
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook, XlsxError};
use thiserror::Error;

/// Why no workbook could be made.
#[derive(Debug, Error)]
pub enum SheetError {
    /// There are more rows than a sheet has, or words longer than a cell holds.
    #[error("{}", words::papers::pages::no_workbook(.0))]
    Refused(#[from] XlsxError),
}

/// Makes a workbook of visits under these columns, and their totals.
///
/// # Errors
/// [`SheetError::Refused`] beyond what a sheet holds: 1,048,576 rows, 32,767 letters in a cell.
pub fn workbook(columns: &[Column], seen: &[Visit]) -> Result<Vec<u8>, SheetError> {
    let mut book = Workbook::new();
    // A fixed day, so that the same visits give the same file.
    let made = ExcelDateTime::from_ymd(2000, 1, 1)?;
    book.set_properties(
        &DocProperties::new()
            .set_title("Visit log")
            .set_creation_datetime(&made),
    );
    visits::write(book.add_worksheet(), columns, seen)?;
    totals::write(book.add_worksheet(), &Totals::of(seen))?;
    Ok(book.save_to_buffer()?)
}
