//! Keys, envelopes and unlocking: the only crate that touches cryptography.

mod domains;
mod found;
pub mod frame;
#[cfg(test)]
mod golden;
mod ids;
pub mod keyfile;
pub mod keys;
pub mod phrase;
mod random;
mod secret;
pub mod stretch;
mod wrap;

pub use found::{FoundError, found_vault};
pub use frame::{Frame, FrameError, Purpose};
pub use ids::{DeviceId, DraftName, FrameHash, Head, KeyId, Subject, VaultId};
pub use keyfile::{ChangeError, KeyFile, KeyFileError, UnlockError};
pub use keys::{
    DraftError, Introduction, Keys, OpenError, PersonKey, ProofError, Proven, SealError, Under,
};
pub use random::NoRandomness;
pub use stretch::{SlotKey, StretchError, StretchParams, stretch};
