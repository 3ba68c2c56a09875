//! What is kept of frames under erased keys.

use crate::store::signed;
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::BTreeSet;
use sync::exchange::Run;
use vault::{Frame, Purpose, VaultId};

/// A run as it is kept.
pub fn left(connection: &Connection, run: Run) -> rusqlite::Result<Run> {
    if !any(connection, run.vault())? {
        return Ok(run);
    }
    let mut gone = BTreeSet::new();
    for frame in run.frames() {
        if is_erased(connection, frame)? {
            gone.insert(frame.sequence());
        }
    }
    Ok(run.emptied(|frame| gone.contains(&frame.sequence())))
}

/// A frame as it is kept.
pub fn left_of(connection: &Connection, frame: Frame) -> rusqlite::Result<Frame> {
    let gone = is_erased(connection, &frame)?;
    Ok(if gone { frame.emptied() } else { frame })
}

/// Mostly nobody was, and then nothing else is asked.
fn any(connection: &Connection, vault: VaultId) -> rusqlite::Result<bool> {
    connection
        .prepare_cached("SELECT EXISTS (SELECT 1 FROM erased WHERE vault = ?1)")?
        .query_row(params![vault.as_bytes()], |row| row.get(0))
}

fn is_erased(connection: &Connection, frame: &Frame) -> rusqlite::Result<bool> {
    let header = frame.header();
    match header.purpose {
        Purpose::Entry => connection
            .prepare_cached("SELECT EXISTS (SELECT 1 FROM erased WHERE vault = ?1 AND key = ?2)")?
            .query_row(
                params![header.vault.as_bytes(), header.key.as_bytes()],
                |row| row.get(0),
            ),
        Purpose::PersonKey => connection
            .prepare_cached(
                "SELECT EXISTS (SELECT 1 FROM erased WHERE vault = ?1 AND device = ?2 AND sequence = ?3)",
            )?
            .query_row(
                params![
                    header.vault.as_bytes(),
                    header.device.as_bytes(),
                    signed(header.sequence)
                ],
                |row| row.get(0),
            ),
        _ => Ok(false),
    }
}

/// Empties frames of one log where they are kept.
pub fn empty(connection: &Connection, frames: &[Frame]) -> rusqlite::Result<()> {
    let Some(first) = frames.first() else {
        return Ok(());
    };
    let mut less = 0;
    for frame in frames {
        less += put(connection, "frame", &frame.emptied())?;
        put(connection, "aside", &frame.emptied())?;
    }
    let (vault, device) = (first.header().vault, first.device());
    connection
        .prepare_cached("UPDATE head SET bytes = bytes - ?3 WHERE vault = ?1 AND device = ?2")?
        .execute(params![vault.as_bytes(), device.as_bytes(), less])?;
    Ok(())
}

/// Puts it where the same frame is, and tells how many bytes less there are.
fn put(connection: &Connection, table: &str, emptied: &Frame) -> rusqlite::Result<i64> {
    let place = "vault = ?1 AND device = ?2 AND sequence = ?3 AND hash = ?4";
    let (vault, device) = (emptied.header().vault, emptied.device());
    let (sequence, hash) = (signed(emptied.sequence()), emptied.hash());
    let before: Option<i64> = connection
        .prepare_cached(&format!("SELECT length(bytes) FROM {table} WHERE {place}"))?
        .query_row(
            params![
                vault.as_bytes(),
                device.as_bytes(),
                sequence,
                hash.as_bytes()
            ],
            |row| row.get(0),
        )
        .optional()?;
    let Some(before) = before else {
        return Ok(0);
    };
    connection
        .prepare_cached(&format!("UPDATE {table} SET bytes = ?5 WHERE {place}"))?
        .execute(params![
            vault.as_bytes(),
            device.as_bytes(),
            sequence,
            hash.as_bytes(),
            emptied.bytes()
        ])?;
    Ok(before - signed(emptied.bytes().len() as u64))
}
