//! What only a tablet's storage promises, beyond the [`keeping`](super::keeping) of frames.

/// The cases of a part, every one on a storage of its own.
macro_rules! cases {
    ($($case:ident,)*) => {
        pub async fn all<S: $crate::storage::Storage>(
            fresh: &impl AsyncFn() -> Result<S, $crate::storage::StorageError>,
            sample: &$crate::contract::tablet::sample::Sample,
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
mod numbers;
mod pieces;
mod renewal;
mod sample;
mod wiping;

pub use sample::NoSample;

use super::{Breach, Outcome, promise};
use crate::storage::{Storage, StorageError};
use sample::Sample;

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
    numbers::all(&fresh, sample, &mut outcomes).await;
    pieces::all(&fresh, sample, &mut outcomes).await;
    emptied::all(&fresh, sample, &mut outcomes).await;
    copies::all(&fresh, sample, &mut outcomes).await;
    renewal::all(&fresh, sample, &mut outcomes).await;
    drafts::all(&fresh, sample, &mut outcomes).await;
    Ok(outcomes)
}
