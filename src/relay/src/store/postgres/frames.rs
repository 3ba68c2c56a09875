//! Frames, heads and rolls in PostgreSQL.

use super::erased::{empty, left, left_of};
use super::{Ended, PostgresStore};
use crate::store::{
    BEFORE_ALL, damaged, fitting, fixed, signed, statement, unsigned, why, why_number,
};
use postgres::{Row, Transaction};
use sync::exchange::{Appended, FrameStore, Run, StoreError, Vector, Why};
use vault::{DeviceId, ErasedKey, Frame, FrameHash, Head, Statement, VaultId};

/// Rows read at a time where only bytes limit them: what doesn't fit is not all read in vain.
const AT_A_TIME: usize = 50;

impl FrameStore for PostgresStore {
    fn roll(&self, vault: VaultId) -> Result<Vec<Statement>, StoreError> {
        self.transact(|read| {
            let rows = read.query(
                "SELECT statement FROM roll WHERE vault = $1 ORDER BY number",
                &[&vault.as_bytes().as_slice()],
            )?;
            let statements = rows.iter().map(|row| statement(row.get(0)));
            Ok(statements.collect::<Result<_, _>>()?)
        })
    }

    fn extend_roll(&self, statement: &Statement) -> Result<bool, StoreError> {
        let (vault, bytes) = (statement.vault, statement.bytes());
        let number = signed(statement.number);
        self.transact(|write| {
            let added = write.execute(
                "INSERT INTO roll (vault, number, statement)
                 SELECT $1, $2::BIGINT, $3
                 WHERE EXISTS (SELECT 1 FROM vault WHERE vault = $1)
                   AND (SELECT count(*) FROM roll WHERE vault = $1) = $2::BIGINT - 1",
                &[&vault.as_bytes().as_slice(), &number, &bytes.as_slice()],
            )?;
            Ok(added == 1)
        })
    }

    fn head(&self, vault: VaultId, device: DeviceId) -> Result<Option<Head>, StoreError> {
        self.transact(|read| kept_head(read, vault, device))
    }

    fn vector(&self, vault: VaultId) -> Result<Vector, StoreError> {
        self.transact(|read| {
            let rows = read.query(
                "SELECT sequence, hash, device FROM head WHERE vault = $1",
                &[&vault.as_bytes().as_slice()],
            )?;
            let heads = rows.iter().map(|row| {
                let device = fixed("a device", row.get(2))?;
                Ok((DeviceId::from_bytes(device), head(row)?))
            });
            Ok(heads.collect::<Result<_, StoreError>>()?)
        })
    }

    fn append(&self, run: &Run) -> Result<Appended, StoreError> {
        self.transact(|write| {
            let head = kept_head(write, run.vault(), run.device())?;
            if head != run.before() {
                return Ok(Appended::Moved { head });
            }
            let left = left(write, run)?;
            insert(write, &left)?;
            Ok(Appended::Kept)
        })
    }

