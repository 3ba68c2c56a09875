//! Frames, heads and rolls in SQLite.

use super::erased::{empty, left, left_of};
use super::{SqliteStore, failed};
use crate::store::{BEFORE_ALL, damaged, fixed, signed, statement, unsigned, why, why_number};
use rusqlite::{Connection, OptionalExtension, params};
use sync::exchange::{Appended, FrameStore, Run, StoreError, Vector, Why};
use vault::{DeviceId, ErasedKey, Frame, FrameHash, Head, Statement, VaultId};

impl FrameStore for SqliteStore {
    fn roll(&self, vault: VaultId) -> Result<Vec<Statement>, StoreError> {
        self.read(|connection| {
            let rows = blobs(
                connection,
                "SELECT statement FROM roll WHERE vault = ?1 ORDER BY number",
                params![vault.as_bytes()],
            )?;
            rows.iter().map(|bytes| statement(bytes)).collect()
        })
    }

    fn extend_roll(&self, statement: &Statement) -> Result<bool, StoreError> {
        let (vault, number, bytes) = (statement.vault, statement.number, statement.bytes());
        self.writer.write(move |connection| {
            let added = connection.execute(
                "INSERT INTO roll (vault, number, statement)
                 SELECT ?1, ?2, ?3
                 WHERE EXISTS (SELECT 1 FROM vault WHERE vault = ?1)
                   AND (SELECT count(*) FROM roll WHERE vault = ?1) = ?2 - 1",
                params![vault.as_bytes(), signed(number), bytes],
            )?;
            Ok(added == 1)
        })
    }

    fn head(&self, vault: VaultId, device: DeviceId) -> Result<Option<Head>, StoreError> {
        self.read(|connection| {
            let raw = raw_head(connection, vault, device).map_err(failed)?;
            raw.map(head).transpose()
        })
    }

    fn vector(&self, vault: VaultId) -> Result<Vector, StoreError> {
        self.read(|connection| {
            let mut asked = connection
                .prepare_cached("SELECT device, sequence, hash FROM head WHERE vault = ?1")
                .map_err(failed)?;
            let rows = asked
                .query_map(params![vault.as_bytes()], |row| {
                    Ok((row.get::<_, Vec<u8>>(0)?, (row.get(1)?, row.get(2)?)))
                })
                .map_err(failed)?;
            rows.map(|row| {
                let (device, raw) = row.map_err(failed)?;
                Ok((
                    DeviceId::from_bytes(fixed("a device", &device)?),
                    head(raw)?,
                ))
            })
            .collect()
        })
    }

    fn append(&self, run: &Run) -> Result<Appended, StoreError> {
        let run = run.clone();
        let moved = self.writer.write(move |connection| {
            let there = raw_head(connection, run.vault(), run.device())?;
            let expected = run.before().map(raw);
            if there != expected {
                return Ok(Some(there));
            }
            insert(connection, &left(connection, run)?)?;
            Ok(None)
        })?;
        Ok(match moved {
            None => Appended::Kept,
            Some(there) => Appended::Moved {
                head: there.map(head).transpose()?,
            },
        })
    }

    fn hashes(
        &self,
        vault: VaultId,
        device: DeviceId,
        from: u64,
        most: usize,
    ) -> Result<Vec<FrameHash>, StoreError> {
        self.read(|connection| {
            let rows = blobs(
                connection,
                "SELECT hash FROM frame WHERE vault = ?1 AND device = ?2 AND sequence >= ?3
                 ORDER BY sequence LIMIT ?4",
                params![
                    vault.as_bytes(),
                    device.as_bytes(),
                    signed(from),
                    signed(most as u64)
                ],
            )?;
            rows.iter()
                .map(|bytes| Ok(FrameHash::from_bytes(fixed("a hash", bytes)?)))
                .collect()
        })
    }

    fn range(
        &self,
        vault: VaultId,
        device: DeviceId,
        from: u64,
        frames: usize,
        bytes: usize,
    ) -> Result<Vec<Vec<u8>>, StoreError> {
        self.read(|connection| {
            let mut asked = connection
                .prepare_cached(
                    "SELECT bytes FROM frame WHERE vault = ?1 AND device = ?2 AND sequence >= ?3
                     ORDER BY sequence LIMIT ?4",
                )
                .map_err(failed)?;
            let place = params![
                vault.as_bytes(),
                device.as_bytes(),
                signed(from),
                signed(frames as u64)
            ];
            let mut rows = asked.query(place).map_err(failed)?;
            let (mut range, mut room) = (Vec::new(), bytes);
            // Row by row: what doesn't fit is not even read.
            while let Some(row) = rows.next().map_err(failed)? {
                let frame: Vec<u8> = row.get(0).map_err(failed)?;
                match room.checked_sub(frame.len()) {
                    Some(left) => room = left,
                    None => break,
                }
                range.push(frame);
            }
            Ok(range)
        })
    }

    fn size(&self, vault: VaultId) -> Result<u64, StoreError> {
        self.read(|connection| {
            let bytes: i64 = connection
                .prepare_cached(
                    "SELECT (SELECT coalesce(sum(bytes), 0) FROM head WHERE vault = ?1)
                          + (SELECT coalesce(sum(length(bytes)), 0) FROM aside WHERE vault = ?1)",
                )
                .and_then(|mut asked| asked.query_row(params![vault.as_bytes()], |row| row.get(0)))
                .map_err(failed)?;
            Ok(unsigned(bytes))
        })
    }

