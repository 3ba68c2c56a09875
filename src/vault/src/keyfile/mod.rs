//! The key file: everything that has to be kept to open a vault on this device, and nothing that opens it alone.
//!
//! # Format
//!
//! CBOR throughout, maps with named fields, binary as byte strings. Readers ignore fields that they don't know.
//!
//! ```text
//! { "format": 1,
//!   "body": bytes,          the CBOR of the map below
//!   "sum": 32 bytes }       SHA-256("lightround v1 key file sum" || 0 || body)
//!
//! { "vault": 16 bytes, "device": 16 bytes, "device_name": text,
//!   "slots": [ slot ],      at least one of a passphrase
//!   "signing": wrapped,     Ed25519 seed
//!   "exchange": wrapped,    X25519 secret
//!   "epochs": [ { "number": u32, "key_id": 16 bytes, "key": wrapped, ? "roll": u64 } ],     oldest first
//!   ? "recovery": wrapped,  the public X25519 key of the recovery code
//!   ? "drafts": 16 bytes }  the device in whose name drafts are kept, where that is not this one
//!
//! slot = { "kind": "passphrase", "kek": wrapped,
//!          "stretch": { "salt": 16 bytes, "memory_kib": u32, "passes": u32, "lanes": u32 } }
//!      / { "kind": "recovery", "kek": wrapped }
//!      / { "kind": "platform", "id": bytes, "salt": 32 bytes, "kek": wrapped }
//!      / { "kind": text, … }    of a later version: carried as it is
//!
//! wrapped = { "nonce": 24 bytes, "wrapped": 48 bytes }     XChaCha20-Poly1305, 32 bytes and a tag
//! ```
//!
//! | what       | under    | associated data, after the domain string and a zero byte                           |
//! |------------|----------|------------------------------------------------------------------------------------|
//! | the KEK    | slot key | vault id, then the slot: `"passphrase" || 0 || salt || memory, passes, lanes` (u32 BE) |
//! |            |          | or `"recovery" || 0`, or `"platform" || 0 || salt || id`                           |
//! | seed       | KEK      | vault id, device id                                                                |
//! | X25519     | KEK      | vault id, device id                                                                |
//! | epoch keys | KEK      | vault id, device id, number (u32 BE), key id, and the roll (u64 BE) where it is not 0 |
//! | recovery   | KEK      | vault id, device id                                                                |
//!
//! The slot key is the stretched passphrase ([`stretch`](fn@crate::stretch)), or comes of the recovery code ([`crate::RecoveryCode`]),
//! or is `HKDF-SHA256(secret of the platform's authenticator, info = "lightround v1 platform slot" || 0 || vault id)`. An
//! epoch's `roll` is how many statements the roll had when it was made; 0 and absent for the first.
//!
//! The device's name is a label: it is in the file for the unlock page, and not authenticated there. The name that others
//! see stands in the device's introduction.
//!
//! # Wrong passphrase or damaged file?
//!
//! A slot that doesn't open can't say why: a wrong passphrase and a changed byte look the same to the cipher. So the file
//! carries a plain sum over itself. A file that fails its sum is damaged, whatever the passphrase; a file that keeps it
//! and whose slot doesn't open has been given a wrong passphrase. The sum is no secret: whoever alters a file *on purpose*
//! can make the sum fit, and then the right passphrase is called wrong. That difference can't be proven without the key.

mod body;
mod change;
mod flaw;
mod renew;
mod slot;
mod unlock;

pub use body::KeyFileError;
pub use change::{ChangeError, Platform, platform_salt};
pub use flaw::Flaw;
pub use unlock::{Opener, PlatformSecret, UnlockError};

pub(crate) use body::{Body, WrappedEpoch};
pub(crate) use slot::Slot;
pub(crate) use unlock::epoch_about;

use crate::ids::{DeviceId, VaultId};
use crate::stretch::StretchParams;

/// A device's key file.
#[derive(Clone, Debug, PartialEq)]
pub struct KeyFile {
    pub(crate) body: Body,
}

impl KeyFile {
    /// The vault that it opens.
    pub fn vault(&self) -> VaultId {
        self.body.vault
    }

    /// This device.
    pub fn device(&self) -> DeviceId {
        self.body.device
    }

    /// What this device is called.
    pub fn device_name(&self) -> &str {
        &self.body.device_name
    }

    /// How its passphrase is to be stretched.
    pub fn passphrase_params(&self) -> StretchParams {
        self.body.passphrase_slot().1
    }
}
