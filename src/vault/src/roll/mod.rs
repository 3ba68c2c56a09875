//! The roll: which devices belong to a vault, and what each may do.
//!
//! It is a list of statements, each signed by a lead and naming the one before it, so that whoever carries it can neither
//! add, alter, reorder nor drop one in the middle unseen. Nothing in it is secret: a relay reads it to know whose frames to
//! carry. The first statement is the founding device's own.
//!
//! What the rules are, [`Roll::add`] says. A device that was removed never comes back under the same key, and nobody
//! becomes a viewer who was more: what such a device wrote before would no longer be allowed to it. It is removed and
//! enrolled anew instead.

mod error;
mod statement;
#[cfg(test)]
mod tests;

pub use error::{RollError, StatementError};
pub use statement::{Change, STATEMENT, Statement};

use crate::frame::{Frame, PublicKey, Purpose};
use crate::ids::{DeviceId, FrameHash, VaultId};
use crate::keys::Keys;
use std::collections::BTreeMap;

/// What a device may do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// Reads and exports. Of its own it writes nothing but its introduction.
    Viewer,
    /// Examines and writes.
    Clinician,
    /// That, and adds and removes devices.
    Lead,
}

/// Where a device stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Its public signing key.
    pub key: PublicKey,
    /// What it may do, or might when it was removed.
    pub role: Role,
    /// Whether it ever was a lead: what it wrote as one stays true after.
    pub led: bool,
    /// For a removed device: the last of its frames that counts.
    pub removed_after: Option<u64>,
}

/// What is to be done with a frame, going by the roll.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It belongs in its device's log.
    Counts,
    /// Its device was removed before it: for a lead to look at.
    AfterRemoval,
    /// Its device may not write such a thing, or doesn't belong here, or didn't sign it.
    Refused,
}

/// All devices of a vault, past and present.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Roll {
    vault: VaultId,
    length: u64,
    last: FrameHash,
    removal: u64,
    devices: BTreeMap<DeviceId, Standing>,
}

impl Roll {
    /// The roll of a vault before its first statement.
    pub fn new(vault: VaultId) -> Self {
        Self {
            vault,
            length: 0,
            last: FrameHash::NONE,
            removal: 0,
            devices: BTreeMap::new(),
        }
    }

