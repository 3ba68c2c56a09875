//! The log as comma-separated values: RFC 4180, UTF-8, lines ending with CR LF.
//!
//! A spreadsheet program takes a cell that begins with `=`, `+`, `-`, `@`, a tab or a carriage return for a formula, and runs it
//! (OWASP, CSV Injection; their full-width forms are said to do the same). Words that begin so get an apostrophe before them,
//! which the program shows as text.

use std::borrow::Cow;
use std::fmt::Display;
use std::io::{self, Write};

use csv::{Terminator, Writer, WriterBuilder};

use super::{Column, Value, Visit};

/// Writes the rows under their headings, one at a time.
///
/// # Errors
/// Where the file can't be written.
pub fn csv<'a>(
    file: impl Write,
    columns: &[Column],
    visits: impl IntoIterator<Item = &'a Visit>,
) -> io::Result<()> {
    let mut rows = CsvFile::begin(file, columns)?;
    visits.into_iter().try_for_each(|visit| rows.row(visit))?;
    rows.end()
}

/// The same for whoever has one row after the other: none of them is in memory once it is written.
pub struct CsvFile<'a, W: Write> {
    writer: Writer<W>,
    columns: &'a [Column],
    /// Room for the letters of a number.
    figures: Vec<u8>,
}

impl<'a, W: Write> CsvFile<'a, W> {
    /// Writes the headings.
    ///
    /// # Errors
    /// Where the file can't be written.
    pub fn begin(file: W, columns: &'a [Column]) -> io::Result<Self> {
        let mut writer = WriterBuilder::new()
            .terminator(Terminator::CRLF)
            .from_writer(file);
        writer.write_record(columns.iter().map(|column| column.heading()))?;
        Ok(Self {
            writer,
            columns,
            figures: Vec::new(),
        })
    }

    /// Writes a row.
    ///
    /// # Errors
    /// Where the file can't be written.
    pub fn row(&mut self, visit: &Visit) -> io::Result<()> {
        for column in self.columns {
            match column.of(visit) {
                Value::Blank => self.writer.write_field("")?,
                Value::Text(words) => self.writer.write_field(safe(words).as_bytes())?,
                // A day is said as ISO 8601 has it.
                Value::Day(day) => self.figures(day)?,
                Value::Count(count) => self.figures(count)?,
            }
        }
        Ok(self.writer.write_record(None::<&[u8]>)?)
    }

    fn figures(&mut self, figures: impl Display) -> io::Result<()> {
        self.figures.clear();
        write!(self.figures, "{figures}")?;
        Ok(self.writer.write_field(&self.figures)?)
    }

    /// Sees to it that all of it is written.
    ///
    /// # Errors
    /// Where the file can't be written.
    pub fn end(mut self) -> io::Result<()> {
        self.writer.flush()
    }
}

/// Words that no spreadsheet program takes for a formula.
pub fn safe(words: &str) -> Cow<'_, str> {
    let formula = |letter: char| "=+-@\t\r\n＝＋－＠".contains(letter);
    // Spaces before it do not save anybody: some programs trim them.
    if words.trim_start_matches(' ').starts_with(formula) {
        Cow::Owned(format!("'{words}"))
    } else {
        Cow::Borrowed(words)
    }
}
