//! Tables of figures: lines of cells parted by bars, the last two cells saying where the figures come from.

use optics::SphereCyl;

/// Where figures can come from.
const KINDS: [&str; 6] = [
    "published",
    "standard",
    "reference",
    "worked",
    "practice",
    "memory",
];

/// Those kinds that do not rest on our own understanding or memory.
const OUTSIDE: [&str; 3] = ["published", "standard", "reference"];

/// One table file.
pub struct Table {
    /// Its file name in `tables/`.
    pub name: &'static str,
    /// Its text.
    pub text: &'static str,
}

/// Names a table file and takes its text in.
macro_rules! table {
    ($name:literal) => {
        crate::table::Table {
            name: $name,
            text: include_str!(concat!("tables/", $name)),
        }
    };
}
pub(crate) use table;

/// One line of figures.
pub struct Row {
    /// The table and the line, for the message of a failure.
    pub place: String,
    kind: &'static str,
    cells: Vec<&'static str>,
}

impl Table {
    /// Every row, each checked for a kind and a source. Blank lines and lines that begin with `#` are passed over.
    pub fn rows(&self) -> Vec<Row> {
        let lines = self.text.lines().enumerate();
        lines
            .filter(|(_, line)| !line.trim().is_empty() && !line.starts_with('#'))
            .map(|(number, line)| Row::read(format!("{} line {}", self.name, number + 1), line))
            .collect()
    }

    /// How many rows are published, a standard's or a reference's.
    pub fn outside(&self) -> usize {
        let rows = self.rows();
        rows.iter()
            .filter(|row| OUTSIDE.contains(&row.kind))
            .count()
    }
}

impl Row {
    fn read(place: String, line: &'static str) -> Self {
        let mut cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let source = cells.pop().unwrap_or_default();
        let kind = cells.pop().unwrap_or_default();
        let known = KINDS.iter().position(|known| *known == kind);
        assert!(
            known.is_some(),
            "{place}: “{kind}” says not where the row comes from"
        );
        assert!(!source.is_empty(), "{place}: no source");
        Self { place, kind, cells }
    }

    /// The text of a cell, counted from 0.
    pub fn text(&self, at: usize) -> &'static str {
        let cell = self.cells.get(at);
        cell.unwrap_or_else(|| panic!("{}: no cell {at}", self.place))
    }

    /// The number in a cell.
    pub fn number(&self, at: usize) -> f64 {
        let text = self.text(at);
        let number = text.parse();
        number.unwrap_or_else(|_| panic!("{}: “{text}” is no number", self.place))
    }

    /// The lens in a cell.
    pub fn lens(&self, at: usize) -> SphereCyl {
        let read = SphereCyl::parse(self.text(at));
        read.unwrap_or_else(|error| panic!("{}: {error}", self.place))
    }

    /// Two numbers agree within a tolerance.
    pub fn assert_near(&self, found: f64, expected: f64, within: f64) {
        let place = &self.place;
        assert!(
            (found - expected).abs() <= within,
            "{place}: found {found}, expected {expected} within {within}"
        );
    }

    /// Two lenses agree: blur strength of the difference within a tolerance in dioptres.
    pub fn assert_lens(&self, found: &SphereCyl, expected: &SphereCyl, within: f64) {
        let apart = found.vector().distance(&expected.vector());
        let place = &self.place;
        assert!(
            apart <= within,
            "{place}: found {found}, expected {expected}, {apart} D apart"
        );
    }
}
