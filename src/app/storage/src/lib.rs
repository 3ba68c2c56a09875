//! The tablet's own storage: IndexedDB, each write in one strict transaction.
//!
//! The page of `tests/inside` holds it to both parts of `sync::contract` in every engine.
//!
//! | store | key | value |
//! |---|---|---|
//! | `frames` | device (16 bytes), sequence (8 bytes, big-endian) | the frame |
//! | `heads` | device (16 bytes) | sequence (8 bytes, big-endian), hash (32 bytes) |
//! | `drafts` | the draft's keyed name (16 bytes) | the sealed draft |
//! | `vault` | `key-file` | the key file |
//! | `vault` | `copy` | one byte, where this tablet was found to be a copy |
//! | `checkpoint` | the piece's number (4 bytes, big-endian) | the sealed piece |
//! | `roll` | the statement's place (4 bytes, big-endian) | the statement |

mod database;
mod head;
mod pieces;
mod renewal;

pub use database::Whose;
use database::{Idb, bytes, js};
use head::{frame_key, head_from, head_value, sequence_of};
use indexed_db_futures::KeyRange;
use indexed_db_futures::prelude::*;
use indexed_db_futures::typed_array::Uint8Array;
use sync::{Append, Renewal, Storage, StorageError, StoredDraft, StoredFrame};
use vault::{DeviceId, DraftName, Frame, Head};
use words::app::session as say;

const FRAMES: &str = "frames";
const HEADS: &str = "heads";
const DRAFTS: &str = "drafts";
const VAULT: &str = "vault";
const CHECKPOINT: &str = "checkpoint";
const ROLL: &str = "roll";
const KEY_FILE: &str = "key-file";
const COPY: &str = "copy";
/// All stores, in the order in which they came about.
const STORES: [&str; 6] = [FRAMES, HEADS, DRAFTS, VAULT, CHECKPOINT, ROLL];

/// IndexedDB as a [`Storage`].
pub struct IdbStorage {
    idb: Idb,
}

impl IdbStorage {
    /// Opens one of the storages of this address, making it on the first visit.
    ///
    /// # Errors
    /// [`StorageError::Other`] where the browser refuses, as some do in a private window.
    pub async fn open(whose: Whose) -> Result<Self, StorageError> {
        Ok(Self {
            idb: Idb::open(whose).await?,
        })
    }
}

impl Storage for IdbStorage {
    async fn head(&self, device: DeviceId) -> Result<Option<Head>, StorageError> {
        let value = self.idb.get(HEADS, device.as_bytes().to_vec()).await?;
        value.map(|value| head_from(device, &value)).transpose()
    }

    async fn append(&self, append: Append<'_>) -> Result<(), StorageError> {
        let device = append.device;
        let newest = append.frames.last().map(Frame::head);
        // Everything is turned to bytes before the transaction begins, so that nothing slow happens inside it.
        let frames: Vec<_> = append
            .frames
            .iter()
            .map(|frame| (frame_key(device, frame.sequence()), frame.bytes().to_vec()))
            .collect();
        self.idb
            .write(&[FRAMES, HEADS, DRAFTS], async |transaction| {
                let heads = transaction.object_store(HEADS).map_err(js)?;
                let kept: Option<Uint8Array> = heads
                    .get(bytes(device.as_bytes()))
                    .primitive()
                    .map_err(js)?
                    .await
                    .map_err(js)?;
                let head = kept.map(|value| head_from(device, &value)).transpose()?;
                if head != append.expected {
                    return Err(StorageError::Moved { head });
                }
                let store = transaction.object_store(FRAMES).map_err(js)?;
                for (key, frame) in &frames {
                    store
                        .add(bytes(frame))
                        .with_key(bytes(key))
                        .primitive()
                        .map_err(js)?;
                }
                if let Some(newest) = newest {
                    heads
                        .put(bytes(&head_value(newest)))
                        .with_key(bytes(device.as_bytes()))
                        .primitive()
                        .map_err(js)?;
                }
                let drafts = transaction.object_store(DRAFTS).map_err(js)?;
                for name in append.drop_drafts {
                    drafts
                        .delete(bytes(name.as_bytes()))
                        .primitive()
                        .map_err(js)?;
                }
                Ok(())
            })
            .await
    }

    async fn page(
        &self,
        device: DeviceId,
        from: u64,
        limit: usize,
    ) -> Result<Vec<StoredFrame>, StorageError> {
        // To the database, none at most means all there are.
        if limit == 0 {
            return Ok(Vec::new());
        }
        let range = KeyRange::Bound(
            bytes(&frame_key(device, from)),
            false,
            bytes(&frame_key(device, u64::MAX)),
            false,
        );
        let limit = u32::try_from(limit).unwrap_or(u32::MAX);
        let found = self.idb.range(FRAMES, Some(range), limit).await?;
        found
            .into_iter()
            .map(|(key, bytes)| {
                Ok(StoredFrame {
                    sequence: sequence_of(device, &key)?,
                    bytes,
                })
            })
            .collect()
    }

