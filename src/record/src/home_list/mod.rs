//! The list of its people that a home sends, as a file of separated values.
//!
//! Such a file comes from whatever program the home has: with commas, semicolons or tabs, in UTF-8 or in an older encoding, under
//! headings of its own. [`Table::read`] takes it apart, [`Mapping::guess`] reads the headings, the examiner puts right what was
//! guessed wrong, and [`judge`] says of every row whether it can be taken, and if not, which row, which column and what. Nothing is
//! taken in part: a row is good as a whole or kept aside as a whole ([`kept_aside`]). [`crate::Story::take_list`] turns the good
//! ones into entries that are to be written together.
//!
//! ```
//! use chrono::NaiveDate;
//! use record::Story;
//! use record::home_list::{Mapping, Table, judge};
//!
//! let file = b"Surname;First name;DOB;Room\nPennyquick;Orla;31/01/1940;14\nTidewell;Ambrose;31/02/1933;15\n";
//! let table = Table::read(file)?;
//! let mapping = Mapping::guess(&table);
//! let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
//! let judged = judge(&table, &mapping, &Story::default(), "Saltmarsh Court", today);
//!
//! assert!(judged[0].verdict.is_ok());
//! let faults = judged[1].verdict.as_ref().unwrap_err();
//! assert_eq!(faults[0].to_string(), "line 3, DOB: \u{201c}31/02/1933\u{201d} is no date");
//! # Ok::<(), record::home_list::ListError>(())
//! ```

mod columns;
mod dates;
pub(crate) mod held;
mod judge;
pub(crate) mod judged;
mod known;
mod names;
mod table;
mod take;
mod windows;

pub(crate) use columns::field_of;
pub use columns::{Field, Mapping};
pub use dates::DateOrder;
pub use judge::{Listed, judge};
pub use judged::{Fault, Judged, in_words, kept_aside};
pub(crate) use known::key;
pub use table::{Encoding, ListError, Row, Separator, Table};
pub use take::{Taken, ToWrite};
