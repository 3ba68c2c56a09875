//! What every [`Storage`] promises, as a check to run against it: in a test, or in a browser.
//!
//! ```
//! use sync::{MemoryStorage, contract};
//!
//! let kept = futures::executor::block_on(contract::check(async || MemoryStorage::new()));
//! assert_eq!(kept, Ok(()));
//! ```

mod drafts;
mod founding;
mod frames;
mod kept;
mod renewal;
mod sample;

use crate::storage::{Storage, StorageError};
use sample::Sample;

/// A promise that was not kept.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Breach {
    /// It did something else than was promised.
    #[error("the storage doesn't keep its promise that {0}")]
    Promise(&'static str),
    /// It failed where it must not.
    #[error("the storage fails: {0}")]
    Storage(#[from] StorageError),
    /// The frames to check it with could not be made.
    #[error("there is nothing to check the storage with: {0}")]
    Sample(String),
}

/// Checks every promise, each on a storage of its own that `fresh` gives, which is empty.
///
/// # Errors
///
/// The first promise that is not kept.
pub async fn check<S: Storage>(fresh: impl AsyncFn() -> S) -> Result<(), Breach> {
    let sample = Sample::make()?;
    founding::empty_at_first(&fresh().await, &sample).await?;
    founding::founds_once(fresh().await, &sample).await?;
    founding::does_not_found_over_frames(fresh().await, &sample).await?;
    founding::replaces_the_key_file(fresh().await, &sample).await?;
    founding::wipes_everything(fresh().await, &sample).await?;
    frames::appends_at_the_head(fresh().await, &sample).await?;
    frames::refuses_any_other_head(fresh().await, &sample).await?;
    frames::drops_drafts_with_the_append(fresh().await, &sample).await?;
    frames::drops_nothing_with_a_refused_append(fresh().await, &sample).await?;
    frames::pages_in_order(fresh().await, &sample).await?;
    frames::keeps_devices_apart(fresh().await, &sample).await?;
    kept::replaces_the_checkpoint(fresh().await, &sample).await?;
    kept::replaces_the_roll(fresh().await, &sample).await?;
    kept::empties_frames_in_their_places(fresh().await, &sample).await?;
    renewal::gives_another_identity(fresh().await, &sample).await?;
    renewal::cuts_the_whole_log(fresh().await, &sample).await?;
    renewal::is_refused_at_another_head(fresh().await, &sample).await?;
    drafts::replaces_and_removes(fresh().await, &sample).await?;
    drafts::lists_in_order(fresh().await).await
}

/// A promise, and whether it was kept.
fn promise(kept: bool, promise: &'static str) -> Result<(), Breach> {
    if kept {
        Ok(())
    } else {
        Err(Breach::Promise(promise))
    }
}