    fn hashes(
        &self,
        vault: VaultId,
        device: DeviceId,
        from: u64,
        most: usize,
    ) -> Result<Vec<FrameHash>, StoreError> {
        self.transact(|read| {
            let rows = read.query(
                "SELECT hash FROM frame WHERE vault = $1 AND device = $2 AND sequence >= $3
                 ORDER BY sequence LIMIT $4",
                &[
                    &vault.as_bytes().as_slice(),
                    &device.as_bytes().as_slice(),
                    &signed(from),
                    &signed(most as u64),
                ],
            )?;
            let hashes = rows.iter().map(hash_of);
            Ok(hashes.collect::<Result<_, _>>()?)
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
        self.transact(|read| {
            let (mut range, mut room, mut from) = (Vec::new(), bytes, from);
            while range.len() < frames {
                let most = AT_A_TIME.min(frames - range.len());
                let rows = frames_from(read, vault, device, from, most)?;
                let (asked, got) = (most, rows.len());
                let rows = fitting(rows, room);
                let all_fit = rows.len() == got;
                room -= rows.iter().map(Vec::len).sum::<usize>();
                from = from.saturating_add(got as u64);
                range.extend(rows);
                if got < asked || !all_fit {
                    break;
                }
            }
            Ok(range)
        })
    }

    fn size(&self, vault: VaultId) -> Result<u64, StoreError> {
        self.transact(|read| {
            let row = read.query_one(
                "SELECT (SELECT coalesce(sum(bytes), 0)::BIGINT FROM head WHERE vault = $1)
                      + (SELECT coalesce(sum(length(bytes)), 0)::BIGINT FROM aside WHERE vault = $1)",
                &[&vault.as_bytes().as_slice()],
            )?;
            Ok(unsigned(row.get(0)))
        })
    }

    fn set_aside(&self, frame: &Frame, why: Why) -> Result<(), StoreError> {
        self.transact(|write| {
            let frame = left_of(write, frame)?;
            write.execute(
                "INSERT INTO aside (vault, device, sequence, hash, why, bytes)
                 VALUES ($1, $2, $3, $4, $5, $6) ON CONFLICT DO NOTHING",
                &[
                    &frame.header().vault.as_bytes().as_slice(),
                    &frame.device().as_bytes().as_slice(),
                    &signed(frame.sequence()),
                    &frame.hash().as_bytes().as_slice(),
                    &why_number(why),
                    &frame.bytes(),
                ],
            )?;
            Ok(())
        })
    }

    fn remember_erased(&self, vault: VaultId, keys: &[ErasedKey]) -> Result<(), StoreError> {
        let ids: Vec<&[u8]> = keys
            .iter()
            .map(|key| key.id.as_bytes().as_slice())
            .collect();
        let devices = keys.iter().map(|key| key.device.as_bytes().as_slice());
        let devices: Vec<&[u8]> = devices.collect();
        let numbers: Vec<i64> = keys.iter().map(|key| signed(key.sequence)).collect();
        self.transact(|write| {
            write.execute(
                "INSERT INTO erased (vault, key, device, sequence)
                 SELECT $1, * FROM unnest($2::BYTEA[], $3::BYTEA[], $4::BIGINT[])
                 ON CONFLICT DO NOTHING",
                &[&vault.as_bytes().as_slice(), &ids, &devices, &numbers],
            )?;
            Ok(())
        })
    }

    fn empty(&self, frames: &[Frame]) -> Result<(), StoreError> {
        self.transact(|write| empty(write, frames))
    }

    fn aside(
        &self,
        vault: VaultId,
        after: Option<(DeviceId, Head)>,
        most: usize,
    ) -> Result<Vec<(Why, Vec<u8>)>, StoreError> {
        let (device, head) = after.unwrap_or(BEFORE_ALL);
        self.transact(|read| {
            let rows = read.query(
                "SELECT why, bytes FROM aside
                 WHERE vault = $1 AND (device, sequence, hash) > ($2, $3, $4)
                 ORDER BY device, sequence, hash LIMIT $5",
                &[
                    &vault.as_bytes().as_slice(),
                    &device.as_bytes().as_slice(),
                    &signed(head.sequence),
                    &head.hash.as_bytes().as_slice(),
                    &signed(most as u64),
                ],
            )?;
            let frames = rows.iter().map(|row| Ok((why(row.get(0))?, row.get(1))));
            Ok(frames.collect::<Result<_, StoreError>>()?)
        })
    }
}

fn kept_head(
    read: &mut Transaction<'_>,
    vault: VaultId,
    device: DeviceId,
) -> Result<Option<Head>, Ended> {
    let row = read.query_opt(
        "SELECT sequence, hash FROM head WHERE vault = $1 AND device = $2",
        &[&vault.as_bytes().as_slice(), &device.as_bytes().as_slice()],
    )?;
    Ok(row.as_ref().map(head).transpose()?)
}

fn frames_from(
    read: &mut Transaction<'_>,
    vault: VaultId,
    device: DeviceId,
    from: u64,
    most: usize,
) -> Result<Vec<Vec<u8>>, Ended> {
    let rows = read.query(
        "SELECT bytes FROM frame WHERE vault = $1 AND device = $2 AND sequence >= $3
         ORDER BY sequence LIMIT $4",
        &[
            &vault.as_bytes().as_slice(),
            &device.as_bytes().as_slice(),
            &signed(from),
            &signed(most as u64),
        ],
    )?;
    Ok(rows.iter().map(|row| row.get(0)).collect())
}

fn insert(write: &mut Transaction<'_>, run: &Run) -> Result<(), Ended> {
    let (vault, device) = (run.vault(), run.device());
    let (vault, device) = (vault.as_bytes().as_slice(), device.as_bytes().as_slice());
    // The head first: whoever else appends to this log is met here, before any frame is written.
    let head = run.head();
    write.execute(
        "INSERT INTO head (vault, device, sequence, hash, bytes) VALUES ($1, $2, $3, $4, $5)
         ON CONFLICT (vault, device) DO UPDATE
         SET sequence = excluded.sequence, hash = excluded.hash, bytes = head.bytes + excluded.bytes",
        &[
            &vault,
            &device,
            &signed(head.sequence),
            &head.hash.as_bytes().as_slice(),
            &signed(run.bytes() as u64),
        ],
    )?;
    let numbers: Vec<i64> = run
        .frames()
        .iter()
        .map(|frame| signed(frame.sequence()))
        .collect();
    let hashes: Vec<Vec<u8>> = run
        .frames()
        .iter()
        .map(|frame| frame.hash().as_bytes().to_vec())
        .collect();
    let frames: Vec<&[u8]> = run.frames().iter().map(Frame::bytes).collect();
    write.execute(
        "INSERT INTO frame (vault, device, sequence, hash, bytes)
         SELECT $1, $2, * FROM unnest($3::BIGINT[], $4::BYTEA[], $5::BYTEA[])",
        &[&vault, &device, &numbers, &hashes, &frames],
    )?;
    Ok(())
}

/// The head in a row that begins with number and hash.
fn head(row: &Row) -> Result<Head, StoreError> {
    let sequence: i64 = row.get(0);
    if sequence < 1 {
        return Err(damaged("the number of a head", &sequence));
    }
    Ok(Head {
        sequence: unsigned(sequence),
        hash: FrameHash::from_bytes(fixed("a hash", row.get(1))?),
    })
}

fn hash_of(row: &Row) -> Result<FrameHash, StoreError> {
    Ok(FrameHash::from_bytes(fixed("a hash", row.get(0))?))
}
