//! The database connection: opened, reopened when the browser has dropped it, and its errors in plain sentences.

use indexed_db_futures::database::Database;
use indexed_db_futures::error::{DomException, Error, OpenDbError};
use indexed_db_futures::prelude::*;
use indexed_db_futures::transaction::{
    Transaction, TransactionDurability, TransactionMode, TransactionOptions,
};
use indexed_db_futures::typed_array::Uint8Array;
use indexed_db_futures::{KeyRange, OpenDbResult};
use std::cell::RefCell;
use sync::StorageError;
use wasm_bindgen::JsValue;
use words::app::session as say;

/// 2 added the stores for the checkpoint and the roll.
const VERSION: u8 = 2;

/// Which of two databases. What is made up never shares one with what is true.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// The practitioner's own vault.
    Own,
    /// The vault of made-up people.
    MadeUp,
}

impl Whose {
    const fn name(self) -> &'static str {
        match self {
            Self::Own => "lightround",
            Self::MadeUp => "lightround-made-up",
        }
    }
}

/// An open database.
pub struct Idb {
    whose: Whose,
    // A browser drops the connection of a page that slept; the next use then opens another.
    database: RefCell<Database>,
}

impl Idb {
    /// Opens it, making its stores on the first visit.
    pub async fn open(whose: Whose) -> Result<Self, StorageError> {
        Ok(Self {
            whose,
            database: RefCell::new(connect(whose).await?),
        })
    }

    /// One value by its bytes' key.
    pub async fn get(&self, store: &str, key: Vec<u8>) -> Result<Option<Vec<u8>>, StorageError> {
        self.with(async |database| {
            let transaction = database.transaction(store).build().map_err(js)?;
            let store = transaction.object_store(store).map_err(js)?;
            let found: Option<Uint8Array> = store
                .get(bytes(&key))
                .primitive()
                .map_err(js)?
                .await
                .map_err(js)?;
            Ok(found.map(Into::into))
        })
        .await
    }

    /// One value by its name.
    pub async fn get_named(
        &self,
        store: &str,
        name: &str,
    ) -> Result<Option<Vec<u8>>, StorageError> {
        self.with(async |database| {
            let transaction = database.transaction(store).build().map_err(js)?;
            let store = transaction.object_store(store).map_err(js)?;
            let found: Option<Uint8Array> =
                store.get(name).primitive().map_err(js)?.await.map_err(js)?;
            Ok(found.map(Into::into))
        })
        .await
    }

    /// Keys and values in a range, or all, in order.
    pub async fn range(
        &self,
        store: &str,
        range: Option<KeyRange<Uint8Array>>,
        limit: u32,
    ) -> Result<Vec<(Vec<u8>, Vec<u8>)>, StorageError> {
        let range = range.unwrap_or_else(|| KeyRange::LowerBound(bytes(&[]), false));
        self.with(async |database| {
            let transaction = database.transaction(store).build().map_err(js)?;
            let store = transaction.object_store(store).map_err(js)?;
            let keys = store
                .get_all_keys::<JsValue>()
                .with_query::<Uint8Array, _>(range.clone())
                .with_limit(limit)
                .primitive()
                .map_err(js)?;
            let values = store
                .get_all::<Uint8Array>()
                .with_query::<Uint8Array, _>(range.clone())
                .with_limit(limit)
                .primitive()
                .map_err(js)?;
            let (keys, values) = (keys.await.map_err(js)?, values.await.map_err(js)?);
            keys.zip(values)
                // The database gives a key of bytes back as a bare buffer, whatever it was put in as.
                .map(|(key, value)| {
                    let key = js_sys::Uint8Array::new(&key.map_err(js)?).to_vec();
                    Ok((key, value.map_err(js)?.into()))
                })
                .collect()
        })
        .await
    }

    /// One strict read-write transaction: all of it or nothing, and on disk before this returns.
    pub async fn write(
        &self,
        stores: &[&str],
        act: impl AsyncFn(&Transaction<'_>) -> Result<(), StorageError>,
    ) -> Result<(), StorageError> {
        self.with(async |database| {
            let strict = TransactionOptions::new().with_durability(TransactionDurability::Strict);
            let transaction = database
                .transaction(stores)
                .with_mode(TransactionMode::Readwrite)
                .with_options(strict)
                .build()
                .map_err(js)?;
            // Dropped on an error, the transaction rolls back.
            act(&transaction).await?;
            let done = transaction.on_done().map_err(js)?;
            if done.await.is_ok() {
                return Ok(());
            }
            Err(transaction.error().map_or_else(
                || StorageError::Other(say::browser_kept_nothing().into()),
                js,
            ))
        })
        .await
    }

    /// Does it, and once more on a fresh connection where the old one was dead before anything was asked of it.
    async fn with<T>(
        &self,
        act: impl AsyncFn(&Database) -> Result<T, StorageError>,
    ) -> Result<T, StorageError> {
        let database = self.database.borrow().clone();
        match act(&database).await {
            Err(StorageError::Gone) => {
                let fresh = connect(self.whose).await?;
                self.database.replace(fresh.clone());
                act(&fresh).await
            }
            answer => answer,
        }
    }
}

async fn connect(whose: Whose) -> Result<Database, StorageError> {
    open(whose).await.map_err(|error| match error {
        OpenDbError::Base(error) => js(error),
        other => StorageError::Other(say::no_storage(&other)),
    })
}

async fn open(whose: Whose) -> OpenDbResult<Database> {
    Database::open(whose.name())
        .with_version(VERSION)
        .with_on_upgrade_needed(|_, database| {
            // What an earlier version made stays as it is, with everything in it.
            let there: Vec<String> = database.object_store_names().collect();
            for store in super::STORES {
                if !there.iter().any(|name| name == store) {
                    database.create_object_store(store).build()?;
                }
            }
            Ok(())
        })
        .await
}

/// Bytes as a key or a value.
pub fn bytes(bytes: &[u8]) -> Uint8Array {
    bytes.to_vec().into()
}

/// A browser's error as the storage's own.
pub fn js(error: Error) -> StorageError {
    match &error {
        Error::DomException(DomException::InvalidStateError(_)) => StorageError::Gone,
        Error::DomException(DomException::Other(other)) if other.name() == "QuotaExceededError" => {
            StorageError::Full
        }
        _ => StorageError::Other(error.to_string()),
    }
}
