//! The tables, and how an older database gets them.

use super::Ended;
use postgres::Transaction;
use sync::exchange::StoreError;

/// Each step is done once, in order; the table `lightround` says how many were. A step never changes: add one.
const STEPS: [&str; 3] = [
    "
    CREATE TABLE vault (
        vault BYTEA NOT NULL PRIMARY KEY,
        opened BIGINT NOT NULL
    );
    CREATE TABLE roll (
        vault BYTEA NOT NULL REFERENCES vault,
        number BIGINT NOT NULL,
        statement BYTEA NOT NULL,
        PRIMARY KEY (vault, number)
    );
    CREATE TABLE head (
        vault BYTEA NOT NULL,
        device BYTEA NOT NULL,
        sequence BIGINT NOT NULL,
        hash BYTEA NOT NULL,
        bytes BIGINT NOT NULL,
        PRIMARY KEY (vault, device)
    );
    CREATE TABLE frame (
        vault BYTEA NOT NULL,
        device BYTEA NOT NULL,
        sequence BIGINT NOT NULL,
        hash BYTEA NOT NULL,
        bytes BYTEA NOT NULL,
        PRIMARY KEY (vault, device, sequence)
    );
    -- Ciphertext doesn't compress: don't try.
    ALTER TABLE frame ALTER COLUMN bytes SET STORAGE EXTERNAL;
    CREATE TABLE aside (
        vault BYTEA NOT NULL,
        device BYTEA NOT NULL,
        sequence BIGINT NOT NULL,
        hash BYTEA NOT NULL,
        why SMALLINT NOT NULL,
        bytes BYTEA NOT NULL,
        PRIMARY KEY (vault, device, sequence, hash)
    );
    CREATE TABLE invitation (
        code BYTEA NOT NULL PRIMARY KEY,
        expires BIGINT NOT NULL
    );
",
    // Whoever opens a vault clears expired invitations away, and must not read all others for it.
    "CREATE INDEX invitation_expires ON invitation (expires)",
    // Keys of erased people: what is under them is kept no more, whenever it comes.
    "
    CREATE TABLE erased (
        vault BYTEA NOT NULL,
        key BYTEA NOT NULL,
        device BYTEA NOT NULL,
        sequence BIGINT NOT NULL,
        PRIMARY KEY (vault, key, device, sequence)
    );
    CREATE INDEX erased_frame ON erased (vault, device, sequence);
",
];

/// Does the steps that the database lacks.
pub fn prepare(change: &mut Transaction<'_>) -> Result<(), Ended> {
    let known = change.query_one("SELECT to_regclass('lightround') IS NOT NULL", &[])?;
    let done: i32 = if known.get(0) {
        change
            .query_one("SELECT steps FROM lightround", &[])?
            .get(0)
    } else {
        change.batch_execute(
            "CREATE TABLE lightround (steps INTEGER NOT NULL); INSERT INTO lightround VALUES (0)",
        )?;
        0
    };
    let lacking = usize::try_from(done)
        .ok()
        .and_then(|done| STEPS.get(done..));
    let lacking = lacking.ok_or_else(|| {
        StoreError::Failed(format!(
            "these tables are of version {done}, which this relay doesn't know: use a newer one"
        ))
    })?;
    for step in lacking {
        change.batch_execute(step)?;
    }
    change.execute(
        "UPDATE lightround SET steps = $1",
        &[&i32::try_from(STEPS.len()).unwrap_or(i32::MAX)],
    )?;
    Ok(())
}
