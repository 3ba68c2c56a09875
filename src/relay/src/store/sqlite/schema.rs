//! The tables, and how an older file gets them.

use super::failed;
use rusqlite::{Connection, TransactionBehavior};
use sync::exchange::StoreError;

/// Each step is done once, in order; `user_version` says how many were. A step never changes: add one.
const STEPS: [&str; 3] = [
    "
    CREATE TABLE vault (
        vault BLOB NOT NULL PRIMARY KEY,
        opened INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID;
    CREATE TABLE roll (
        vault BLOB NOT NULL REFERENCES vault,
        number INTEGER NOT NULL,
        statement BLOB NOT NULL,
        PRIMARY KEY (vault, number)
    ) STRICT, WITHOUT ROWID;
    CREATE TABLE head (
        vault BLOB NOT NULL,
        device BLOB NOT NULL,
        sequence INTEGER NOT NULL,
        hash BLOB NOT NULL,
        bytes INTEGER NOT NULL,
        PRIMARY KEY (vault, device)
    ) STRICT, WITHOUT ROWID;
    -- With row ids: frames are too large to sit in the tree of their keys.
    CREATE TABLE frame (
        vault BLOB NOT NULL,
        device BLOB NOT NULL,
        sequence INTEGER NOT NULL,
        hash BLOB NOT NULL,
        bytes BLOB NOT NULL,
        PRIMARY KEY (vault, device, sequence)
    ) STRICT;
    CREATE TABLE aside (
        vault BLOB NOT NULL,
        device BLOB NOT NULL,
        sequence INTEGER NOT NULL,
        hash BLOB NOT NULL,
        why INTEGER NOT NULL,
        bytes BLOB NOT NULL,
        PRIMARY KEY (vault, device, sequence, hash)
    ) STRICT;
    CREATE TABLE invitation (
        code BLOB NOT NULL PRIMARY KEY,
        expires INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID;
",
    // Whoever opens a vault clears expired invitations away, and must not read all others for it.
    "CREATE INDEX invitation_expires ON invitation (expires)",
    // Keys of erased people: what is under them is kept no more, whenever it comes.
    "
    CREATE TABLE erased (
        vault BLOB NOT NULL,
        key BLOB NOT NULL,
        device BLOB NOT NULL,
        sequence INTEGER NOT NULL,
        PRIMARY KEY (vault, key, device, sequence)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX erased_frame ON erased (vault, device, sequence);
",
];

/// Sets the file up so that what was acknowledged survives a loss of power, and does the steps that it lacks.
pub fn prepare(connection: &mut Connection) -> Result<(), StoreError> {
    connection
        .pragma_update(None, "journal_mode", "WAL")
        .and_then(|()| connection.pragma_update(None, "synchronous", "FULL"))
        .and_then(|()| connection.pragma_update(None, "foreign_keys", true))
        // What is erased is written over, and not only forgotten.
        .and_then(|()| connection.pragma_update(None, "secure_delete", true))
        .map_err(failed)?;
    let change = connection
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .map_err(failed)?;
    let done: usize = change
        .pragma_query_value(None, "user_version", |row| row.get(0))
        .map_err(failed)?;
    let lacking = STEPS.get(done..).ok_or_else(|| {
        StoreError::Failed(format!(
            "this file is of version {done}, which this relay doesn't know: use a newer one"
        ))
    })?;
    for step in lacking {
        change.execute_batch(step).map_err(failed)?;
    }
    change
        .pragma_update(None, "user_version", STEPS.len())
        .and_then(|()| change.commit())
        .map_err(failed)
}
