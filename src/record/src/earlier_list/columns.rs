//! Which column holds what: guessed, put right by hand, and kept for the next file of the same kind.

use ::words::record::lists as say;
use optics::Eye;
use serde::{Deserialize, Serialize};

use super::acuity;
use super::field::{Field, words};
use super::{DateOrder, Row, Table};
use crate::check::{Checks, FieldError};
use crate::home_list::held;
use crate::sections::OneOf;

/// What a number without anything about it says of an acuity: 0.3 is one thing as a decimal and another as logMAR.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Bare {
    /// A decimal acuity.
    Decimal,
    /// logMAR.
    LogMar,
}

impl OneOf for Bare {
    fn all() -> Vec<Self> {
        vec![Self::Decimal, Self::LogMar]
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::Decimal => "decimal",
            Self::LogMar => "logMAR",
        }
    }
}

/// Which column holds what, and how it is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mapping {
    /// For each column what it holds; none for a column that is left alone.
    pub columns: Vec<Option<Field>>,
    /// How dates are written.
    pub dates: DateOrder,
    /// What a bare number says of an acuity; none where nobody has said, and then no such row is taken.
    pub bare: Option<Bare>,
}

impl Mapping {
    /// What the headings and the dates themselves suggest.
    pub fn guess(table: &Table) -> Self {
        let mut mapping = Self {
            columns: held::guess(table, Field::of_heading, Field::Note),
            dates: DateOrder::DayFirst,
            bare: None,
        };
        let days = Field::DAYS.into_iter();
        mapping.dates = DateOrder::guess(days.flat_map(|field| mapping.values(table, field)));
        mapping.bare = mapping.bare_in(table);
        mapping
    }

    /// What the headings of acuities say of bare numbers.
    fn bare_in(&self, table: &Table) -> Option<Bare> {
        let said = Eye::BOTH
            .into_iter()
            .flat_map(|eye| [Field::Acuity(eye), Field::Unaided(eye)])
            .flat_map(|field| self.of(field))
            .flat_map(|column| words(&table.column_name(column)));
        let said: Vec<String> = said.collect();
        let has = |word: &str| said.iter().any(|one| one == word);
        match (has("logmar"), has("decimal")) {
            (true, false) => Some(Bare::LogMar),
            (false, true) => Some(Bare::Decimal),
            _ => None,
        }
    }

    /// The columns that hold something, in their order.
    pub fn of(&self, field: Field) -> impl Iterator<Item = usize> {
        held::of(&self.columns, field)
    }

    /// What a row says under a field; nothing where no column holds it.
    pub(super) fn text<'a>(&self, table: &'a Table, row: &'a Row, field: Field) -> &'a str {
        held::text(&self.columns, table, row, field)
    }

    /// The values of a field in all rows.
    pub(super) fn values<'a>(
        &self,
        table: &'a Table,
        field: Field,
    ) -> impl Iterator<Item = &'a str> + use<'a> {
        held::values(&self.columns, table, field)
    }

    /// Whether the days could also be read with day and month the other way round.
    pub fn dates_are_open(&self, table: &Table) -> bool {
        let days = Field::DAYS.into_iter();
        DateOrder::is_open(days.flat_map(|field| self.values(table, field)))
    }

    /// Whether a number about an acuity stands without anything that says which scale it is on.
    pub fn bare_is_open(&self, table: &Table) -> bool {
        let columns = Eye::BOTH
            .into_iter()
            .flat_map(|eye| [Field::Acuity(eye), Field::Unaided(eye)]);
        let mut values = columns.flat_map(|field| self.values(table, field));
        values.any(acuity::is_bare)
    }

    /// One plain sentence for each thing that keeps the file from being read so.
    pub fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        let has = |field| self.of(field).next().is_some();
        let named = has(Field::Name) || has(Field::Family);
        let certain = has(Field::Identifier) || (named && has(Field::Born));
        if !certain {
            checks.say("columns", say::ask_whose());
        }
        held::check_names(&mut checks, &self.columns, Field::NAMES);
        if !has(Field::On) {
            checks.say("columns", say::ask_date_column());
        }
        for eye in Eye::BOTH {
            let parts = [Field::Sphere(eye), Field::Cylinder(eye), Field::Axis(eye)];
            if has(Field::Lens(eye)) && parts.into_iter().any(has) {
                checks.say("columns", say::lens_twice(&eye.said()));
            }
        }
        held::check_once(&mut checks, &self.columns, Field::Note);
        checks.done()
    }
}

/// A mapping under a name, by headings rather than by place, for the next file of the same kind.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Saved {
    /// What whoever kept it calls it.
    pub name: String,
    /// Each heading that holds something, with what.
    pub columns: Vec<(String, Field)>,
    /// How dates are written.
    pub dates: DateOrder,
    /// What a bare number says of an acuity.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bare: Option<Bare>,
}

impl Saved {
    /// Keeps a mapping of a file.
    pub fn of(name: impl Into<String>, table: &Table, mapping: &Mapping) -> Self {
        let held = mapping.columns.iter().enumerate();
        let columns = held.filter_map(|(at, field)| Some((table.column_name(at), (*field)?)));
        Self {
            name: name.into(),
            columns: columns.collect(),
            dates: mapping.dates,
            bare: mapping.bare,
        }
    }

    /// The mapping for another file; none where that lacks one of the headings or has it twice.
    pub fn on(&self, table: &Table) -> Option<Mapping> {
        let names: Vec<String> = (0..table.heading.len())
            .map(|at| table.column_name(at))
            .collect();
        let mut columns = vec![None; names.len()];
        for (heading, field) in &self.columns {
            let mut places = names.iter().enumerate();
            let (at, _) = places.find(|(_, name)| *name == heading)?;
            if places.any(|(_, name)| name == heading) || columns[at].is_some() {
                return None;
            }
            columns[at] = Some(*field);
        }
        Some(Mapping {
            columns,
            dates: self.dates,
            bare: self.bare,
        })
    }
}
