//! What every place that keeps frames promises, as cases to run against it: in a test, or in a browser.
//!
//! [`keeping`] is what a tablet's [`Storage`](crate::Storage) and a relay's [`FrameStore`](crate::exchange::FrameStore) both
//! promise, and is asked of every one of them. [`tablet`] is what only a tablet's storage promises beyond that: the key file,
//! drafts, checkpoints, another identity. What only a relay's store promises is in the relay's tests.
//!
//! ```
//! use sync::contract::{keeping, tablet};
//! use sync::MemoryStorage;
//!
//! # futures::executor::block_on(async {
//! let frames = keeping::run(async |_| Ok(keeping::OfTablet(MemoryStorage::new()))).await;
//! let rest = tablet::run(async || Ok(MemoryStorage::new())).await?;
//! assert!(frames.iter().chain(&rest).all(|outcome| outcome.ended.is_ok()));
//! # Ok::<(), tablet::NoSample>(())
//! # }).unwrap();
//! ```

pub mod keeping;
pub mod tablet;

use crate::exchange::{RunError, StoreError};
use crate::storage::StorageError;

/// What became of one case.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// The promise, as a sentence with `_` between its words.
    pub case: &'static str,
    /// Whether it was kept.
    pub ended: Ended,
}

/// Whether a promise was kept.
pub type Ended = Result<(), Breach>;

/// A promise that was not kept.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Breach {
    /// It did something else than was promised.
    #[error("this promise is not kept")]
    Broken,
    /// A tablet's storage failed where it must not.
    #[error("the storage fails: {0}")]
    Storage(#[from] StorageError),
    /// A relay's store failed where it must not.
    #[error("the store fails: {0}")]
    Store(#[from] StoreError),
    /// There are no such frames to try it with.
    #[error("there is nothing to try it with: {0}")]
    NoRun(#[from] RunError),
}

/// What a case comes to: whether what was promised is so.
fn promise(kept: bool) -> Ended {
    if kept { Ok(()) } else { Err(Breach::Broken) }
}
