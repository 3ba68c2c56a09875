//! What every page does that reads a file of separated values: which column holds what, and the rows that are kept aside.

mod aside;
mod columns;
mod pick;

pub use aside::{KeptAside, faults};
pub use columns::{Columns, Dates};
pub use pick::PickFile;

use ::words::app::round as say;
use record::home_list::Table;
use std::sync::Arc;

/// A file that is being looked at, taken apart.
pub type Opened = Option<Arc<Table>>;

/// So many rows of each kind are shown: the rest are counted.
pub const SHOWN: usize = 60;

/// How many rows are not shown, where there are any.
pub fn more(count: usize) -> Option<String> {
    (count > SHOWN).then(|| say::and_more(&(count - SHOWN)))
}
