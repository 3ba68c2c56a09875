//! Promises about the key file and about beginning and ending.

use super::sample::{Sample, append};
use super::{Breach, promise};
use crate::storage::{Storage, StorageError};
use vault::DraftName;

pub async fn empty_at_first<S: Storage>(storage: &S, sample: &Sample) -> Result<(), Breach> {
    promise(
        storage.key_file().await?.is_none(),
        "a fresh storage has no key file",
    )?;
    promise(
        storage.head(sample.device()).await?.is_none(),
        "a fresh storage has no head",
    )?;
    promise(
        storage.vector().await?.is_empty(),
        "a fresh storage has no logs",
    )?;
    promise(
        storage.page(sample.device(), 1, 10).await?.is_empty(),
        "a fresh storage has no frames",
    )?;
    promise(
        storage.drafts().await?.is_empty(),
        "a fresh storage has no drafts",
    )?;
    promise(
        storage.checkpoint().await?.is_empty(),
        "a fresh storage has no checkpoint",
    )?;
    promise(
        storage.roll().await?.is_empty(),
        "a fresh storage has no roll",
    )?;
    promise(
        !storage.is_copy().await?,
        "a fresh storage is nobody's copy",
    )
}

pub async fn founds_once<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    let key_file = sample.key_file.to_bytes();
    storage.found(&key_file, &sample.log[0]).await?;
    promise(
        storage.key_file().await? == Some(key_file),
        "founding keeps the key file",
    )?;
    promise(
        storage.head(sample.device()).await? == Some(sample.log[0].head()),
        "founding keeps the first frame",
    )?;
    let again = storage.found(b"another", &sample.other[0]).await;
    promise(
        again == Err(StorageError::NotEmpty),
        "a second founding is refused",
    )?;
    promise(
        storage.key_file().await?.as_deref() != Some(b"another"),
        "a refused founding leaves the key file",
    )?;
    promise(
        storage.vector().await?.len() == 1,
        "a refused founding leaves the logs",
    )
}

pub async fn does_not_found_over_frames<S: Storage>(
    storage: S,
    sample: &Sample,
) -> Result<(), Breach> {
    storage.append(append(&sample.other, None)).await?;
    let founded = storage
        .found(&sample.key_file.to_bytes(), &sample.log[0])
        .await;
    promise(
        founded == Err(StorageError::NotEmpty),
        "no vault is founded where frames are",
    )?;
    promise(
        storage.key_file().await?.is_none(),
        "a refused founding keeps no key file",
    )
}

pub async fn replaces_the_key_file<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    storage
        .found(&sample.key_file.to_bytes(), &sample.log[0])
        .await?;
    storage.put_key_file(b"another").await?;
    promise(
        storage.key_file().await?.as_deref() == Some(b"another"),
        "a key file replaces the one before",
    )?;
    promise(
        storage.head(sample.device()).await?.is_some(),
        "a key file replaces nothing else",
    )
}

pub async fn wipes_everything<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    storage
        .found(&sample.key_file.to_bytes(), &sample.log[0])
        .await?;
    storage
        .put_draft(DraftName::from_bytes([1; 16]), b"draft")
        .await?;
    storage.put_checkpoint(&[vec![1]]).await?;
    storage.put_roll(&[vec![1; 195]]).await?;
    storage.mark_copy().await?;
    storage.wipe().await?;
    empty_at_first(&storage, sample).await?;
    // And it can be used again.
    Ok(storage
        .found(&sample.key_file.to_bytes(), &sample.log[0])
        .await?)
}
