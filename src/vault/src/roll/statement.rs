//! One statement of the roll, byte by byte.
//!
//! | bytes    | what                                                                         |
//! |----------|------------------------------------------------------------------------------|
//! | 0        | format: 1                                                                    |
//! | 1        | change: 1 admits or changes the role, 2 removes                              |
//! | 2..18    | vault id                                                                     |
//! | 18..26   | number, u64 big-endian, from 1 without gaps                                  |
//! | 26..58   | hash of the statement before it; zeros in the first                          |
//! | 58..90   | public signing key of the device that it is about                            |
//! | 90       | role: 1 viewer, 2 clinician, 3 lead; 0 in a removal                          |
//! | 91..99   | the last frame of that device that counts, u64 big-endian; 0 in an admission |
//! | 99..131  | public signing key of the lead that makes it                                 |
//! | 131..195 | Ed25519 signature                                                            |
//!
//! ```text
//! hash      = SHA-256("lightround v1 roll hash" || 0 || bytes 0..131)
//! signature = Ed25519("lightround v1 roll signature" || 0 || hash)
//! ```

use super::{Role, StatementError};
use crate::domains;
use crate::frame::PublicKey;
use crate::ids::{FrameHash, VaultId};
use crate::keys::Keys;
use ed25519_dalek::Signer;
use sha2::{Digest, Sha256};

/// Bytes of a statement.
pub const STATEMENT: usize = 195;
/// Bytes of it that are signed.
const SIGNED: usize = 131;
const FORMAT: u8 = 1;

/// What is stated of a device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// It belongs to the vault, with this role.
    Admit(Role),
    /// It no longer does.
    Remove {
        /// The last of its frames that counts; 0 for none.
        last: u64,
    },
}

/// A statement: well-formed. Whether it belongs on a roll, [`super::Roll::add`] tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Statement {
    /// The vault.
    pub vault: VaultId,
    /// Its number, from 1.
    pub number: u64,
    /// The hash of the statement before it.
    pub previous: FrameHash,
    /// The device that it is about.
    pub about: PublicKey,
    /// What it says.
    pub change: Change,
    /// Who says it.
    pub by: PublicKey,
    signature: [u8; 64],
}

impl Statement {
    /// Bytes of every statement.
    pub const LENGTH: usize = STATEMENT;

    pub(super) fn make(
        keys: &Keys,
        number: u64,
        previous: FrameHash,
        about: PublicKey,
        change: Change,
    ) -> Self {
        let mut statement = Self {
            vault: keys.vault(),
            number,
            previous,
            about,
            change,
            by: keys.public(),
            signature: [0; 64],
        };
        statement.signature = keys.signing().sign(&statement.signed_bytes()).to_bytes();
        statement
    }

    /// Reads a statement from bytes of any origin.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with them.
    pub fn parse(bytes: &[u8]) -> Result<Self, StatementError> {
        let bytes: &[u8; STATEMENT] = bytes
            .try_into()
            .map_err(|_| StatementError::Length(bytes.len()))?;
        if bytes[0] != FORMAT {
            return Err(StatementError::Format(bytes[0]));
        }
        Ok(Self {
            vault: VaultId::from_bytes(field(bytes, 2)),
            number: u64::from_be_bytes(field(bytes, 18)),
            previous: FrameHash::from_bytes(field(bytes, 26)),
            about: key(bytes, 58)?,
            change: change(bytes[1], bytes[90], u64::from_be_bytes(field(bytes, 91)))?,
            by: key(bytes, 99)?,
            signature: field(bytes, SIGNED),
        })
    }

    /// Its bytes.
    pub fn bytes(&self) -> [u8; STATEMENT] {
        let (kind, role, last) = match self.change {
            Change::Admit(role) => (1, role_byte(role), 0),
            Change::Remove { last } => (2, 0, last),
        };
        let mut bytes = [0; STATEMENT];
        bytes[..2].copy_from_slice(&[FORMAT, kind]);
        bytes[2..18].copy_from_slice(self.vault.as_bytes());
        bytes[18..26].copy_from_slice(&self.number.to_be_bytes());
        bytes[26..58].copy_from_slice(self.previous.as_bytes());
        bytes[58..90].copy_from_slice(&self.about.bytes());
        bytes[90] = role;
        bytes[91..99].copy_from_slice(&last.to_be_bytes());
        bytes[99..131].copy_from_slice(&self.by.bytes());
        bytes[SIGNED..].copy_from_slice(&self.signature);
        bytes
    }

    /// Its hash, which the next statement names.
    pub fn hash(&self) -> FrameHash {
        let signed = domains::join(domains::ROLL_HASH, &[&self.bytes()[..SIGNED]]);
        FrameHash::from_bytes(Sha256::digest(signed).into())
    }

    /// Whether the device that it names as its maker signed it.
    pub fn is_signed(&self) -> bool {
        self.by.signed(&self.signed_bytes(), &self.signature)
    }

    fn signed_bytes(&self) -> Vec<u8> {
        domains::join(domains::ROLL_SIGNATURE, &[self.hash().as_bytes()])
    }
}

fn role_byte(role: Role) -> u8 {
    match role {
        Role::Viewer => 1,
        Role::Clinician => 2,
        Role::Lead => 3,
    }
}

fn change(kind: u8, role: u8, last: u64) -> Result<Change, StatementError> {
    match (kind, role, last) {
        (1, 1, 0) => Ok(Change::Admit(Role::Viewer)),
        (1, 2, 0) => Ok(Change::Admit(Role::Clinician)),
        (1, 3, 0) => Ok(Change::Admit(Role::Lead)),
        (2, 0, last) => Ok(Change::Remove { last }),
        _ => Err(StatementError::Change),
    }
}

fn key(bytes: &[u8; STATEMENT], at: usize) -> Result<PublicKey, StatementError> {
    PublicKey::from_bytes(&field(bytes, at)).ok_or(StatementError::Key)
}

/// Every caller's field ends within a statement.
fn field<const N: usize>(bytes: &[u8; STATEMENT], at: usize) -> [u8; N] {
    let mut field = [0; N];
    field.copy_from_slice(&bytes[at..at + N]);
    field
}
