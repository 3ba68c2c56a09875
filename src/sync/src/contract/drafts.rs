//! Promises about drafts.

use super::sample::Sample;
use super::{Breach, promise};
use crate::storage::{Storage, StoredDraft};
use vault::DraftName;

pub async fn replaces_and_removes<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    let name = DraftName::from_bytes([7; 16]);
    promise(
        storage.draft(name).await?.is_none(),
        "there is no draft before one is kept",
    )?;
    storage.put_draft(name, b"one").await?;
    storage.put_draft(name, b"two").await?;
    promise(
        storage.draft(name).await?.as_deref() == Some(b"two"),
        "a draft replaces the one before",
    )?;
    promise(
        storage.head(sample.device()).await?.is_none(),
        "a draft is no frame",
    )?;
    storage.remove_draft(name).await?;
    promise(
        storage.draft(name).await?.is_none(),
        "a removed draft is gone",
    )?;
    // Removing what isn't there is no error.
    Ok(storage.remove_draft(name).await?)
}

pub async fn lists_in_order<S: Storage>(storage: S) -> Result<(), Breach> {
    let draft = |byte| StoredDraft {
        name: DraftName::from_bytes([byte; 16]),
        sealed: vec![byte; 300],
    };
    for byte in [200, 3, 90] {
        let StoredDraft { name, sealed } = draft(byte);
        storage.put_draft(name, &sealed).await?;
    }
    let listed = storage.drafts().await?;
    promise(
        listed == [draft(3), draft(90), draft(200)],
        "drafts are listed in the order of their names",
    )
}
