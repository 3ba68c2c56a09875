//! The open vault's keys. They do things; none of them can be taken out.
//!
//! What is inside frames is written down where it is made: a device's introduction in `introduction.rs`, a person's key
//! in `person.rs`. The format of sealed drafts and of their names is in `draft.rs`, the derivation of content keys in
//! `content.rs`.

mod content;
mod draft;
mod introduction;
mod person;
mod prove;
mod seal;

pub use draft::DraftError;
pub use introduction::Introduction;
pub use person::PersonKey;
pub use prove::{ProofError, Proven};
pub use seal::{OpenError, SealError, Under};

use crate::frame::PublicKey;
use crate::ids::{DeviceId, KeyId, VaultId};
use crate::secret::Secret;
use ed25519_dalek::SigningKey;
use std::fmt;
use x25519_dalek::{PublicKey as ExchangePublic, StaticSecret};

/// An epoch key.
pub(crate) struct Epoch {
    pub number: u32,
    pub id: KeyId,
    pub key: Secret,
}

/// A device's keys to a vault, open in memory and wiped when they go.
pub struct Keys {
    vault: VaultId,
    signing: SigningKey,
    exchange: Secret,
    /// Oldest first, never empty.
    epochs: Vec<Epoch>,
}

impl Keys {
    pub(crate) fn new(
        vault: VaultId,
        signing: SigningKey,
        exchange: Secret,
        epochs: Vec<Epoch>,
    ) -> Self {
        Self {
            vault,
            signing,
            exchange,
            epochs,
        }
    }

    /// This device.
    pub fn device(&self) -> DeviceId {
        self.public().device()
    }

    /// The vault that they open.
    pub fn vault(&self) -> VaultId {
        self.vault
    }

    /// This device's public signing key.
    pub fn public(&self) -> PublicKey {
        self.signing.verifying_key().into()
    }

    /// This device's public key for being sent keys (X25519).
    pub fn exchange_public(&self) -> [u8; 32] {
        ExchangePublic::from(&StaticSecret::from(*self.exchange.bytes())).to_bytes()
    }

    pub(crate) fn signing(&self) -> &SigningKey {
        &self.signing
    }

    pub(crate) fn exchange(&self) -> &Secret {
        &self.exchange
    }

    /// The epoch in which this device writes.
    pub(crate) fn current(&self) -> &Epoch {
        self.epochs
            .last()
            .expect("keys without an epoch are never made or unlocked")
    }

    /// The epoch that names drafts: it never changes, because every device holds all epochs back to the first.
    pub(crate) fn oldest(&self) -> &Epoch {
        self.epochs
            .first()
            .expect("keys without an epoch are never made or unlocked")
    }

    pub(crate) fn epoch(&self, number: u32, id: KeyId) -> Option<&Epoch> {
        self.epochs
            .iter()
            .find(|epoch| epoch.number == number && epoch.id == id)
    }

    pub(crate) fn epoch_by_id(&self, id: KeyId) -> Option<&Epoch> {
        self.epochs.iter().find(|epoch| epoch.id == id)
    }
}

impl fmt::Debug for Keys {
    /// Says whose they are and nothing of what they are.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("Keys")
            .field("vault", &self.vault)
            .field("device", &self.device())
            .finish_non_exhaustive()
    }
}
