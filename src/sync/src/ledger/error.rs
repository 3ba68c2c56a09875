//! Why a ledger doesn't do what it was asked, in one sentence each.

use crate::storage::StorageError;
use vault::enrolment::EnrolmentError;
use vault::{ChangeError, DraftError, NoRandomness, RollError, SealError};

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
    /// This device is a copy of another, or was put back from one.
    #[error(
        "this tablet was put back from a copy, so nothing is written in its old name: set it up anew, nothing is lost"
    )]
    Copy,
    /// This device's role.
    #[error("this tablet only reads: a lead tablet can have another one write")]
    ReadsOnly,
    /// The keys open none of it.
    #[error(
        "the keys on this tablet don't open what it wrote before, so nothing is written with them"
    )]
    WrongKey,
}

/// Why a lead's business was not done.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LeadError {
    /// This device is no lead.
    #[error("only a lead tablet may do this")]
    NotALead,
    /// There is nothing about this person.
    #[error("nothing is kept about this person")]
    Nobody,
    /// The list of devices doesn't allow it.
    #[error(transparent)]
    Roll(#[from] RollError),
    /// The enrolment doesn't go on.
    #[error(transparent)]
    Enrolment(#[from] EnrolmentError),
    /// It was not written.
    #[error(transparent)]
    Write(#[from] WriteError),
    /// It was written, and the storage failed while it was carried out: it is taken up when the vault is opened next.
    #[error("it is not done on this device yet, and goes on when the vault is opened next: {0}")]
    Unfinished(StorageError),
}

/// Why a device did not get another identity; it is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RenewError {
    /// The key file doesn't open.
    #[error(transparent)]
    Change(#[from] ChangeError),
    /// What is to be written anew could not be sealed.
    #[error(transparent)]
    Seal(#[from] SealError),
    /// The storage failed.
    #[error(transparent)]
    Storage(#[from] StorageError),
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

/// Why no checkpoint was kept. Nothing depends on it but speed.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum CheckpointFailed {
    /// No random numbers to seal it with.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// The storage failed.
    #[error(transparent)]
    Storage(#[from] StorageError),
    /// What is here could not be read.
    #[error(transparent)]
    Unread(#[from] LedgerError),
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
