//! What every [`Storage`] promises, as cases to run against it: in a test, or in a browser.
//!
//! ```
//! use sync::{MemoryStorage, contract};
//!
//! let outcomes = contract::run(async || Ok(MemoryStorage::new()));
//! let outcomes = futures::executor::block_on(outcomes)?;
//! assert!(outcomes.iter().all(|outcome| outcome.ended.is_ok()));
//! # Ok::<(), contract::NoSample>(())
//! ```

/// The cases of a part, every one on a storage of its own.
macro_rules! cases {
    ($($case:ident,)*) => {
        pub async fn all<S: $crate::storage::Storage>(
            fresh: &impl AsyncFn() -> Result<S, $crate::storage::StorageError>,
            sample: &$crate::contract::sample::Sample,
            outcomes: &mut Vec<$crate::contract::Outcome>,
        ) {
            $(outcomes.push($crate::contract::Outcome {
                case: stringify!($case),
                ended: match fresh().await {
                    Ok(storage) => $case(&storage, sample).await,
                    Err(error) => Err(error.into()),
                },
            });)*
        }
    };
}

mod appends;
mod copies;
mod drafts;
mod emptied;
mod founding;
mod keyfile;
mod pages;
mod pieces;
mod renewal;
mod sample;
mod wiping;

pub use sample::NoSample;

use crate::storage::{Storage, StorageError};
use sample::Sample;

/// What became of one case.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// The promise, as a sentence with `_` between its words.
    pub case: &'static str,
    /// Whether it was kept.
    pub ended: Result<(), Breach>,
}

/// A promise that was not kept.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Breach {
    /// It did something else than was promised.
    #[error("the storage does not keep this promise")]
    Broken,
    /// It failed where it must not.
    #[error("the storage fails: {0}")]
    Storage(#[from] StorageError),
}

/// Runs every case, each on a storage that `fresh` gives, which is empty.
///
/// # Errors
///
/// There are no frames to try a storage with.
pub async fn run<S: Storage>(
    fresh: impl AsyncFn() -> Result<S, StorageError>,
) -> Result<Vec<Outcome>, NoSample> {
    let sample = &Sample::make()?;
    let mut outcomes = Vec::new();
    founding::all(&fresh, sample, &mut outcomes).await;
    keyfile::all(&fresh, sample, &mut outcomes).await;
    wiping::all(&fresh, sample, &mut outcomes).await;
    appends::all(&fresh, sample, &mut outcomes).await;
    pages::all(&fresh, sample, &mut outcomes).await;
    pieces::all(&fresh, sample, &mut outcomes).await;
    emptied::all(&fresh, sample, &mut outcomes).await;
    copies::all(&fresh, sample, &mut outcomes).await;
    renewal::all(&fresh, sample, &mut outcomes).await;
    drafts::all(&fresh, sample, &mut outcomes).await;
    Ok(outcomes)
}

/// What a case comes to: whether what was promised is so.
fn promise(kept: bool) -> Result<(), Breach> {
    if kept { Ok(()) } else { Err(Breach::Broken) }
}
