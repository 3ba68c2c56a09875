//! The visit log: one row a visit, for whoever manages the clinic. No findings; only who was seen where, by whom, and what
//! came of it.
//!
//! ```
//! use papers::log::{Column, Filter, csv, visits};
//! # let desk = papers::sample::Desk::full();
//! # let story = &desk.story;
//! let seen = visits(story, &Filter::default());
//! let shown = Column::without_personal(Column::ALL);
//! let mut file = Vec::new();
//! csv(&mut file, &shown, &seen)?;
//! let text = String::from_utf8(file)?;
//! assert!(text.starts_with("date,place,clinician,outcome,"));
//! assert!(!text.contains("Pennyquick"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod column;
mod csv;
mod filter;
mod in_order;
mod lengths;
mod totals;
mod visit;
mod waiting;
mod weeks;

pub use column::{Column, Value};
pub use csv::{CsvFile, csv, safe};
pub use filter::{Filter, visits, wanted};
pub use in_order::in_order;
pub use lengths::{Length, lengths};
pub use totals::{Tally, Total, Totals};
pub use visit::{Outcome, Visit};
pub use waiting::{Month, Waiting, waiting};
pub use weeks::{Week, WeeksAt, weeks};