    /// Reads a roll from its first statement on.
    ///
    /// # Errors
    ///
    /// The first statement that doesn't belong where it stands.
    pub fn read<'a>(
        vault: VaultId,
        statements: impl IntoIterator<Item = &'a Statement>,
    ) -> Result<Self, RollError> {
        let mut roll = Self::new(vault);
        for statement in statements {
            roll.add(statement)?;
        }
        Ok(roll)
    }

    /// Reads a roll whose signatures were checked when it was written down, and have been in good hands since: to check
    /// them again for every request would cost more than all the rest.
    ///
    /// # Errors
    ///
    /// The first statement that doesn't belong where it stands.
    pub fn reread<'a>(
        vault: VaultId,
        statements: impl IntoIterator<Item = &'a Statement>,
    ) -> Result<Self, RollError> {
        let mut roll = Self::new(vault);
        for statement in statements {
            roll.admit(statement)?;
        }
        Ok(roll)
    }

    /// The vault.
    pub fn vault(&self) -> VaultId {
        self.vault
    }

    /// The hash of its last statement; [`FrameHash::NONE`] before the first.
    pub fn last(&self) -> FrameHash {
        self.last
    }

    /// How many statements there are.
    pub fn length(&self) -> u64 {
        self.length
    }

    /// The number of the last statement that removes a device; 0 for none.
    pub fn last_removal(&self) -> u64 {
        self.removal
    }

    /// Every device that was ever on it, in the order of their ids.
    pub fn devices(&self) -> impl Iterator<Item = (DeviceId, Standing)> {
        self.devices.iter().map(|(id, standing)| (*id, *standing))
    }

    /// Where a device stands; none where it was never on the roll.
    pub fn standing(&self, device: DeviceId) -> Option<Standing> {
        self.devices.get(&device).copied()
    }

    /// The role of a device that belongs to the vault now.
    pub fn role(&self, device: DeviceId) -> Option<Role> {
        self.standing(device)
            .filter(|standing| standing.removed_after.is_none())
            .map(|standing| standing.role)
    }

    /// What is to be done with a frame; its signature is checked here.
    pub fn judge(&self, frame: &Frame) -> Verdict {
        let standing = self.standing(frame.device());
        if standing.is_some_and(|standing| frame.verify(&standing.key).is_ok()) {
            self.judge_genuine(frame)
        } else {
            Verdict::Refused
        }
    }

    /// What is to be done with a frame whose signature was checked already.
    pub fn judge_genuine(&self, frame: &Frame) -> Verdict {
        let Some(standing) = self.standing(frame.device()) else {
            return Verdict::Refused;
        };
        let may = match frame.header().purpose {
            Purpose::Introduction => true,
            purpose if purpose.is_a_leads() => standing.led,
            _ => standing.role > Role::Viewer,
        };
        if frame.header().vault != self.vault || !may {
            return Verdict::Refused;
        }
        match standing.removed_after {
            Some(last) if frame.sequence() > last => Verdict::AfterRemoval,
            _ => Verdict::Counts,
        }
    }

    /// Adds the next statement.
    ///
    /// # Errors
    ///
    /// It is another vault's, out of its place, not signed by a lead, or against the rules; nothing is changed then.
    pub fn add(&mut self, statement: &Statement) -> Result<(), RollError> {
        if !statement.is_signed() {
            return Err(RollError::Unsigned);
        }
        self.admit(statement)
    }

    fn admit(&mut self, statement: &Statement) -> Result<(), RollError> {
        self.check_place(statement)?;
        let device = statement.about.device();
        match statement.change {
            Change::Admit(role) => self.check_admission(device, role)?,
            Change::Remove { .. } => self.check_removal(device)?,
        }
        let led = self
            .devices
            .get(&device)
            .is_some_and(|standing| standing.led);
        let standing = Standing {
            key: statement.about,
            led: led || statement.change == Change::Admit(Role::Lead),
            role: match statement.change {
                Change::Admit(role) => role,
                Change::Remove { .. } => self.role(device).unwrap_or(Role::Viewer),
            },
            removed_after: match statement.change {
                Change::Admit(_) => None,
                Change::Remove { last } => Some(last),
            },
        };
        self.devices.insert(device, standing);
        self.length += 1;
        if matches!(statement.change, Change::Remove { .. }) {
            self.removal = self.length;
        }
        self.last = statement.hash();
        Ok(())
    }

    fn check_place(&self, statement: &Statement) -> Result<(), RollError> {
        if statement.vault != self.vault {
            return Err(RollError::OtherVault);
        }
        if statement.number != self.length + 1 || statement.previous != self.last {
            return Err(RollError::OutOfPlace {
                expected: self.length + 1,
            });
        }
        let founding = self.length == 0
            && statement.by == statement.about
            && statement.change == Change::Admit(Role::Lead);
        let by_lead = self.role(statement.by.device()) == Some(Role::Lead);
        if founding || by_lead {
            Ok(())
        } else {
            Err(RollError::NotALead)
        }
    }

    fn check_admission(&self, device: DeviceId, role: Role) -> Result<(), RollError> {
        match self.standing(device) {
            Some(standing) if standing.removed_after.is_some() => Err(RollError::WasRemoved),
            Some(standing) if role == Role::Viewer && standing.role != Role::Viewer => {
                Err(RollError::BecomesViewer)
            }
            Some(standing) if standing.role == Role::Lead && role != Role::Lead => {
                self.check_other_lead(device)
            }
            _ => Ok(()),
        }
    }

    fn check_removal(&self, device: DeviceId) -> Result<(), RollError> {
        if self.role(device).is_none() {
            return Err(RollError::NotHere);
        }
        self.check_other_lead(device)
    }

    fn check_other_lead(&self, device: DeviceId) -> Result<(), RollError> {
        let other = self
            .devices
            .keys()
            .any(|other| *other != device && self.role(*other) == Some(Role::Lead));
        if other {
            Ok(())
        } else {
            Err(RollError::LastLead)
        }
    }
}

impl Keys {
    /// Makes the next statement of a roll: the founding one for an empty roll, or a lead's.
    ///
    /// # Errors
    ///
    /// As [`Roll::add`], which is tried on a copy.
    pub fn state(
        &self,
        roll: &Roll,
        about: PublicKey,
        change: Change,
    ) -> Result<Statement, RollError> {
        let statement = Statement::make(self, roll.length + 1, roll.last, about, change);
        roll.clone().add(&statement).map(|()| statement)
    }
}
