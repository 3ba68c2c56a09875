//! Rows judged, whatever they tell: each taken as a whole, or kept aside as a whole with everything that is amiss with it.

use ::words::record::lists as say;
use std::collections::BTreeMap;
use std::fmt;

use super::judge::Listed;
use super::table::{Row, Table};
use crate::manner::DateOrder;

/// A row and what is thought of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judged<T = Listed> {
    /// Which row of [`Table::rows`].
    pub row: usize,
    /// What can be taken of it, or everything that is amiss with it.
    pub verdict: Result<T, Vec<Fault>>,
}

/// What is amiss with a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The line of the file, from 1.
    pub line: u64,
    /// The column's heading, where it is about one.
    pub column: Option<String>,
    /// What, in words.
    pub sentence: String,
}

impl fmt::Display for Fault {
    /// `line 3, DOB: “31/02/1933” is no date`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&say::line(&self.line))?;
        if let Some(column) = &self.column {
            write!(f, ", {column}")?;
        }
        write!(f, ": {}", self.sentence)
    }
}

/// Everything that is amiss with one row, its line told once: `line 3, DOB: “31/02/1933” is no date; Room: …`.
pub fn in_words(faults: &[Fault]) -> String {
    let Some((first, rest)) = faults.split_first() else {
        return String::new();
    };
    let rest = rest.iter().map(|fault| match &fault.column {
        Some(column) => format!("{column}: {}", fault.sentence),
        None => fault.sentence.clone(),
    });
    let said: Vec<String> = std::iter::once(first.to_string()).chain(rest).collect();
    said.join("; ")
}

/// Judges every row by itself, and sets aside what an earlier row told already: `key` tells two such rows, `again` says so.
pub(crate) fn each<T, K: Ord>(
    table: &Table,
    judge: impl Fn(&Row) -> Result<T, Vec<Fault>>,
    key: impl Fn(&T) -> K,
    again: impl Fn(&T, u64) -> String,
) -> Vec<Judged<T>> {
    let mut met: BTreeMap<K, u64> = BTreeMap::new();
    let mut first_time = |row: &Row, told: T| match met.insert(key(&told), row.line) {
        None => Ok(told),
        Some(line) => Err(vec![fault(row, None, again(&told, line))]),
    };
    let rows = table.rows.iter().enumerate();
    rows.map(|(at, row)| Judged {
        row: at,
        verdict: judge(row).and_then(|told| first_time(row, told)),
    })
    .collect()
}

/// The rows that can't be taken, as a file again: the headings, the cells as they came, and in front the line and the reason, with
/// days in the reader's order.
pub fn kept_aside<T>(table: &Table, judged: &[Judged<T>], dates: DateOrder) -> String {
    let mut lines = vec![line_of(
        table,
        say::aside_line(),
        say::aside_why(),
        &table.heading,
    )];
    for each in judged {
        let (Err(faults), Some(row)) = (&each.verdict, table.rows.get(each.row)) else {
            continue;
        };
        let (line, why) = (row.line.to_string(), dates.in_words(&in_words(faults)));
        lines.push(line_of(table, &line, &why, &row.cells));
    }
    lines.concat()
}

/// One line in the file's own separator; quotes where a cell needs them (RFC 4180).
fn line_of(table: &Table, line: &str, why: &str, cells: &[String]) -> String {
    let separator = char::from(table.separator.byte());
    let cells = [line, why]
        .into_iter()
        .chain(cells.iter().map(String::as_str));
    let quoted: Vec<String> = cells
        .map(|cell| {
            if cell.contains([separator, '"', '\n', '\r']) {
                format!("\"{}\"", cell.replace('"', "\"\""))
            } else {
                cell.to_owned()
            }
        })
        .collect();
    format!("{}\r\n", quoted.join(&separator.to_string()))
}

pub(crate) fn fault(row: &Row, column: Option<String>, sentence: impl Into<String>) -> Fault {
    Fault {
        line: row.line,
        column,
        sentence: sentence.into(),
    }
}

/// A row with more or fewer cells than the heading has slipped: what stands where, nobody knows.
pub(crate) fn slipped(table: &Table, row: &Row) -> Option<Fault> {
    let (has, wants) = (row.cells.len(), table.heading.len());
    let surplus = row.cells.iter().skip(wants).any(|cell| !cell.is_empty());
    let slipped = has < wants || surplus;
    slipped.then(|| fault(row, None, say::cells_differ(&has, &wants)))
}
