//! Invitations and the list of vaults in SQLite.

use super::{SqliteStore, failed};
use crate::store::{Desk, Opening, Summary, fixed, signed, to_the_end, unsigned};
use rusqlite::{Connection, OpenFlags, OptionalExtension, params};
use sync::exchange::StoreError;
use vault::{Statement, VaultId};

impl Desk for SqliteStore {
    fn invite(&self, code: [u8; 32], expires: u64) -> Result<(), StoreError> {
        self.writer.write(move |connection| {
            connection.execute(
                "INSERT INTO invitation (code, expires) VALUES (?1, ?2)",
                params![code, signed(expires)],
            )?;
            Ok(())
        })
    }

    fn open_vault(
        &self,
        code: [u8; 32],
        now: u64,
        first: &Statement,
    ) -> Result<Opening, StoreError> {
        let first = *first;
        self.writer
            .write(move |connection| opening(connection, code, now, &first))
    }

    fn vaults(&self) -> Result<Vec<Summary>, StoreError> {
        self.read(|connection| {
            let mut asked = connection
                .prepare(
                    "SELECT vault, opened,
                            (SELECT count(*) FROM head WHERE head.vault = vault.vault),
                            (SELECT coalesce(sum(sequence), 0) FROM head WHERE head.vault = vault.vault),
                            (SELECT coalesce(sum(bytes), 0) FROM head WHERE head.vault = vault.vault),
                            (SELECT count(*) FROM aside WHERE aside.vault = vault.vault)
                     FROM vault ORDER BY vault",
                )
                .map_err(failed)?;
            let rows = asked
                .query_map([], |row| {
                    let numbers = [1, 2, 3, 4, 5].map(|at| row.get(at));
                    Ok((row.get::<_, Vec<u8>>(0)?, numbers))
                })
                .map_err(failed)?;
            rows.map(|row| {
                let (vault, numbers) = row.map_err(failed)?;
                let [opened, devices, frames, bytes, aside] = numbers.map(|number| number.map(unsigned));
                Ok(Summary {
                    vault: VaultId::from_bytes(fixed("a vault", &vault)?),
                    opened: opened.map_err(failed)?,
                    devices: devices.map_err(failed)?,
                    frames: frames.map_err(failed)?,
                    bytes: bytes.map_err(failed)?,
                    aside: aside.map_err(failed)?,
                })
            })
            .collect()
        })
    }

    fn erase(&self, vault: VaultId) -> Result<Option<u64>, StoreError> {
        let known = self.writer.write(move |connection| {
            let mut known = 0;
            for table in ["roll", "vault", "head", "erased"] {
                let erase = format!("DELETE FROM {table} WHERE vault = ?1");
                known += connection.execute(&erase, params![vault.as_bytes()])?;
            }
            Ok(known)
        })?;
        let mut frames = 0;
        for table in ["frame", "aside"] {
            frames += to_the_end(|most| self.erase_some(table, vault, most))?;
        }
        // What was erased still stands in the log of writes, until that is begun anew.
        self.empty_log()?;
        Ok((known > 0 || frames > 0).then_some(frames))
    }

    fn ready(&self) -> Result<(), StoreError> {
        self.read(|connection| {
            connection
                .query_row("SELECT count(*) FROM vault", [], |row| row.get::<_, i64>(0))
                .map_err(failed)
        })?;
        self.writer.write(|_| Ok(()))
    }
}

impl SqliteStore {
    fn erase_some(
        &self,
        table: &'static str,
        vault: VaultId,
        most: u64,
    ) -> Result<u64, StoreError> {
        self.writer.write(move |connection| {
            let erase = format!(
                "DELETE FROM {table} WHERE rowid IN (SELECT rowid FROM {table} WHERE vault = ?1 LIMIT ?2)"
            );
            let erased = connection.execute(&erase, params![vault.as_bytes(), signed(most)])?;
            Ok(erased as u64)
        })
    }

    /// Waits until nobody reads what the log of writes has, takes it into the file, and cuts it off.
    pub(super) fn empty_log(&self) -> Result<(), StoreError> {
        // Not by the thread that writes: that one is always within a transaction.
        let connection = super::connect(&self.path, OpenFlags::default()).map_err(failed)?;
        connection
            .query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| {
                row.get::<_, i64>(0)
            })
            .map_err(failed)
            .and_then(|busy| match busy {
                0 => Ok(()),
                _ => Err(StoreError::Busy("somebody reads all the time".into())),
            })
    }
}

fn opening(
    connection: &Connection,
    code: [u8; 32],
    now: u64,
    first: &Statement,
) -> rusqlite::Result<Opening> {
    let vault = first.vault;
    let there: Option<Vec<u8>> = connection
        .query_row(
            "SELECT statement FROM roll WHERE vault = ?1 AND number = 1",
            params![vault.as_bytes()],
            |row| row.get(0),
        )
        .optional()?;
    if let Some(there) = there {
        let same = there == first.bytes();
        return Ok(if same {
            Opening::Opened
        } else {
            Opening::Taken
        });
    }
    let used = connection.execute(
        "DELETE FROM invitation WHERE code = ?1 AND expires > ?2",
        params![code, signed(now)],
    )?;
    if used == 0 {
        return Ok(Opening::NoInvitation);
    }
    connection.execute(
        "DELETE FROM invitation WHERE expires <= ?1",
        params![signed(now)],
    )?;
    connection.execute(
        "INSERT INTO vault (vault, opened) VALUES (?1, ?2)",
        params![vault.as_bytes(), signed(now)],
    )?;
    connection.execute(
        "INSERT INTO roll (vault, number, statement) VALUES (?1, 1, ?2)",
        params![vault.as_bytes(), first.bytes()],
    )?;
    Ok(Opening::Opened)
}
