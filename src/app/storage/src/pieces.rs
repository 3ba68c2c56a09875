//! Lists of byte strings that are replaced as a whole, and frames that are emptied in their places.

use super::database::{bytes, js};
use super::head::frame_key;
use super::{CHECKPOINT, FRAMES, IdbStorage};
use indexed_db_futures::prelude::*;
use indexed_db_futures::typed_array::Uint8Array;
use sync::StorageError;
use vault::Frame;

impl IdbStorage {
    /// A list, in order.
    pub(super) async fn pieces(&self, store: &str) -> Result<Vec<Vec<u8>>, StorageError> {
        let found = self.idb.range(store, None, u32::MAX).await?;
        Ok(found.into_iter().map(|(_, piece)| piece).collect())
    }

    /// Keeps a list in place of the one before.
    pub(super) async fn put_pieces(
        &self,
        store: &'static str,
        pieces: &[Vec<u8>],
    ) -> Result<(), StorageError> {
        self.idb
            .write(&[store], async |transaction| {
                let store = transaction.object_store(store).map_err(js)?;
                store.clear().map_err(js)?;
                for (number, piece) in (0_u32..).zip(pieces) {
                    store
                        .put(bytes(piece))
                        .with_key(bytes(&number.to_be_bytes()))
                        .primitive()
                        .map_err(js)?;
                }
                Ok(())
            })
            .await
    }

    /// Puts what stays of erased frames where they were, and drops the checkpoint.
    pub(super) async fn put_emptied(&self, frames: &[Frame]) -> Result<(), StorageError> {
        self.idb
            .write(&[FRAMES, CHECKPOINT], async |transaction| {
                let store = transaction.object_store(FRAMES).map_err(js)?;
                for frame in frames {
                    let key = frame_key(frame.device(), frame.sequence());
                    let kept: Option<Uint8Array> = store
                        .get(bytes(&key))
                        .primitive()
                        .map_err(js)?
                        .await
                        .map_err(js)?;
                    if kept.is_some() {
                        store
                            .put(bytes(frame.bytes()))
                            .with_key(bytes(&key))
                            .primitive()
                            .map_err(js)?;
                    }
                }
                let checkpoint = transaction.object_store(CHECKPOINT).map_err(js)?;
                checkpoint.clear().map_err(js)?;
                Ok(())
            })
            .await
    }
}
