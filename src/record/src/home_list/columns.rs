//! Which column holds what: guessed from the heading, put right by hand.

use super::dates::DateOrder;
use super::held;
use super::table::Table;
use crate::check::{Checks, FieldError};
use crate::sections::OneOf;
use ::words::record::lists as say;

/// What a column may hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// The whole name.
    Name,
    /// The given name.
    Given,
    /// The family name.
    Family,
    /// The date of birth.
    Born,
    /// The room.
    Room,
    /// The unit that the room is in.
    Unit,
    /// Anything to remember before knocking. Several columns may be notes.
    Note,
    /// A number by which others know the person.
    Identifier,
}

impl Field {
    /// The whole name, or given and family name.
    pub(super) const NAMES: [Self; 3] = [Self::Name, Self::Given, Self::Family];
}

impl OneOf for Field {
    fn all() -> Vec<Self> {
        vec![
            Self::Name,
            Self::Given,
            Self::Family,
            Self::Born,
            Self::Room,
            Self::Unit,
            Self::Note,
            Self::Identifier,
        ]
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::Name => say::whole_name(),
            Self::Given => say::given_name(),
            Self::Family => say::family_name(),
            Self::Born => say::date_of_birth(),
            Self::Room => say::room(),
            Self::Unit => say::unit_or_floor(),
            Self::Note => say::note(),
            Self::Identifier => say::number(),
        }
    }
}

/// Common words in headings, each with what they stand for; a heading of several words is known by one of them, the first rule
/// that fits. Common practice, no source.
const WORDS: [(Field, &[&str]); 8] = [
    (
        Field::Born,
        &[
            "dob",
            "birth",
            "born",
            "birthday",
            "birthdate",
            "geburtsdatum",
            "naissance",
            "nacimiento",
        ],
    ),
    (
        Field::Family,
        &[
            "surname",
            "family",
            "lastname",
            "last",
            "familyname",
            "nachname",
            "nom",
            "apellido",
        ],
    ),
    (
        Field::Given,
        &[
            "forename",
            "forenames",
            "given",
            "firstname",
            "first",
            "christian",
            "vorname",
            "prénom",
            "prenom",
            "nombre",
        ],
    ),
    (
        Field::Identifier,
        &[
            "id",
            "nhs",
            "identifier",
            "reference",
            "ref",
            "number",
            "no",
            "nr",
            "hospital",
        ],
    ),
    (
        Field::Room,
        &["room", "bed", "flat", "zimmer", "chambre", "habitación"],
    ),
    (
        Field::Unit,
        &[
            "unit",
            "floor",
            "wing",
            "ward",
            "house",
            "level",
            "station",
            "wohnbereich",
            "étage",
        ],
    ),
    (
        Field::Note,
        &[
            "note",
            "notes",
            "comment",
            "comments",
            "remark",
            "remarks",
            "information",
            "info",
            "bemerkung",
        ],
    ),
    (
        Field::Name,
        &[
            "name",
            "resident",
            "residents",
            "person",
            "patient",
            "client",
        ],
    ),
];

/// Which column holds what, and in which order dates are written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mapping {
    /// For each column what it holds; none for a column that is left alone.
    pub columns: Vec<Option<Field>>,
    /// How dates of birth are written.
    pub dates: DateOrder,
}

impl Mapping {
    /// What the headings and the dates themselves suggest.
    pub fn guess(table: &Table) -> Self {
        let mut mapping = Self {
            columns: held::guess(table, field_of, Field::Note),
            dates: DateOrder::DayFirst,
        };
        mapping.dates = DateOrder::guess(mapping.births(table));
        mapping
    }

    /// The columns that hold something, in their order.
    pub fn of(&self, field: Field) -> impl Iterator<Item = usize> {
        held::of(&self.columns, field)
    }

    fn births<'a>(&self, table: &'a Table) -> impl Iterator<Item = &'a str> + use<'a> {
        held::values(&self.columns, table, Field::Born)
    }

    /// Whether the birth dates could also be read with day and month the other way round.
    pub fn dates_are_open(&self, table: &Table) -> bool {
        DateOrder::is_open(self.births(table))
    }

    /// One plain sentence for each thing that keeps the list from being read so.
    pub fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        let has = |field| self.of(field).next().is_some();
        if !Field::NAMES.into_iter().any(has) {
            checks.say("columns", say::ask_name_column());
        }
        held::check_names(&mut checks, &self.columns, Field::NAMES);
        held::check_once(&mut checks, &self.columns, Field::Note);
        checks.done()
    }
}

/// What a heading stands for.
pub(crate) fn field_of(heading: &str) -> Option<Field> {
    // "D.O.B." and "no." are the words without their points.
    let lower = heading.to_lowercase().replace('.', "");
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    // "Room no", "flat number": what is numbered says more than that it is.
    let numbered = ["no", "nr", "number", "id"];
    let fits = |known: &[&str], skip: bool| {
        let mut words = words
            .iter()
            .filter(|word| !(skip && numbered.contains(word)));
        words.any(|word| known.contains(word))
    };
    let find = |skip| {
        WORDS
            .iter()
            .find(|(_, known)| fits(known, skip))
            .map(|(field, _)| *field)
    };
    find(true).or_else(|| find(false))
}
