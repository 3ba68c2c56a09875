//! Promises about a device that takes another identity.

use super::sample::{Sample, append};
use super::{Breach, promise};
use crate::storage::{Renewal, Storage, StorageError};
use vault::{DraftName, Head};

const KEY_FILE: &[u8] = b"another key file";

/// The sample's other log takes the place of the first one, of which what is after `keep` goes.
fn renewal(sample: &Sample, expected: Option<Head>, keep: Option<Head>) -> Renewal<'_> {
    Renewal {
        key_file: KEY_FILE,
        frames: &sample.other,
        old: sample.device(),
        expected,
        keep,
    }
}

async fn copied<S: Storage>(storage: &S, sample: &Sample) -> Result<(), Breach> {
    storage
        .found(&sample.key_file.to_bytes(), &sample.log[0])
        .await?;
    let rest = append(&sample.log[1..], Some(sample.log[0].head()));
    storage.append(rest).await?;
    storage.put_checkpoint(&[vec![1]]).await?;
    storage
        .put_draft(DraftName::from_bytes([1; 16]), b"draft")
        .await?;
    storage.mark_copy().await?;
    promise(
        storage.is_copy().await?,
        "what is marked as a copy stays so",
    )
}

pub async fn gives_another_identity<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    copied(&storage, sample).await?;
    let (keep, expected) = (sample.log[3].head(), sample.log[6].head());
    storage
        .renew(renewal(sample, Some(expected), Some(keep)))
        .await?;
    promise(
        storage.key_file().await?.as_deref() == Some(KEY_FILE),
        "another identity has another key file",
    )?;
    let mut heads = vec![
        (sample.device(), keep),
        (sample.other[0].device(), sample.other[1].head()),
    ];
    heads.sort_by_key(|(device, _)| *device);
    promise(
        storage.vector().await? == heads,
        "another identity begins its log, and the old one ends where it should",
    )?;
    promise(
        storage.page(sample.device(), 1, 100).await?.len() == 4,
        "what the old log had afterwards is dropped",
    )?;
    promise(
        storage.page(sample.other[0].device(), 1, 100).await?.len() == 2,
        "another identity's first frames are kept",
    )?;
    promise(
        !storage.is_copy().await? && storage.checkpoint().await?.is_empty(),
        "another identity is no copy and has no checkpoint yet",
    )?;
    promise(
        storage.drafts().await?.len() == 1,
        "another identity keeps the drafts",
    )
}

pub async fn cuts_the_whole_log<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    copied(&storage, sample).await?;
    let expected = Some(sample.log[6].head());
    storage.renew(renewal(sample, expected, None)).await?;
    promise(
        storage.page(sample.device(), 1, 100).await?.is_empty()
            && storage.head(sample.device()).await?.is_none(),
        "a log that is dropped whole has no head",
    )
}

pub async fn is_refused_at_another_head<S: Storage>(
    storage: S,
    sample: &Sample,
) -> Result<(), Breach> {
    copied(&storage, sample).await?;
    let (wrong, head) = (Some(sample.log[5].head()), Some(sample.log[6].head()));
    let refused = storage.renew(renewal(sample, wrong, None)).await;
    promise(
        refused == Err(StorageError::Moved { head }),
        "another identity is refused at another head",
    )?;
    promise(
        storage.key_file().await?.as_deref() != Some(KEY_FILE)
            && storage.is_copy().await?
            && storage.vector().await?.len() == 1,
        "a refused identity changes nothing",
    )
}
