//! The open vault's keys. They do things; none of them can be taken out.
//!
//! What is inside frames is written down where it is made: a device's introduction in `introduction.rs`, a person's key
//! in `person.rs`. The format of sealed drafts and of their names is in `draft.rs`, that of sealed
//! checkpoints in `checkpoint.rs`, the derivation of content keys in
//! `content.rs`.

mod checkpoint;
mod content;
mod draft;
mod epoch;
mod erasure;
mod introduction;
mod person;
mod prove;
mod seal;

pub use checkpoint::CheckpointError;
#[cfg(any(test, feature = "sample"))]
pub(crate) use content::open_content;
pub use draft::DraftError;
pub(crate) use epoch::recovered;
pub use epoch::{EpochNotice, NewEpoch};
pub use erasure::{ErasedKey, Erasure};
pub use introduction::Introduction;
pub use person::PersonKey;
pub use prove::{ProofError, Proven};
pub use seal::{OpenError, SealError, Under};

use crate::frame::PublicKey;
use crate::ids::{DeviceId, KeyId, VaultId};
use crate::recovery::RecoveryCode;
use crate::secret::Secret;
use ed25519_dalek::SigningKey;
use std::cmp::Reverse;
use std::fmt;
use std::sync::{Arc, PoisonError, RwLock, RwLockReadGuard, RwLockWriteGuard};
use x25519_dalek::{PublicKey as ExchangePublic, StaticSecret};

/// An epoch key.
pub(crate) struct Epoch {
    pub number: u32,
    pub id: KeyId,
    /// How many statements the roll had when it was made; 0 for the first.
    pub roll: u64,
    pub key: Secret,
}

/// A device's keys to a vault, open in memory and wiped when they go.
pub struct Keys {
    vault: VaultId,
    signing: SigningKey,
    exchange: Secret,
    ring: RwLock<Ring>,
    /// In whose name drafts are kept: the identity that this device had first.
    drafts: DeviceId,
}

/// What is learnt while the vault is open.
struct Ring {
    /// Oldest first, never empty.
    epochs: Vec<Arc<Epoch>>,
    /// Those that are only read under.
    only_read: Vec<KeyId>,
    /// The public X25519 key of this device's own recovery code, where there is one.
    own_recovery: Option<[u8; 32]>,
    /// The public X25519 key of another device's recovery code, after the roll and the number of the epoch that was sealed to
    /// it.
    recovery: Option<(u64, u32, [u8; 32])>,
}

impl Epoch {
    /// Of two, the one with the greater rank is written under; see `epoch.rs` for why.
    fn rank(&self) -> (u64, u32, Reverse<KeyId>) {
        (self.roll, self.number, Reverse(self.id))
    }
}

impl Keys {
    pub(crate) fn new(
        vault: VaultId,
        signing: SigningKey,
        exchange: Secret,
        epochs: Vec<Epoch>,
    ) -> Self {
        let drafts = PublicKey::from(signing.verifying_key()).device();
        Self {
            vault,
            signing,
            exchange,
            ring: RwLock::new(Ring {
                epochs: epochs.into_iter().map(Arc::new).collect(),
                only_read: Vec::new(),
                own_recovery: None,
                recovery: None,
            }),
            drafts,
        }
    }

    /// The same keys, with drafts in the name of an earlier identity of this device.
    pub(crate) fn drafting_as(self, drafts: Option<DeviceId>) -> Self {
        let drafts = drafts.unwrap_or(self.drafts);
        Self { drafts, ..self }
    }

    /// The same keys, with a recovery code's public key to which epoch keys are sealed.
    pub(crate) fn recovered_by(self, recovery: Option<[u8; 32]>) -> Self {
        self.ring_to_change().own_recovery = recovery;
        self
    }

    /// Takes up a recovery code that was made while the vault is open: from now on epoch keys are sealed to it.
    pub fn recover_by(&self, code: &RecoveryCode) {
        self.ring_to_change().own_recovery = Some(code.exchange_public(self.vault));
    }

    /// The recovery code's public X25519 key, where one is known: this device's own, or the one that another's newest epoch
    /// is sealed to.
    pub fn recovery(&self) -> Option<[u8; 32]> {
        let ring = self.ring();
        let learnt = ring.recovery.map(|(.., recovery)| recovery);
        ring.own_recovery.or(learnt)
    }

