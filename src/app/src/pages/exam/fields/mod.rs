//! What a section's editor is made of: a way into the section, and a handful of fields upon it.

mod choose;
mod lenses;
mod list;
mod numbers;
mod part;
mod row;
mod slate;
mod why;
mod words;

pub use choose::*;
pub use lenses::{found_lens, lens, prism};
pub use list::*;
pub use numbers::{Measure, measured, number, optional};
pub use part::{Part, Spot};
pub use row::{Asked, missing, row};
pub use slate::Slate;
pub use why::why_sheet;
pub use words::*;

pub(in crate::pages::exam) use part::at;
