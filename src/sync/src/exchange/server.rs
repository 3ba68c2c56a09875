//! The relay's side of the exchange: a function of the store, of who asks and of what.

mod aside;
mod erase;
mod pull;
mod push;

pub use push::push as keep_run;

use super::wire::{MOST_DEVICES, MOST_STATEMENTS};
use super::{Answer, FrameStore, Request, Shown, StoreError};
use vault::roll::Change;
use vault::{DeviceId, Role, Roll, RollError, Statement, VaultId};

/// Why a relay doesn't do what it is asked.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// No such vault here, or the asker has no business in it: which of the two, nobody is told.
    #[error("this relay keeps no such vault for this tablet")]
    Unknown,
    /// The asker was removed from the vault.
    #[error("this tablet was removed from the vault")]
    Removed,
    /// A frame that isn't its device's own, or that the device may not write.
    #[error("entry {sequence} is not one that its tablet may write")]
    NotAllowed {
        /// Its number.
        sequence: u64,
    },
    /// Not shown to whoever is no lead.
    #[error("only a lead tablet is shown what was set aside")]
    NotALead,
    /// A frame of another vault.
    #[error("these entries are of another vault")]
    OtherVault,
    /// No room for more.
    #[error("this vault's room on the relay is full")]
    Full,
    /// A statement that doesn't belong on the roll.
    #[error(transparent)]
    Roll(#[from] RollError),
    /// The store.
    #[error("the relay can't get at what it keeps just now")]
    Store(#[from] StoreError),
}

/// How much a vault may take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quota {
    /// Bytes of frames.
    pub bytes: u64,
}

/// Does what `asker` asks of a vault, if it may.
///
/// Who asks was made sure of before; whether it belongs to the vault is looked up here. Any member may push any device's
/// frames: they are signed, so a relay that was restored from an old copy can be healed by whoever comes first.
///
/// # Errors
///
/// As [`Refusal`]; nothing was kept then, but what was set aside.
pub fn answer<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    asker: DeviceId,
    quota: Quota,
    request: Request,
) -> Result<Answer, Refusal> {
    let roll = match (member(store, vault, asker), &request) {
        (Err(Refusal::Removed), Request::Roll) => {
            return Ok(Answer::Roll(until_removal(store, vault, asker)?));
        }
        (roll, _) => roll?,
    };
    match request {
        Request::Heads => Ok(Answer::Heads(shown(store, &roll)?)),
        Request::Pull { have } => pull::page(store, &roll, &have).map(Answer::Page),
        Request::Push(run) => push::push(store, &roll, quota, &run).map(Answer::Pushed),
        // For one who is a member already, the vault is open.
        Request::Roll | Request::Open { .. } => Ok(Answer::Roll(store.roll(vault)?)),
        Request::State(statement) => {
            extend(store, roll, asker, &statement)?;
            Ok(Answer::Roll(store.roll(vault)?))
        }
        Request::Aside { .. } if roll.role(asker) != Some(Role::Lead) => Err(Refusal::NotALead),
        Request::Aside { after } => aside::page(store, vault, after).map(Answer::Aside),
    }
}

/// The vault's roll, if the asker is on it.
///
/// # Errors
///
/// It is not, or was removed; the store fails or holds a roll that doesn't hold together.
fn member<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    asker: DeviceId,
) -> Result<Roll, Refusal> {
    let roll = kept_roll(store, vault)?;
    match (roll.role(asker), roll.standing(asker)) {
        (Some(_), _) => Ok(roll),
        (None, Some(_)) => Err(Refusal::Removed),
        (None, None) => Err(Refusal::Unknown),
    }
}

/// The roll up to the statement that removed a device: that a lead did so is signed there, and nobody has to be believed for it.
/// Who came later is none of its business.
fn until_removal<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    removed: DeviceId,
) -> Result<Vec<Statement>, Refusal> {
    let mut statements = store.roll(vault)?;
    let removal = statements.iter().rposition(|statement| {
        statement.about.device() == removed && matches!(statement.change, Change::Remove { .. })
    });
    statements.truncate(removal.map_or(0, |at| at + 1));
    Ok(statements)
}

/// Adds a statement to a vault's roll for a lead. The same statement again is a success.
fn extend<S: FrameStore + ?Sized>(
    store: &S,
    mut roll: Roll,
    asker: DeviceId,
    statement: &Statement,
) -> Result<(), Refusal> {
    if store.roll(roll.vault())?.contains(statement) {
        return Ok(());
    }
    if roll.role(asker) != Some(Role::Lead) {
        return Err(RollError::NotALead.into());
    }
    roll.add(statement)?;
    let full = statement.number > MOST_STATEMENTS as u64 || roll.devices().count() > MOST_DEVICES;
    if full {
        return Err(Refusal::Full);
    }
    if store.extend_roll(statement)? {
        return Ok(());
    }
    let expected = kept_roll(store, roll.vault())?.length() + 1;
    Err(RollError::OutOfPlace { expected }.into())
}

fn kept_roll<S: FrameStore + ?Sized>(store: &S, vault: VaultId) -> Result<Roll, Refusal> {
    let statements = store.roll(vault)?;
    Roll::reread(vault, &statements)
        .map_err(|error| StoreError::Damaged(format!("the roll of vault {vault}: {error}")).into())
}

/// Every log's head with its device's key. Logs of devices that are not on the roll are never kept.
fn shown<S: FrameStore + ?Sized>(store: &S, roll: &Roll) -> Result<Vec<Shown>, Refusal> {
    let heads = store.vector(roll.vault())?;
    Ok(heads
        .iter()
        .filter_map(|(device, head)| {
            let key = roll.standing(device)?.key;
            Some(Shown { key, head })
        })
        .collect())
}
