//! Another identity for this tablet, in one transaction.

use super::database::{bytes, js};
use super::head::{frame_key, head_from, head_value};
use super::{CHECKPOINT, COPY, FRAMES, HEADS, IdbStorage, KEY_FILE, VAULT};
use indexed_db_futures::KeyRange;
use indexed_db_futures::prelude::*;
use indexed_db_futures::transaction::Transaction;
use indexed_db_futures::typed_array::Uint8Array;
use sync::{Renewal, StorageError};

impl IdbStorage {
    pub(super) async fn take_identity(&self, renewal: Renewal<'_>) -> Result<(), StorageError> {
        self.idb
            .write(&[FRAMES, HEADS, VAULT, CHECKPOINT], async |transaction| {
                cut_old_log(transaction, &renewal).await?;
                begin_log(transaction, &renewal)?;
                let vault = transaction.object_store(VAULT).map_err(js)?;
                vault
                    .put(bytes(renewal.key_file))
                    .with_key(KEY_FILE)
                    .primitive()
                    .map_err(js)?;
                vault.delete(COPY).primitive().map_err(js)?;
                let checkpoint = transaction.object_store(CHECKPOINT).map_err(js)?;
                checkpoint.clear().map_err(js)?;
                Ok(())
            })
            .await
    }
}

/// Cuts the old log back, if it ends where it is thought to end.
async fn cut_old_log(
    transaction: &Transaction<'_>,
    renewal: &Renewal<'_>,
) -> Result<(), StorageError> {
    let old = renewal.old;
    let heads = transaction.object_store(HEADS).map_err(js)?;
    let kept: Option<Uint8Array> = heads
        .get(bytes(old.as_bytes()))
        .primitive()
        .map_err(js)?
        .await
        .map_err(js)?;
    let head = kept.map(|value| head_from(old, &value)).transpose()?;
    if head != renewal.expected {
        return Err(StorageError::Moved { head });
    }
    let after = renewal.keep.map_or(0, |keep| keep.sequence) + 1;
    let dropped = KeyRange::Bound(
        bytes(&frame_key(old, after)),
        false,
        bytes(&frame_key(old, u64::MAX)),
        false,
    );
    let frames = transaction.object_store(FRAMES).map_err(js)?;
    frames
        .delete::<Uint8Array, _>(dropped)
        .primitive()
        .map_err(js)?;
    if let Some(keep) = renewal.keep {
        heads
            .put(bytes(&head_value(keep)))
            .with_key(bytes(old.as_bytes()))
            .primitive()
            .map_err(js)?;
    } else {
        heads
            .delete(bytes(old.as_bytes()))
            .primitive()
            .map_err(js)?;
    }
    Ok(())
}

/// Keeps the first frames of the new log and its head.
fn begin_log(transaction: &Transaction<'_>, renewal: &Renewal<'_>) -> Result<(), StorageError> {
    let frames = transaction.object_store(FRAMES).map_err(js)?;
    for frame in renewal.frames {
        frames
            .add(bytes(frame.bytes()))
            .with_key(bytes(&frame_key(frame.device(), frame.sequence())))
            .primitive()
            .map_err(js)?;
    }
    let Some(last) = renewal.frames.last() else {
        return Ok(());
    };
    let heads = transaction.object_store(HEADS).map_err(js)?;
    heads
        .put(bytes(&head_value(last.head())))
        .with_key(bytes(last.device().as_bytes()))
        .primitive()
        .map_err(js)?;
    Ok(())
}
