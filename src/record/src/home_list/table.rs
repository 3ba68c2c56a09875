//! Bytes to rows: encoding, separator, heading.

use ::words::record::lists as say;
use thiserror::Error;

use super::windows;

/// Longer than the list of any home. Own choice.
const MOST_BYTES: usize = 4 << 20;

/// More people than any home has. Own choice.
const MOST_ROWS: usize = 5_000;

/// So many lines tell which separator it is.
const TELLING: usize = 50;

/// A file taken apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// The headings.
    pub heading: Vec<String>,
    /// The rows below, without those that are blank.
    pub rows: Vec<Row>,
    /// How the bytes were read.
    pub encoding: Encoding,
    /// What stands between the cells.
    pub separator: Separator,
}

/// One row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The line of the file on which it begins, from 1.
    pub line: u64,
    /// Its cells, without the space around them.
    pub cells: Vec<String>,
}

/// How bytes stand for letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Encoding {
    /// UTF-8, with a byte order mark or without.
    Utf8,
    /// Windows-1252: taken for what is not UTF-8.
    Windows1252,
}

/// What stands between cells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Separator {
    /// `,`
    Comma,
    /// `;`
    Semicolon,
    /// A tab.
    Tab,
}

impl Separator {
    const ALL: [Self; 3] = [Self::Comma, Self::Semicolon, Self::Tab];

    pub(super) const fn byte(self) -> u8 {
        match self {
            Self::Comma => b',',
            Self::Semicolon => b';',
            Self::Tab => b'\t',
        }
    }

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Comma => say::commas(),
            Self::Semicolon => say::semicolons(),
            Self::Tab => say::tabs(),
        }
    }
}

/// Why a file can't be read as a list at all.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ListError {
    /// Nothing is in it.
    #[error("{}", say::file_empty())]
    Empty,
    /// Only a heading is in it.
    #[error("{}", say::file_heading_only())]
    OnlyHeading,
    /// It is no text.
    #[error("{}", say::file_no_list())]
    NotText,
    /// It is longer than the list of any home.
    #[error("{}", say::file_too_long(.bytes, &MOST_BYTES))]
    TooLong {
        /// How long it is.
        bytes: usize,
    },
    /// It has more rows than any home has people.
    #[error("{}", say::file_too_many_rows(&MOST_ROWS))]
    TooMany,
}

impl Table {
    /// Takes a file apart.
    ///
    /// # Errors
    /// [`ListError`]: it is empty, no text, or far too long. Bytes of whatever kind give an error or a table, never a panic.
    pub fn read(bytes: &[u8]) -> Result<Self, ListError> {
        if bytes.len() > MOST_BYTES {
            return Err(ListError::TooLong { bytes: bytes.len() });
        }
        // Spreadsheets and UTF-16 are full of noughts; a list has none.
        if bytes.contains(&0) {
            return Err(ListError::NotText);
        }
        let (text, encoding) = decode(bytes);
        let separator = separator(&text);
        let mut rows = rows(&text, separator, MOST_ROWS + TELLING);
        let at = heading(&rows).ok_or(ListError::Empty)?;
        let heading = rows
            .drain(..=at)
            .next_back()
            .map(|row| row.cells)
            .unwrap_or_default();
        if rows.is_empty() {
            return Err(ListError::OnlyHeading);
        }
        if rows.len() > MOST_ROWS {
            return Err(ListError::TooMany);
        }
        Ok(Self {
            heading,
            rows,
            encoding,
            separator,
        })
    }

    /// A cell of a row; blank where the row is too short for it.
    pub fn cell<'a>(&self, row: &'a Row, column: usize) -> &'a str {
        row.cells.get(column).map_or("", String::as_str)
    }

    /// What a column is called: its heading, or its number from 1 where it has none.
    pub fn column_name(&self, column: usize) -> String {
        match self.heading.get(column) {
            Some(name) if !name.is_empty() => name.clone(),
            _ => say::column(&(column + 1)),
        }
    }
}

fn decode(bytes: &[u8]) -> (String, Encoding) {
    let bare = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    match std::str::from_utf8(bare) {
        Ok(text) => (text.to_owned(), Encoding::Utf8),
        Err(_) => (windows::decode(bare), Encoding::Windows1252),
    }
}

/// The separator that cuts most lines into equally many cells; of equals the one that makes more cells.
fn separator(text: &str) -> Separator {
    let agreement = |separator: Separator| {
        let rows = rows(text, separator, TELLING);
        let widths = || {
            rows.iter()
                .map(|row| row.cells.len())
                .filter(|width| *width > 1)
        };
        let count = |width: usize| widths().filter(|other| *other == width).count();
        widths().map(|width| (count(width), width)).max()
    };
    // The last of equals is what max_by_key gives, and the comma is the commonest.
    let separators = Separator::ALL.into_iter().rev();
    separators
        .max_by_key(|separator| agreement(*separator))
        .unwrap_or(Separator::Comma)
}

/// At most so many rows that are not blank.
fn rows(text: &str, separator: Separator, most: usize) -> Vec<Row> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator.byte())
        .from_reader(text.as_bytes());
    let records = reader.records().map_while(Result::ok);
    let mut line = LineAt::of(text);
    let rows = records.map(|record| Row {
        line: line.of_byte(record.position().map_or(0, csv::Position::byte)),
        cells: record.iter().map(|cell| cell.trim().to_owned()).collect(),
    });
    let full = rows.filter(|row| row.cells.iter().any(|cell| !cell.is_empty()));
    full.take(most).collect()
}

/// The first row with two cells or more that are not blank: what stands above it is a title. Where there is none, the first row.
fn heading(rows: &[Row]) -> Option<usize> {
    let filled = |row: &Row| row.cells.iter().filter(|cell| !cell.is_empty()).count();
    let wide = rows.iter().position(|row| filled(row) > 1);
    wide.or_else(|| (!rows.is_empty()).then_some(0))
}

/// Counts lines as one reads on. The reader's own count is one behind where lines end in two characters.
struct LineAt<'a> {
    text: &'a [u8],
    byte: usize,
    line: u64,
}

impl<'a> LineAt<'a> {
    fn of(text: &'a str) -> Self {
        Self {
            text: text.as_bytes(),
            byte: 0,
            line: 1,
        }
    }

    /// The line on which what begins at a byte stands; line ends before it are not part of it.
    fn of_byte(&mut self, byte: u64) -> u64 {
        let to = usize::try_from(byte).unwrap_or(usize::MAX);
        while let Some(at) = self.text.get(self.byte) {
            let is_end = matches!(at, b'\r' | b'\n');
            if self.byte >= to && !is_end {
                break;
            }
            self.line += u64::from(*at == b'\n');
            self.byte += 1;
        }
        self.line
    }
}