    fn set_aside(&self, frame: &Frame, why: Why) -> Result<(), StoreError> {
        let frame = frame.clone();
        self.writer.write(move |connection| {
            let frame = left_of(connection, frame)?;
            connection.execute(
                "INSERT INTO aside (vault, device, sequence, hash, why, bytes) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
                 ON CONFLICT DO NOTHING",
                params![
                    frame.header().vault.as_bytes(),
                    frame.device().as_bytes(),
                    signed(frame.sequence()),
                    frame.hash().as_bytes(),
                    why_number(why),
                    frame.bytes()
                ],
            )?;
            Ok(())
        })
    }

    fn remember_erased(&self, vault: VaultId, keys: &[ErasedKey]) -> Result<(), StoreError> {
        let keys = keys.to_vec();
        self.writer.write(move |connection| {
            let mut insert = connection.prepare_cached(
                "INSERT INTO erased (vault, key, device, sequence) VALUES (?1, ?2, ?3, ?4)
                 ON CONFLICT DO NOTHING",
            )?;
            for key in &keys {
                insert.execute(params![
                    vault.as_bytes(),
                    key.id.as_bytes(),
                    key.device.as_bytes(),
                    signed(key.sequence)
                ])?;
            }
            Ok(())
        })
    }

    fn empty(&self, frames: &[Frame]) -> Result<(), StoreError> {
        let frames = frames.to_vec();
        self.writer
            .write(move |connection| empty(connection, &frames))?;
        // What went still stands in the log of writes, until that is begun anew; where somebody reads just now, a little later.
        match self.empty_log() {
            Ok(()) | Err(StoreError::Busy(_)) => Ok(()),
            Err(error) => Err(error),
        }
    }

    fn aside(
        &self,
        vault: VaultId,
        after: Option<(DeviceId, Head)>,
        most: usize,
    ) -> Result<Vec<(Why, Vec<u8>)>, StoreError> {
        let (device, head) = after.unwrap_or(BEFORE_ALL);
        self.read(|connection| {
            let mut asked = connection
                .prepare_cached(
                    "SELECT why, bytes FROM aside
                     WHERE vault = ?1 AND (device, sequence, hash) > (?2, ?3, ?4)
                     ORDER BY device, sequence, hash LIMIT ?5",
                )
                .map_err(failed)?;
            let rows = asked
                .query_map(
                    params![
                        vault.as_bytes(),
                        device.as_bytes(),
                        signed(head.sequence),
                        head.hash.as_bytes(),
                        signed(most as u64)
                    ],
                    |row| Ok((row.get::<_, i16>(0)?, row.get(1)?)),
                )
                .map_err(failed)?;
            rows.map(|row| {
                let (number, bytes) = row.map_err(failed)?;
                Ok((why(number)?, bytes))
            })
            .collect()
        })
    }
}

type RawHead = (i64, Vec<u8>);

fn raw(head: Head) -> RawHead {
    (signed(head.sequence), head.hash.as_bytes().to_vec())
}

fn head((sequence, hash): RawHead) -> Result<Head, StoreError> {
    if sequence < 1 {
        return Err(damaged("the number of a head", &sequence));
    }
    Ok(Head {
        sequence: unsigned(sequence),
        hash: FrameHash::from_bytes(fixed("a hash", &hash)?),
    })
}

fn raw_head(
    connection: &Connection,
    vault: VaultId,
    device: DeviceId,
) -> rusqlite::Result<Option<RawHead>> {
    connection
        .prepare_cached("SELECT sequence, hash FROM head WHERE vault = ?1 AND device = ?2")?
        .query_row(params![vault.as_bytes(), device.as_bytes()], |row| {
            Ok((row.get(0)?, row.get(1)?))
        })
        .optional()
}

fn insert(connection: &Connection, run: &Run) -> rusqlite::Result<()> {
    let (vault, device) = (run.vault(), run.device());
    let mut insert = connection.prepare_cached(
        "INSERT INTO frame (vault, device, sequence, hash, bytes) VALUES (?1, ?2, ?3, ?4, ?5)",
    )?;
    for frame in run.frames() {
        insert.execute(params![
            vault.as_bytes(),
            device.as_bytes(),
            signed(frame.sequence()),
            frame.hash().as_bytes(),
            frame.bytes()
        ])?;
    }
    let head = run.head();
    connection
        .prepare_cached(
            "INSERT INTO head (vault, device, sequence, hash, bytes) VALUES (?1, ?2, ?3, ?4, ?5)
             ON CONFLICT (vault, device) DO UPDATE
             SET sequence = excluded.sequence, hash = excluded.hash, bytes = bytes + excluded.bytes",
        )?
        .execute(params![
            vault.as_bytes(),
            device.as_bytes(),
            signed(head.sequence),
            head.hash.as_bytes(),
            signed(run.bytes() as u64)
        ])?;
    Ok(())
}

fn blobs(
    connection: &Connection,
    sql: &str,
    place: impl rusqlite::Params,
) -> Result<Vec<Vec<u8>>, StoreError> {
    let read = || {
        let mut asked = connection.prepare_cached(sql)?;
        let rows = asked.query_map(place, |row| row.get(0))?;
        rows.collect::<rusqlite::Result<_>>()
    };
    read().map_err(failed)
}
