//! Wiping removes everything, and what is wiped can be used again.

use super::founding::nothing_is_there_at_first;
use super::sample::{Sample, name};
use super::{Breach, promise};
use crate::storage::Storage;

cases! {
    wiping_removes_the_key_file,
    wiping_removes_the_logs,
    wiping_removes_the_drafts,
    wiping_removes_the_checkpoint,
    wiping_removes_the_roll,
    wiping_removes_the_mark_of_a_copy,
    a_wiped_storage_can_be_founded_again,
    wiping_what_is_empty_is_no_error,
}

/// Something of everything, and then nothing.
async fn wiped<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    sample.found(s, 7).await?;
    s.put_draft(name(1), b"draft").await?;
    s.put_checkpoint(&[vec![1], vec![2]]).await?;
    s.put_roll(&[vec![1; 195]]).await?;
    s.mark_copy().await?;
    Ok(s.wipe().await?)
}

async fn wiping_removes_the_key_file<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    wiped(s, sample).await?;
    promise(s.key_file().await?.is_none())
}

async fn wiping_removes_the_logs<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    wiped(s, sample).await?;
    promise(s.vector().await?.is_empty() && s.page(sample.device(), 1, 10).await?.is_empty())
}

async fn wiping_removes_the_drafts<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    wiped(s, sample).await?;
    promise(s.drafts().await?.is_empty() && s.draft(name(1)).await?.is_none())
}

async fn wiping_removes_the_checkpoint<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    wiped(s, sample).await?;
    promise(s.checkpoint().await?.is_empty())
}

async fn wiping_removes_the_roll<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    wiped(s, sample).await?;
    promise(s.roll().await?.is_empty())
}

async fn wiping_removes_the_mark_of_a_copy<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    wiped(s, sample).await?;
    promise(!s.is_copy().await?)
}

async fn a_wiped_storage_can_be_founded_again<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    wiped(s, sample).await?;
    sample.found(s, 2).await?;
    promise(s.vector().await? == [(sample.device(), sample.log[1].head())])
}

async fn wiping_what_is_empty_is_no_error<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    s.wipe().await?;
    nothing_is_there_at_first(s, sample).await
}
