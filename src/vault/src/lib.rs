//! Keys, envelopes and unlocking: the only crate that touches cryptography.
//!
//! A **vault** is a clinic's or a locum's set of records. What opens it on one device:
//!
//! ```text
//! passphrase --Argon2id--> slot key --wraps--> the device's key-encryption key (KEK)
//! KEK --wraps--> Ed25519 seed        signs this device's frames
//!     --wraps--> X25519 secret       for being sent keys
//!     --wraps--> epoch keys          --HKDF--> content keys, one per device and purpose
//! epoch key --wraps, in a frame--> a person's key --HKDF--> content keys for what is about that person
//! ```
//!
//! KEKs wrap only keys, content keys encrypt only content, and no key leaves this crate: [`Keys`] does things with them.
//! The one exception is [`SlotKey`], which is made in a worker.
//!
//! The formats are frozen, byte by byte: [`keyfile`] for the key file, [`frame`] for frames, [`keys`] for what is inside
//! them and for drafts, checkpoints, epochs and erasures, [`enrolment`] for how another device comes in, [`roll`] for who belongs to a vault, [`request`] for what a relay is asked. All strings that keep uses of keys apart stand in `domains.rs`.
//!
//! ```
//! use vault::{Frame, KeyFile, StretchParams, Under, found_vault, phrase, stretch};
//!
//! // Make a vault. (Fresh parameters take a second and 64 MiB; these are the cheapest that are allowed.)
//! let passphrase = phrase::offer(6)?;
//! let params = StretchParams { memory_kib: 8192, passes: 1, ..StretchParams::fresh(&passphrase)? };
//! let (file, keys) = found_vault(&stretch(&passphrase, &params)?, params, "bedside tablet")?;
//! let kept = file.to_bytes();
//!
//! // Begin the device's log and write to it.
//! let (first, proven) = keys.begin(file.device_name())?;
//! let (second, _) = keys.seal(&proven, Under::Epoch, b"unit 3 has no step")?;
//!
//! // Later: open the vault, prove the keys against what is there, read.
//! let file = KeyFile::from_bytes(&kept)?;
//! let keys = file.unlock(&stretch(&passphrase, &file.passphrase_params())?)?;
//! let proven = keys.prove(&first, &second)?;
//! let frame = Frame::parse(second.bytes().to_vec())?;
//! assert_eq!(*keys.open(&frame, Under::Epoch)?, b"unit 3 has no step");
//! assert_eq!(proven.head().sequence, 2);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod domains;
pub mod enrolment;
mod found;
pub mod frame;
#[cfg(test)]
mod golden;
mod hpke;
mod ids;
mod invitation;
pub mod keyfile;
pub mod keys;
pub mod phrase;
#[cfg(any(test, feature = "published"))]
pub mod published;
mod random;
mod recover;
mod recovery;
pub mod request;
pub mod roll;
#[cfg(any(test, feature = "sample"))]
pub mod sample;
mod secret;
mod signs;
pub mod stretch;
mod sum;
mod wrap;

pub use found::{FoundError, found_vault};
pub use frame::{Frame, FrameError, Purpose};
pub use ids::{DeviceId, DraftName, FrameHash, Head, KeyId, Subject, VaultId};
pub use invitation::{Invitation, NoInvitation};
pub use keyfile::{
    ChangeError, KeyFile, KeyFileError, Opener, Platform, PlatformSecret, UnlockError,
    platform_salt,
};
pub use keys::{
    CheckpointError, DraftError, EpochNotice, ErasedKey, Erasure, Introduction, Keys, NewEpoch,
    OpenError, PersonKey, ProofError, Proven, SealError, Under,
};
pub use random::NoRandomness;
pub use recover::{RecoverError, Recovered, recover};
pub use recovery::{RecoveryCode, RecoveryCodeError, RecoverySheet, recovery_sheet};
pub use roll::{Role, Roll, RollError, Statement};
pub use signs::TypedError;
pub use stretch::{SlotKey, StretchError, StretchParams, stretch};
pub use sum::{CarrySum, carry_sum};
pub use zeroize::Zeroizing;
