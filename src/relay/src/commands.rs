//! What is asked of a relay's store on the command line.

use crate::carry::now;
use crate::copy::{Copied, copy};
use crate::store::{self, Desk, Summary};
use std::fs::File;
use std::io::Write;
use std::path::{Path, PathBuf};
use sync::carry::{CarryError, relayed};
use sync::exchange::StoreError;
use vault::{Invitation, NoRandomness, VaultId};

/// Milliseconds of a day.
const DAY: u64 = 24 * 60 * 60 * 1_000;

/// Why there is no invitation.
#[derive(Debug, thiserror::Error)]
pub enum InviteError {
    /// No random code.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// It could not be kept.
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Why there is no backup, or nothing was restored.
#[derive(Debug, thiserror::Error)]
pub enum BackupError {
    /// The backup is where the entries are kept.
    #[error("{} is where the entries are kept: a backup is another file", .0.display())]
    Itself(PathBuf),
    /// The backup is an address of a database.
    #[error("a backup is a file, and {} is none", .0.display())]
    NoFile(PathBuf),
    /// A store failed.
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Why there is no carry file.
#[derive(Debug, thiserror::Error)]
pub enum CarryOutError {
    /// There is nothing of such a vault.
    #[error("there is nothing of a vault {0} here")]
    Unknown(VaultId),
    /// It can't be made.
    #[error(transparent)]
    Carry(#[from] CarryError),
    /// It can't be written.
    #[error("{} can't be written: {why}", .file.display())]
    File {
        /// Where to.
        file: PathBuf,
        /// Why not.
        why: std::io::Error,
    },
}

/// Why nothing was erased.
#[derive(Debug, thiserror::Error)]
pub enum EraseError {
    /// There is nothing of such a vault.
    #[error("there is nothing of a vault {0} here")]
    Unknown(VaultId),
    /// The store failed.
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Copies what a backup lacks out of the store at `data`.
///
/// # Errors
///
/// It is no file, or the store's own; a store fails.
pub fn backup(data: &str, to: &Path) -> Result<Copied, BackupError> {
    apart(data, to)?;
    let from = store::open_there(data)?;
    Ok(copy(from.as_ref(), &store::SqliteStore::open(to)?)?)
}

/// Copies what the store at `data` lacks out of a backup.
///
/// # Errors
///
/// There is no such file, or it is the store's own; a store fails.
pub fn restore(data: &str, from: &Path) -> Result<Copied, BackupError> {
    apart(data, from)?;
    let from = store::open_there(&from.to_string_lossy())?;
    Ok(copy(from.as_ref(), store::open(data)?.as_ref())?)
}

fn apart(data: &str, backup: &Path) -> Result<(), BackupError> {
    if store::is_database(&backup.to_string_lossy()) {
        return Err(BackupError::NoFile(backup.to_owned()));
    }
    // Two names of one file; where one of them isn't there, they are not.
    match (Path::new(data).canonicalize(), backup.canonicalize()) {
        (Ok(data), Ok(other)) if data == other => Err(BackupError::Itself(backup.to_owned())),
        _ => Ok(()),
    }
}

/// Writes a vault into a carry file, which with the recovery sheet brings it back where every tablet is lost. Nothing is
/// written over.
///
/// # Errors
///
/// There is nothing of it; the file is there already, or can't be written; the store fails.
pub fn carry(store: &dyn Desk, vault: VaultId, to: &Path) -> Result<String, CarryOutError> {
    let exported = match relayed(store, vault) {
        Err(CarryError::Nothing) => return Err(CarryOutError::Unknown(vault)),
        exported => exported?,
    };
    let failed = |why| CarryOutError::File {
        file: to.to_owned(),
        why,
    };
    let mut file = File::create_new(to).map_err(failed)?;
    file.write_all(&exported.bytes)
        .and_then(|()| file.sync_all())
        .map_err(failed)?;
    Ok(format!("{}: {exported}", to.display()))
}

/// Erases a vault with all that belongs to it.
///
/// # Errors
///
/// There is nothing of it; the store fails, and what is left can be erased by trying again.
pub fn erase(store: &dyn Desk, vault: VaultId) -> Result<String, EraseError> {
    let frames = store.erase(vault)?.ok_or(EraseError::Unknown(vault))?;
    Ok(format!("vault {vault} is erased, with {frames} entries"))
}

/// Makes a code that is good for so many days, once. The store keeps only its hash.
///
/// # Errors
///
/// No randomness; the store fails.
pub fn invite(store: &dyn Desk, days: u64) -> Result<Invitation, InviteError> {
    let code = Invitation::make()?;
    store.invite(code.hash(), now() + days * DAY)?;
    Ok(code)
}

/// The vaults as a table with a heading.
///
/// # Errors
///
/// The store fails.
pub fn vaults(store: &dyn Desk) -> Result<String, StoreError> {
    let heading = format!(
        "{:32}  {:>7}  {:>9}  {:>13}  {:>5}  opened (s since 1970)",
        "vault", "tablets", "entries", "bytes", "aside"
    );
    let lines = store.vaults()?.into_iter().map(|summary| line(&summary));
    Ok(std::iter::once(heading)
        .chain(lines)
        .collect::<Vec<_>>()
        .join("\n"))
}

fn line(summary: &Summary) -> String {
    format!(
        "{}  {:>7}  {:>9}  {:>13}  {:>5}  {}",
        summary.vault,
        summary.devices,
        summary.frames,
        summary.bytes,
        summary.aside,
        summary.opened / 1_000
    )
}
