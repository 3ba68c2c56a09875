//! The store in one file of SQLite's.
//!
//! `rusqlite` and not an asynchronous client: SQLite's calls block whatever stands before them, and its library is built
//! in, so the relay stays one binary. One thread writes ([`writer`]) and takes all that waits into one transaction, so
//! that many clients share the cost of one flush; readers have connections of their own beside it.

mod desk;
mod erased;
mod frames;
mod schema;
mod writer;

use rusqlite::{Connection, OpenFlags};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use std::time::Duration;
use sync::exchange::StoreError;
use writer::Writer;

/// Connections for reading that are kept open.
const READERS: usize = 8;
/// How long another process (a backup, a command) may hold the file.
const PATIENCE: Duration = Duration::from_secs(10);

/// A store in a file of SQLite's.
#[derive(Debug)]
pub struct SqliteStore {
    path: PathBuf,
    writer: Writer,
    readers: Mutex<Vec<Connection>>,
}

impl SqliteStore {
    /// Opens the file, makes it where there is none, and brings its tables up to date.
    ///
    /// # Errors
    ///
    /// The file can't be opened, is no database, or was written by a later version.
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        let mut connection = connect(path, OpenFlags::default()).map_err(failed)?;
        schema::prepare(&mut connection)?;
        Ok(Self {
            path: path.to_owned(),
            writer: Writer::start(connection)?,
            readers: Mutex::default(),
        })
    }

    fn read<T>(
        &self,
        read: impl FnOnce(&Connection) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let kept = self.lock().pop();
        let connection = match kept {
            Some(connection) => connection,
            None => connect(&self.path, OpenFlags::SQLITE_OPEN_READ_ONLY).map_err(failed)?,
        };
        let answer = read(&connection);
        let mut readers = self.lock();
        if readers.len() < READERS {
            readers.push(connection);
        }
        answer
    }

    fn lock(&self) -> std::sync::MutexGuard<'_, Vec<Connection>> {
        self.readers.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn connect(path: &Path, flags: OpenFlags) -> rusqlite::Result<Connection> {
    let connection = Connection::open_with_flags(path, flags | OpenFlags::SQLITE_OPEN_NO_MUTEX)?;
    connection.busy_timeout(PATIENCE)?;
    Ok(connection)
}

fn failed(error: rusqlite::Error) -> StoreError {
    match error.sqlite_error_code() {
        Some(rusqlite::ErrorCode::DatabaseBusy | rusqlite::ErrorCode::DatabaseLocked) => {
            StoreError::Busy(error.to_string())
        }
        Some(rusqlite::ErrorCode::DatabaseCorrupt | rusqlite::ErrorCode::NotADatabase) => {
            StoreError::Damaged(error.to_string())
        }
        _ => StoreError::Failed(error.to_string()),
    }
}
