//! Why a ledger doesn't do what it was asked, in one sentence each.

use crate::storage::StorageError;
use vault::{DraftError, SealError};

/// Why a vault was not opened or not made.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LedgerError {
    /// The storage failed.
    #[error(transparent)]
    Storage(#[from] StorageError),
    /// The first frame could not be made.
    #[error(transparent)]
    Seal(#[from] SealError),
    /// What is kept was not written with keys of this vault.
    #[error("what is kept on this device belongs to another vault: nothing was changed")]
    OtherVault,
}

/// Why nothing can be written in an open vault, though it can be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// There are keys and no log: it was cleared or lost.
    #[error(
        "this tablet's own entries are gone, so nothing can be written after them: set the tablet up anew"
    )]
    NoLog,
    /// The newest frame is missing or damaged.
    #[error(
        "the newest entry on this tablet is damaged, so nothing can be written after it: set the tablet up anew"
    )]
    DamagedEnd,
    /// The keys open none of it.
    #[error(
        "the keys on this tablet don't open what it wrote before, so nothing is written with them"
    )]
    WrongKey,
}

/// Why something was not written. It is not kept, unless the error says that this is unsure.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum WriteError {
    /// Nothing can be written since the vault was opened.
    #[error(transparent)]
    Refused(#[from] Refusal),
    /// It could not be sealed.
    #[error(transparent)]
    Seal(#[from] SealError),
    /// The storage failed. Where it is unsure whether the write happened, writing the same again is safe.
    #[error(transparent)]
    Storage(#[from] StorageError),
}

/// Why a draft was not kept or not given.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum DraftsError {
    /// It could not be sealed.
    #[error(transparent)]
    Seal(#[from] SealError),
    /// It doesn't open.
    #[error(transparent)]
    Open(#[from] DraftError),
    /// The storage failed.
    #[error(transparent)]
    Storage(#[from] StorageError),
}