    async fn vector(&self) -> Result<Vec<(DeviceId, Head)>, StorageError> {
        let heads = self.idb.range(HEADS, None, u32::MAX).await?;
        heads
            .into_iter()
            .map(|(key, value)| {
                let device = <[u8; 16]>::try_from(key)
                    .map_err(|_| StorageError::Other(say::log_of_no_device().into()))?;
                let device = DeviceId::from_bytes(device);
                Ok((device, head_from(device, &value)?))
            })
            .collect()
    }

    async fn key_file(&self) -> Result<Option<Vec<u8>>, StorageError> {
        self.idb.get_named(VAULT, KEY_FILE).await
    }

    async fn put_key_file(&self, file: &[u8]) -> Result<(), StorageError> {
        self.idb
            .write(&[VAULT], async |transaction| {
                let store = transaction.object_store(VAULT).map_err(js)?;
                store
                    .put(bytes(file))
                    .with_key(KEY_FILE)
                    .primitive()
                    .map_err(js)?;
                Ok(())
            })
            .await
    }

    async fn found(&self, key_file: &[u8], first: &Frame) -> Result<(), StorageError> {
        let (device, head) = (first.device(), first.head());
        self.idb
            .write(&[VAULT, FRAMES, HEADS], async |transaction| {
                let vault = transaction.object_store(VAULT).map_err(js)?;
                let frames = transaction.object_store(FRAMES).map_err(js)?;
                let kept = vault.count().primitive().map_err(js)?.await.map_err(js)?;
                let logged = frames.count().primitive().map_err(js)?.await.map_err(js)?;
                if kept > 0 || logged > 0 {
                    return Err(StorageError::NotEmpty);
                }
                vault
                    .put(bytes(key_file))
                    .with_key(KEY_FILE)
                    .primitive()
                    .map_err(js)?;
                frames
                    .put(bytes(first.bytes()))
                    .with_key(bytes(&frame_key(device, head.sequence)))
                    .primitive()
                    .map_err(js)?;
                let heads = transaction.object_store(HEADS).map_err(js)?;
                heads
                    .put(bytes(&head_value(head)))
                    .with_key(bytes(device.as_bytes()))
                    .primitive()
                    .map_err(js)?;
                Ok(())
            })
            .await
    }

    async fn put_draft(&self, name: DraftName, sealed: &[u8]) -> Result<(), StorageError> {
        self.idb
            .write(&[DRAFTS], async |transaction| {
                let store = transaction.object_store(DRAFTS).map_err(js)?;
                store
                    .put(bytes(sealed))
                    .with_key(bytes(name.as_bytes()))
                    .primitive()
                    .map_err(js)?;
                Ok(())
            })
            .await
    }

    async fn draft(&self, name: DraftName) -> Result<Option<Vec<u8>>, StorageError> {
        self.idb.get(DRAFTS, name.as_bytes().to_vec()).await
    }

    async fn drafts(&self) -> Result<Vec<StoredDraft>, StorageError> {
        let found = self.idb.range(DRAFTS, None, u32::MAX).await?;
        let named = found.into_iter().filter_map(|(key, sealed)| {
            Some(StoredDraft {
                name: DraftName::from_bytes(key.try_into().ok()?),
                sealed,
            })
        });
        Ok(named.collect())
    }

    async fn remove_draft(&self, name: DraftName) -> Result<(), StorageError> {
        self.idb
            .write(&[DRAFTS], async |transaction| {
                transaction
                    .object_store(DRAFTS)
                    .map_err(js)?
                    .delete(bytes(name.as_bytes()))
                    .primitive()
                    .map_err(js)?;
                Ok(())
            })
            .await
    }

    async fn checkpoint(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        self.pieces(CHECKPOINT).await
    }

    async fn put_checkpoint(&self, pieces: &[Vec<u8>]) -> Result<(), StorageError> {
        self.put_pieces(CHECKPOINT, pieces).await
    }

    async fn roll(&self) -> Result<Vec<Vec<u8>>, StorageError> {
        self.pieces(ROLL).await
    }

    async fn put_roll(&self, statements: &[Vec<u8>]) -> Result<(), StorageError> {
        self.put_pieces(ROLL, statements).await
    }

    async fn empty(&self, frames: &[Frame]) -> Result<(), StorageError> {
        self.put_emptied(frames).await
    }

    async fn is_copy(&self) -> Result<bool, StorageError> {
        Ok(self.idb.get_named(VAULT, COPY).await?.is_some())
    }

    async fn mark_copy(&self) -> Result<(), StorageError> {
        self.idb
            .write(&[VAULT], async |transaction| {
                let store = transaction.object_store(VAULT).map_err(js)?;
                store
                    .put(bytes(&[1]))
                    .with_key(COPY)
                    .primitive()
                    .map_err(js)?;
                Ok(())
            })
            .await
    }

    async fn renew(&self, renewal: Renewal<'_>) -> Result<(), StorageError> {
        self.take_identity(renewal).await
    }

    async fn wipe(&self) -> Result<(), StorageError> {
        self.idb
            .write(&STORES, async |transaction| {
                for name in STORES {
                    transaction
                        .object_store(name)
                        .map_err(js)?
                        .clear()
                        .map_err(js)?;
                }
                Ok(())
            })
            .await
    }
}
