//! A vault begins once, where nothing is yet.

use super::sample::{Sample, append, kept, name};
use super::{Breach, promise};
use crate::storage::{Storage, StorageError};

cases! {
    nothing_is_there_at_first,
    founding_keeps_the_key_file,
    founding_begins_the_log,
    a_second_founding_is_refused,
    a_refused_founding_leaves_the_key_file,
    a_refused_founding_leaves_the_logs,
    no_vault_is_founded_over_frames,
    a_founding_over_frames_keeps_no_key_file,
    no_vault_is_founded_over_a_key_file,
    a_founding_over_a_key_file_begins_no_log,
    drafts_and_a_roll_may_be_there_before_the_vault,
}

pub async fn nothing_is_there_at_first<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    promise(
        s.key_file().await?.is_none()
            && s.head(sample.device()).await?.is_none()
            && s.vector().await?.is_empty()
            && s.page(sample.device(), 1, 10).await?.is_empty()
            && s.drafts().await?.is_empty()
            && s.checkpoint().await?.is_empty()
            && s.roll().await?.is_empty()
            && !s.is_copy().await?,
    )
}

async fn founding_keeps_the_key_file<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    sample.found(s, 1).await?;
    promise(s.key_file().await?.as_ref() == Some(&sample.key_file))
}

async fn founding_begins_the_log<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    sample.found(s, 1).await?;
    promise(
        s.head(sample.device()).await? == sample.head(1)
            && s.page(sample.device(), 1, 10).await? == kept(&sample.log[..1]),
    )
}

async fn a_second_founding_is_refused<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    sample.found(s, 1).await?;
    promise(s.found(b"another", &sample.other[0]).await == Err(StorageError::NotEmpty))
}

async fn a_refused_founding_leaves_the_key_file<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    a_second_founding_is_refused(s, sample).await?;
    promise(s.key_file().await?.as_ref() == Some(&sample.key_file))
}

async fn a_refused_founding_leaves_the_logs<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    a_second_founding_is_refused(s, sample).await?;
    promise(
        s.vector().await? == [(sample.device(), sample.log[0].head())]
            && s.page(sample.other[0].device(), 1, 10).await?.is_empty(),
    )
}

async fn no_vault_is_founded_over_frames<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.append(append(&sample.other, None)).await?;
    promise(s.found(&sample.key_file, &sample.log[0]).await == Err(StorageError::NotEmpty))
}

async fn a_founding_over_frames_keeps_no_key_file<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    no_vault_is_founded_over_frames(s, sample).await?;
    promise(s.key_file().await?.is_none())
}

async fn no_vault_is_founded_over_a_key_file<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    s.put_key_file(b"another").await?;
    promise(s.found(&sample.key_file, &sample.log[0]).await == Err(StorageError::NotEmpty))
}

async fn a_founding_over_a_key_file_begins_no_log<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    no_vault_is_founded_over_a_key_file(s, sample).await?;
    promise(
        s.vector().await?.is_empty()
            && s.page(sample.device(), 1, 10).await?.is_empty()
            && s.key_file().await?.as_deref() == Some(b"another"),
    )
}

async fn drafts_and_a_roll_may_be_there_before_the_vault<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    let roll = [vec![1; 195]];
    s.put_draft(name(1), b"draft").await?;
    s.put_roll(&roll).await?;
    sample.found(s, 1).await?;
    promise(s.draft(name(1)).await?.is_some() && s.roll().await? == roll)
}