    pub(crate) fn own_recovery(&self) -> Option<[u8; 32]> {
        self.ring().own_recovery
    }

    /// Copies of all epochs, for another identity of the same device.
    pub(crate) fn copied_epochs(&self) -> Vec<Epoch> {
        let epochs = self.epochs_to_give();
        let copied = epochs.iter().map(|epoch| Epoch {
            number: epoch.number,
            id: epoch.id,
            roll: epoch.roll,
            key: Secret::from_bytes(*epoch.key.bytes()),
        });
        copied.collect()
    }

    fn learn_recovery(&self, roll: u64, number: u32, recovery: [u8; 32]) {
        let mut ring = self.ring_to_change();
        ring.recovery = ring.recovery.max(Some((roll, number, recovery)));
    }

    /// No method leaves the ring half changed, so one that panicked has left it whole.
    fn ring(&self) -> RwLockReadGuard<'_, Ring> {
        self.ring.read().unwrap_or_else(PoisonError::into_inner)
    }

    fn ring_to_change(&self) -> RwLockWriteGuard<'_, Ring> {
        self.ring.write().unwrap_or_else(PoisonError::into_inner)
    }

    /// All epochs, oldest first.
    pub(crate) fn all_epochs(&self) -> Vec<Arc<Epoch>> {
        self.ring().epochs.clone()
    }

    /// The epochs that a device is given when it comes in: the present one and all before.
    pub(crate) fn epochs_to_give(&self) -> Vec<Arc<Epoch>> {
        let current = self.current();
        let mut epochs = self.epochs_before(&current);
        epochs.push(current);
        epochs
    }

    /// The epochs that a device may be given with this one: those before which it is written under.
    pub(crate) fn epochs_before(&self, epoch: &Epoch) -> Vec<Arc<Epoch>> {
        let mut epochs = self.all_epochs();
        epochs.retain(|other| other.rank() < epoch.rank());
        epochs
    }

    /// The ids of all epochs before which the present one is written under.
    pub fn epochs_before_now(&self) -> Vec<KeyId> {
        let before = self.epochs_before(&self.current());
        before.iter().map(|epoch| epoch.id).collect()
    }

    /// Adds an epoch, unless it is here already. One that doesn't `count` is only read under.
    fn add_epoch(&self, epoch: Arc<Epoch>, counts: bool) {
        let mut ring = self.ring_to_change();
        let known = ring.epochs.iter().any(|known| known.id == epoch.id);
        if counts {
            ring.only_read.retain(|id| *id != epoch.id);
        } else if !known {
            ring.only_read.push(epoch.id);
        }
        if !ring.epochs.iter().any(|known| known.id == epoch.id) {
            ring.epochs.push(epoch);
            ring.epochs.sort_by_key(|epoch| epoch.rank());
        }
    }

    /// In whose name drafts are kept.
    pub(crate) fn drafts(&self) -> DeviceId {
        self.drafts
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

    /// How many statements the roll had when the epoch began in which this device writes.
    pub fn epoch_roll(&self) -> u64 {
        self.current().roll
    }

    /// Number and id of the epoch in which this device writes.
    pub fn epoch_now(&self) -> (u32, KeyId) {
        let epoch = self.current();
        (epoch.number, epoch.id)
    }

    /// The epoch in which this device writes.
    pub(crate) fn current(&self) -> Arc<Epoch> {
        let ring = self.ring();
        let counting = ring
            .epochs
            .iter()
            .filter(|epoch| !ring.only_read.contains(&epoch.id));
        let newest = counting.max_by_key(|epoch| epoch.rank());
        Arc::clone(newest.expect("keys without an epoch are never made or unlocked"))
    }

    /// The epoch that names drafts: it never changes, because every device holds all epochs back to the first.
    pub(crate) fn oldest(&self) -> Arc<Epoch> {
        let ring = self.ring();
        let oldest = ring.epochs.iter().min_by_key(|epoch| epoch.rank());
        Arc::clone(oldest.expect("keys without an epoch are never made or unlocked"))
    }

    pub(crate) fn epoch(&self, number: u32, id: KeyId) -> Option<Arc<Epoch>> {
        self.epoch_by_id(id).filter(|epoch| epoch.number == number)
    }

    pub(crate) fn epoch_by_id(&self, id: KeyId) -> Option<Arc<Epoch>> {
        let ring = self.ring();
        ring.epochs.iter().find(|epoch| epoch.id == id).cloned()
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
