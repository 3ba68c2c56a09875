//! What the log can show of a visit, each as the kind of value that it is.

use ::words::papers::log as say;
use chrono::NaiveDate;
use record::ExamState;
use serde::{Deserialize, Serialize};

use super::Visit;

/// What stands in a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Value<'a> {
    /// Nothing.
    Blank,
    /// Words.
    Text(&'a str),
    /// A day.
    Day(NaiveDate),
    /// A number of things.
    Count(u32),
}

macro_rules! columns {
    ($($(#[$doc:meta])* $name:ident: $heading:literal, $said:path;)*) => {
        /// A column of the log.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        pub enum Column {
            $($(#[$doc])* $name,)*
        }

        impl Column {
            /// Every column, in the usual order.
            pub const ALL: &[Self] = &[$(Self::$name,)*];

            /// Its heading in a file, and the word by which it is chosen.
            pub const fn heading(self) -> &'static str {
                match self {
                    $(Self::$name => $heading,)*
                }
            }

            /// Its heading for whoever reads the screen.
            pub fn said(self) -> &'static str {
                match self {
                    $(Self::$name => $said(),)*
                }
            }
        }
    };
}

columns! {
    /// The day.
    Date: "date", say::column_date;
    /// The home or address.
    Place: "place", say::column_place;
    /// The room there.
    Room: "room", say::column_room;
    /// Who was seen.
    Person: "person", say::column_person;
    /// How old they were.
    Age: "age", say::column_age;
    /// The number by which others know them.
    Number: "number", say::column_number;
    /// Who examined.
    Clinician: "clinician", say::column_clinician;
    /// What came of it.
    Outcome: "outcome", say::column_outcome;
    /// How urgent a referral was made.
    Referred: "referred", say::column_referred;
    /// Pairs of glasses ordered.
    Pairs: "pairs ordered", say::column_pairs;
    /// Drops given.
    Drops: "drops", say::column_drops;
    /// When the person is to be seen again.
    Again: "see again", say::column_again;
    /// How long it took.
    Minutes: "minutes", say::column_minutes;
    /// Whether it is signed.
    State: "state", say::column_state;
}

impl Column {
    /// Finds a column by its heading.
    pub fn named(heading: &str) -> Option<Self> {
        let wanted = heading.trim().to_lowercase();
        Self::ALL
            .iter()
            .copied()
            .find(|column| column.heading() == wanted)
    }

    /// Whether it tells who somebody is, or where to find them.
    pub const fn is_personal(self) -> bool {
        matches!(self, Self::Room | Self::Person | Self::Age | Self::Number)
    }

    /// The same columns without the personal ones.
    pub fn without_personal(columns: &[Self]) -> Vec<Self> {
        let kept = columns
            .iter()
            .copied()
            .filter(|column| !column.is_personal());
        kept.collect()
    }

    /// What stands there of a visit.
    pub fn of(self, visit: &Visit) -> Value<'_> {
        match self {
            Self::Date => Value::Day(visit.date),
            Self::Place => text(&visit.place),
            Self::Room => text(&visit.room),
            Self::Person => text(&visit.person),
            // An age that is only about right stays in words.
            Self::Age => visit
                .age
                .parse()
                .map_or_else(|_| text(&visit.age), Value::Count),
            Self::Number => text(&visit.number),
            Self::Clinician => text(&visit.clinician),
            Self::Outcome => text(visit.outcome.words()),
            Self::Referred => visit
                .referred
                .map_or(Value::Blank, |urgency| text(urgency.word())),
            Self::Pairs => Value::Count(visit.pairs),
            Self::Drops => text(&visit.drops),
            Self::Again => visit.again_on.map_or(Value::Blank, Value::Day),
            Self::Minutes => visit.minutes.map_or(Value::Blank, Value::Count),
            Self::State => text(match visit.state {
                ExamState::Open => say::state_open(),
                ExamState::Signed => say::state_signed(),
                ExamState::Amended => say::state_amended(),
            }),
        }
    }
}

const fn text(words: &str) -> Value<'_> {
    if words.is_empty() {
        Value::Blank
    } else {
        Value::Text(words)
    }
}
