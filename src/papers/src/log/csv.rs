//! The log as comma-separated values: RFC 4180, UTF-8, lines ending with CR LF.
//!
//! A spreadsheet program takes a cell that begins with `=`, `+`, `-`, `@`, a tab or a carriage return for a formula, and runs it
//! (OWASP, CSV Injection; their full-width forms are said to do the same). Words that begin so get an apostrophe before them,
//! which the program shows as text.

use std::io::Write;

use csv::{Terminator, WriterBuilder};

use super::{Column, Value, Visit};

/// Writes the rows under their headings, one at a time.
///
/// # Errors
/// Where the file can't be written.
pub fn csv<'a>(
    file: impl Write,
    columns: &[Column],
    visits: impl IntoIterator<Item = &'a Visit>,
) -> std::io::Result<()> {
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(file);
    writer.write_record(columns.iter().map(|column| column.heading()))?;
    for visit in visits {
        writer.write_record(columns.iter().map(|column| cell(column.of(visit))))?;
    }
    writer.flush()
}

fn cell(value: Value) -> String {
    match value {
        Value::Blank => String::new(),
        Value::Text(words) => safe(&words),
        Value::Day(day) => day.format("%Y-%m-%d").to_string(),
        Value::Count(count) => count.to_string(),
    }
}

/// Words that no spreadsheet program takes for a formula.
pub fn safe(words: &str) -> String {
    let formula = |letter: char| "=+-@\t\r\n＝＋－＠".contains(letter);
    // Spaces before it do not save anybody: some programs trim them.
    if words.trim_start_matches(' ').starts_with(formula) {
        format!("'{words}")
    } else {
        words.to_owned()
    }
}
