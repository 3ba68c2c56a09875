//! Every row judged: taken as a whole, or kept aside as a whole.

use ::words::record::lists as say;
use chrono::NaiveDate;

use super::columns::{Field, Mapping};
use super::held;
use super::judged::{Fault, Judged, each, fault, slipped};
use super::known::{Known, key};
use super::table::{Row, Table};
use crate::ids::PersonId;
use crate::person::{Born, Name, Person, PersonDetails};
use crate::story::Story;

/// Longer than any name, room or note: such a cell has swallowed others. Own choice.
const LONGEST_CELL: usize = 500;

/// A person as a row tells it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// The name.
    pub name: Name,
    /// The date of birth, where one is given.
    pub born: Option<NaiveDate>,
    /// The room.
    pub room: String,
    /// The unit that it is in.
    pub unit: String,
    /// Anything to remember.
    pub note: String,
    /// A number by which others know the person.
    pub identifier: Option<String>,
    /// Who on record it is, where it is somebody.
    pub known: Option<PersonId>,
}

/// Judges every row of a list that a place sent. `today` tells which dates lie in the future. Nobody is taken twice out of one
/// list.
pub fn judge(
    table: &Table,
    mapping: &Mapping,
    story: &Story,
    place: &str,
    today: NaiveDate,
) -> Vec<Judged> {
    let bench = Bench {
        table,
        mapping,
        known: Known::of(story, place),
        today,
    };
    each(
        table,
        |row| bench.judge(row),
        |listed| (key(&listed.name), listed.born),
        |listed, line| say::stands_already(&listed.name, &line),
    )
}

struct Bench<'a> {
    table: &'a Table,
    mapping: &'a Mapping,
    known: Known<'a>,
    today: NaiveDate,
}

impl Bench<'_> {
    fn judge(&self, row: &Row) -> Result<Listed, Vec<Fault>> {
        let mut faults: Vec<Fault> = slipped(self.table, row).into_iter().collect();
        let mapped = self.mapping.columns.iter().enumerate();
        for (column, _) in mapped.filter(|(_, field)| field.is_some()) {
            let long = self.table.cell(row, column).chars().count() > LONGEST_CELL;
            if long {
                let sentence = say::cell_too_long(&LONGEST_CELL);
                faults.push(fault(row, Some(self.table.column_name(column)), sentence));
            }
        }
        let (name, born) = (self.name(row), self.born(row, &mut faults));
        faults.extend(self.person(row, &name, born));
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(Listed {
            known: self.known.find(&name, born).map(Person::id),
            born,
            room: self.text(row, Field::Room).to_owned(),
            unit: self.text(row, Field::Unit).to_owned(),
            note: self.notes(row),
            identifier: Some(self.text(row, Field::Identifier))
                .filter(|number| !number.is_empty())
                .map(str::to_owned),
            name,
        })
    }

    fn text<'a>(&'a self, row: &'a Row, field: Field) -> &'a str {
        held::text(&self.mapping.columns, self.table, row, field)
    }

    fn name(&self, row: &Row) -> Name {
        held::name(&self.mapping.columns, self.table, row, Field::NAMES)
    }

    fn born(&self, row: &Row, faults: &mut Vec<Fault>) -> Option<NaiveDate> {
        let text = self.text(row, Field::Born);
        if text.is_empty() {
            return None;
        }
        let read = self.mapping.dates.read(text, self.today);
        if read.is_none() {
            let sentence = say::no_date(&text);
            faults.push(fault(row, self.column(Field::Born), sentence));
        }
        read
    }

    /// The same checks as for a person who is put down by hand.
    fn person(&self, row: &Row, name: &Name, born: Option<NaiveDate>) -> Vec<Fault> {
        let details = PersonDetails {
            name: name.clone(),
            born: born.map(Born::Date),
            ..PersonDetails::default()
        };
        let found = details.check(self.today).into_iter();
        found
            .map(|error| {
                let field = if error.field == "born" {
                    Field::Born
                } else {
                    self.name_field()
                };
                fault(row, self.column(field), error.sentence)
            })
            .collect()
    }

    fn name_field(&self) -> Field {
        let fields = [Field::Name, Field::Family, Field::Given];
        let mut held = fields
            .into_iter()
            .filter(|field| self.mapping.of(*field).next().is_some());
        held.next().unwrap_or(Field::Name)
    }

    fn column(&self, field: Field) -> Option<String> {
        held::heading(&self.mapping.columns, self.table, field)
    }

    fn notes(&self, row: &Row) -> String {
        let columns = self.mapping.of(Field::Note);
        let notes = columns.map(|column| self.table.cell(row, column));
        let said: Vec<&str> = notes.filter(|note| !note.is_empty()).collect();
        said.join("; ")
    }
}
