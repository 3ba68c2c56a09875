//! From a passphrase to a slot key: Argon2id (RFC 9106), slow and hungry on purpose.
//!
//! The passphrase is first brought to [`phrase::normal`] form, then its UTF-8 bytes and the salt
//! go through Argon2id version 0x13 without secret or associated data, to 32 bytes.

use crate::phrase::{self, PassphraseError};
use crate::random::{NoRandomness, random};
use crate::secret::Secret;
use argon2::{Algorithm, Argon2, Params, Version};
use serde::{Deserialize, Serialize};
use zeroize::Zeroize;

/// How a passphrase is stretched. Kept in the key file in the clear: it has to be known before anything opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct StretchParams {
    /// Random, so that no two vaults can be guessed at together.
    #[serde(with = "serde_bytes")]
    pub salt: [u8; 16],
    /// Memory, in KiB: 8192 (8 MiB) to 1 048 576 (1 GiB).
    pub memory_kib: u32,
    /// Passes over the memory: 1 to 64.
    pub passes: u32,
    /// Lanes: 1 to 16.
    pub lanes: u32,
}

/// Why nothing was stretched.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StretchError {
    /// Numbers that no vault is made with: the key file was damaged, or is meant to exhaust this device.
    #[error(
        "the key file is damaged: it wants a stretching that no vault is made with ({memory_kib} KiB, passes {passes}, lanes {lanes})"
    )]
    OutOfRange {
        /// What was asked for, in KiB.
        memory_kib: u32,
        /// What was asked for.
        passes: u32,
        /// What was asked for.
        lanes: u32,
    },
    /// The memory could not be had.
    #[error(
        "this device has not enough free memory to open the vault: close other pages and try again"
    )]
    Memory,
}

/// Why no parameters were made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FreshError {
    /// The passphrase is refused.
    #[error(transparent)]
    Refused(#[from] PassphraseError),
    /// No random salt.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
}

impl StretchParams {
    /// Memory for a new vault, in KiB: 64 MiB, the second choice of RFC 9106 section 4.
    pub const MEMORY_KIB: u32 = 65_536;
    /// Passes for a new vault.
    pub const PASSES: u32 = 3;
    /// Lanes for a new vault: one, because a browser's worker has one thread.
    pub const LANES: u32 = 1;

    /// Parameters for a new slot, with a fresh salt.
    ///
    /// # Errors
    ///
    /// A passphrase that [`phrase::check`] refuses; no randomness.
    pub fn fresh(passphrase: &str) -> Result<Self, FreshError> {
        phrase::check(passphrase)?;
        Ok(Self {
            salt: random()?,
            memory_kib: Self::MEMORY_KIB,
            passes: Self::PASSES,
            lanes: Self::LANES,
        })
    }

    /// Refuses numbers outside the ranges above.
    pub(crate) fn check(&self) -> Result<(), StretchError> {
        let sane = (8192..=1_048_576).contains(&self.memory_kib)
            && (1..=64).contains(&self.passes)
            && (1..=16).contains(&self.lanes);
        if sane {
            Ok(())
        } else {
            Err(self.out_of_range())
        }
    }

    fn out_of_range(&self) -> StretchError {
        StretchError::OutOfRange {
            memory_kib: self.memory_kib,
            passes: self.passes,
            lanes: self.lanes,
        }
    }
}

/// What opens a slot. It leaves the crate as bytes for one reason: it is made in a worker and used on the page.
pub struct SlotKey(pub(crate) Secret);

impl SlotKey {
    /// The key that a worker sent.
    pub fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(Secret::from_bytes(bytes))
    }

    /// The bytes to send; wipe them afterwards.
    pub fn to_bytes(&self) -> [u8; 32] {
        *self.0.bytes()
    }
}

/// Stretches a passphrase; about a second, and `memory_kib` of memory while it lasts.
///
/// # Errors
///
/// Parameters out of range; not enough memory.
pub fn stretch(passphrase: &str, params: &StretchParams) -> Result<SlotKey, StretchError> {
    params.check()?;
    let cost = Params::new(params.memory_kib, params.passes, params.lanes, Some(32))
        .map_err(|_| params.out_of_range())?;
    let mut normal = phrase::normal(passphrase);
    let mut out = [0; 32];
    let done = Argon2::new(Algorithm::Argon2id, Version::V0x13, cost).hash_password_into(
        normal.as_bytes(),
        &params.salt,
        &mut out,
    );
    normal.zeroize();
    let key = SlotKey::from_bytes(out);
    out.zeroize();
    done.map(|()| key).map_err(|_| StretchError::Memory)
}
