//! What somebody else found before: earlier findings as a file of separated values, one row an examination.
//!
//! The file is taken apart as the list of a home is ([`Table`]), its headings are guessed ([`Mapping::guess`]) and put right by
//! hand, and a mapping can be kept for the next file of the same kind ([`Saved`]). [`judge`] says of every row whether it can
//! be taken: whose it is must be certain, every value must be written in a way that has one meaning, and a row is good as a
//! whole or kept aside as a whole. [`crate::Story::take_earlier`] turns the good ones into exams of their day, which stand as
//! last time's findings.
//!
//! ```
//! use chrono::NaiveDate;
//! use record::Story;
//! use record::earlier_list::{Mapping, Saved, Table, judge};
//!
//! let file = b"Number,Exam date,RE Rx,RE VA\n12,04/03/2025,+2.50/1.00x90,6/12\n";
//! let table = Table::read(file)?;
//! let mapping = Mapping::guess(&table);
//! assert!(mapping.check().is_empty());
//! let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
//! let faults = judge(&table, &mapping, &Story::default(), today).remove(0).verdict.unwrap_err();
//! assert_eq!(
//!     faults[1].to_string(),
//!     "line 2, RE Rx: “1.00” (character 7) has no sign: write +1.00 or −1.00"
//! );
//!
//! let kept = Saved::of("the clinic before", &table, &mapping);
//! assert_eq!(kept.on(&table), Some(mapping));
//! # Ok::<(), record::home_list::ListError>(())
//! ```

mod acuity;
mod cells;
mod columns;
mod field;
mod judge;
mod take;
mod whom;

pub use crate::home_list::{DateOrder, Fault, ListError, Row, Table, kept_aside};
pub use columns::{Bare, Mapping, Saved};
pub use field::Field;
pub use judge::{Earlier, Judged, judge};
