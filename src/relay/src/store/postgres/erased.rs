//! What is kept of frames under erased keys.

use super::Ended;
use crate::store::{fixed, signed, unsigned};
use postgres::{Row, Transaction};
use std::borrow::Cow;
use sync::exchange::{Run, StoreError};
use vault::{DeviceId, ErasedKey, Frame, KeyId, Purpose};

/// A run as it is kept.
pub fn left<'a>(read: &mut Transaction<'_>, run: &'a Run) -> Result<Cow<'a, Run>, Ended> {
    let erased = erased(read, run.frames())?;
    if erased.is_empty() {
        return Ok(Cow::Borrowed(run));
    }
    let gone = |frame: &Frame| erased.iter().any(|key| key.covers(frame));
    Ok(Cow::Owned(run.emptied(gone)))
}

/// A frame as it is kept.
pub fn left_of<'a>(read: &mut Transaction<'_>, frame: &'a Frame) -> Result<Cow<'a, Frame>, Ended> {
    let erased = erased(read, std::slice::from_ref(frame))?;
    let gone = erased.iter().any(|key| key.covers(frame));
    Ok(if gone {
        Cow::Owned(frame.emptied())
    } else {
        Cow::Borrowed(frame)
    })
}

/// Of the erased keys, those that cover any of these frames, which are of one log.
fn erased(read: &mut Transaction<'_>, frames: &[Frame]) -> Result<Vec<ErasedKey>, Ended> {
    let of = |purpose| move |frame: &&Frame| frame.header().purpose == purpose;
    let entries = frames.iter().filter(of(Purpose::Entry));
    let mut keys: Vec<&[u8]> = entries
        .map(|frame| frame.header().key.as_bytes().as_slice())
        .collect();
    keys.sort_unstable();
    keys.dedup();
    let holders = frames.iter().filter(of(Purpose::PersonKey));
    let numbers: Vec<i64> = holders.map(|frame| signed(frame.sequence())).collect();
    let Some(first) = frames
        .first()
        .filter(|_| !keys.is_empty() || !numbers.is_empty())
    else {
        return Ok(Vec::new());
    };
    let rows = read.query(
        "SELECT key, device, sequence FROM erased WHERE vault = $1 AND key = ANY($2)
         UNION
         SELECT key, device, sequence FROM erased WHERE vault = $1 AND device = $3 AND sequence = ANY($4)",
        &[
            &first.header().vault.as_bytes().as_slice(),
            &keys,
            &first.device().as_bytes().as_slice(),
            &numbers,
        ],
    )?;
    Ok(rows.iter().map(key).collect::<Result<_, _>>()?)
}

fn key(row: &Row) -> Result<ErasedKey, StoreError> {
    Ok(ErasedKey {
        id: KeyId::from_bytes(fixed("a key", row.get(0))?),
        device: DeviceId::from_bytes(fixed("a device", row.get(1))?),
        sequence: unsigned(row.get(2)),
    })
}

/// Empties frames of one log where they are kept.
pub fn empty(write: &mut Transaction<'_>, frames: &[Frame]) -> Result<(), Ended> {
    let Some(first) = frames.first() else {
        return Ok(());
    };
    let (vault, device) = (first.header().vault, first.device());
    let (vault, device) = (vault.as_bytes().as_slice(), device.as_bytes().as_slice());
    let numbers: Vec<i64> = frames
        .iter()
        .map(|frame| signed(frame.sequence()))
        .collect();
    let hashes: Vec<Vec<u8>> = frames
        .iter()
        .map(|frame| frame.hash().as_bytes().to_vec())
        .collect();
    let left: Vec<Vec<u8>> = frames
        .iter()
        .map(|frame| frame.emptied().bytes().to_vec())
        .collect();
    // The head first, as whoever appends does: then neither waits for the other.
    write.execute(
        "UPDATE head SET bytes = bytes -
             (SELECT coalesce(sum(length(frame.bytes) - length(left_over.bytes)), 0)::BIGINT
              FROM unnest($3::BIGINT[], $4::BYTEA[], $5::BYTEA[]) AS left_over (sequence, hash, bytes)
              JOIN frame ON frame.vault = $1 AND frame.device = $2
                        AND frame.sequence = left_over.sequence AND frame.hash = left_over.hash)
         WHERE vault = $1 AND device = $2",
        &[&vault, &device, &numbers, &hashes, &left],
    )?;
    for table in ["frame", "aside"] {
        let put = format!(
            "UPDATE {table} SET bytes = left_over.bytes
             FROM unnest($3::BIGINT[], $4::BYTEA[], $5::BYTEA[]) AS left_over (sequence, hash, bytes)
             WHERE {table}.vault = $1 AND {table}.device = $2
               AND {table}.sequence = left_over.sequence AND {table}.hash = left_over.hash"
        );
        write.execute(&put, &[&vault, &device, &numbers, &hashes, &left])?;
    }
    Ok(())
}
