//! Invitations and the list of vaults in PostgreSQL.

use super::{Ended, PostgresStore};
use crate::store::{Desk, Opening, Summary, fixed, signed, to_the_end, unsigned};
use postgres::types::ToSql;
use postgres::{Row, Transaction};
use sync::exchange::StoreError;
use vault::{Statement, VaultId};

impl Desk for PostgresStore {
    fn invite(&self, code: [u8; 32], expires: u64) -> Result<(), StoreError> {
        self.transact(|write| {
            write.execute(
                "INSERT INTO invitation (code, expires) VALUES ($1, $2)",
                &[&code.as_slice(), &signed(expires)],
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
        self.transact(|write| opening(write, code, signed(now), first))
    }

    fn vaults(&self) -> Result<Vec<Summary>, StoreError> {
        self.transact(|read| {
            let rows = read.query(
                "SELECT vault, opened,
                        (SELECT count(*) FROM head WHERE head.vault = vault.vault),
                        (SELECT coalesce(sum(sequence), 0)::BIGINT FROM head WHERE head.vault = vault.vault),
                        (SELECT coalesce(sum(bytes), 0)::BIGINT FROM head WHERE head.vault = vault.vault),
                        (SELECT count(*) FROM aside WHERE aside.vault = vault.vault)
                 FROM vault ORDER BY vault",
                &[],
            )?;
            Ok(rows.iter().map(summary).collect::<Result<_, _>>()?)
        })
    }

    fn erase(&self, vault: VaultId) -> Result<Option<u64>, StoreError> {
        let known = self.transact(|write| {
            let mut known = 0;
            for table in ["roll", "vault", "head", "erased"] {
                let erase = format!("DELETE FROM {table} WHERE vault = $1");
                known += write.execute(&erase, &[&vault.as_bytes().as_slice()])?;
            }
            Ok(known)
        })?;
        let mut frames = 0;
        for (table, key) in [
            ("frame", "device, sequence"),
            ("aside", "device, sequence, hash"),
        ] {
            let erase = format!(
                "DELETE FROM {table} WHERE vault = $1 AND ({key}) IN
                     (SELECT {key} FROM {table} WHERE vault = $1 ORDER BY {key} LIMIT $2)"
            );
            frames += to_the_end(|most| {
                self.transact(|write| {
                    let some: [&(dyn ToSql + Sync); 2] =
                        [&vault.as_bytes().as_slice(), &signed(most)];
                    Ok(write.execute(&erase, &some)?)
                })
            })?;
        }
        Ok((known > 0 || frames > 0).then_some(frames))
    }

    fn ready(&self) -> Result<(), StoreError> {
        self.transact(|write| {
            write.execute("UPDATE lightround SET steps = steps WHERE false", &[])?;
            Ok(())
        })
    }
}

fn summary(row: &Row) -> Result<Summary, StoreError> {
    let [opened, devices, frames, bytes, aside] =
        [1, 2, 3, 4, 5].map(|at| unsigned(row.get::<usize, i64>(at)));
    Ok(Summary {
        vault: VaultId::from_bytes(fixed("a vault", row.get(0))?),
        opened,
        devices,
        frames,
        bytes,
        aside,
    })
}

fn opening(
    write: &mut Transaction<'_>,
    code: [u8; 32],
    now: i64,
    first: &Statement,
) -> Result<Opening, Ended> {
    let (vault, bytes) = (first.vault, first.bytes());
    let (vault, bytes) = (vault.as_bytes().as_slice(), bytes.as_slice());
    let there = write.query_opt(
        "SELECT statement FROM roll WHERE vault = $1 AND number = 1",
        &[&vault],
    )?;
    if let Some(there) = there {
        let same = there.get::<_, &[u8]>(0) == bytes;
        return Ok(if same {
            Opening::Opened
        } else {
            Opening::Taken
        });
    }
    let used = write.execute(
        "DELETE FROM invitation WHERE code = $1 AND expires > $2",
        &[&code.as_slice(), &now],
    )?;
    if used == 0 {
        return Ok(Opening::NoInvitation);
    }
    write.execute("DELETE FROM invitation WHERE expires <= $1", &[&now])?;
    write.execute(
        "INSERT INTO vault (vault, opened) VALUES ($1, $2)",
        &[&vault, &now],
    )?;
    write.execute(
        "INSERT INTO roll (vault, number, statement) VALUES ($1, 1, $2)",
        &[&vault, &bytes],
    )?;
    Ok(Opening::Opened)
}
