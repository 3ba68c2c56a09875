//! Founding a vault, and making a device's key file.

use crate::domains;
use crate::ids::{KeyId, VaultId};
use crate::keyfile::{Body, KeyFile, Slot, WrappedEpoch, epoch_about};
use crate::keys::{Epoch, Keys};
use crate::random::{NoRandomness, Source, System, draw};
use crate::secret::Secret;
use crate::stretch::{SlotKey, StretchError, StretchParams};
use crate::wrap::Wrapped;
use ed25519_dalek::SigningKey;

/// Why no vault was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FoundError {
    /// No random numbers to make keys of.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// Parameters that no key file may hold.
    #[error(transparent)]
    Stretch(#[from] StretchError),
}

/// Makes a new vault with this device as its first: fresh ids, fresh keys, the first epoch.
///
/// `slot_key` comes of the passphrase by [`stretch`](crate::stretch::stretch) with `params`. `device_name` is what the
/// device is called.
///
/// # Errors
///
/// No randomness; parameters out of range.
pub fn found_vault(
    slot_key: &SlotKey,
    params: StretchParams,
    device_name: &str,
) -> Result<(KeyFile, Keys), FoundError> {
    found_from(slot_key, params, device_name, &mut System)
}

/// The same with every random byte drawn from `source`, in a fixed order, so that a test can freeze the outcome.
pub(crate) fn found_from(
    slot_key: &SlotKey,
    params: StretchParams,
    device_name: &str,
    source: &mut dyn Source,
) -> Result<(KeyFile, Keys), FoundError> {
    params.check()?;
    let vault = VaultId::from_bytes(draw(source)?);
    let kek = Secret::make(source)?;
    let seed = Secret::make(source)?;
    let exchange = Secret::make(source)?;
    let epoch = Epoch {
        number: 1,
        id: KeyId::from_bytes(draw(source)?),
        roll: 0,
        key: Secret::make(source)?,
    };
    let keys = Keys::new(
        vault,
        SigningKey::from_bytes(seed.bytes()),
        exchange,
        vec![epoch],
    );
    let slot = Slot::passphrase(&kek, &slot_key.0, params, vault, source)?;
    let body = wrap_all(&keys, &kek, &seed, vec![slot], device_name, source)?;
    Ok((KeyFile { body }, keys))
}

/// The key file of a device that has its keys already, with a fresh key-encryption key.
pub(crate) fn key_file(
    keys: &Keys,
    seed: &Secret,
    slot_key: &SlotKey,
    params: StretchParams,
    device_name: &str,
) -> Result<KeyFile, FoundError> {
    params.check()?;
    let source = &mut System;
    let kek = Secret::make(source)?;
    let slot = Slot::passphrase(&kek, &slot_key.0, params, keys.vault(), source)?;
    let body = wrap_all(keys, &kek, seed, vec![slot], device_name, source)?;
    Ok(KeyFile { body })
}

/// Everything of a device's keys under its key-encryption key, which the slots wrap.
pub(crate) fn wrap_all(
    keys: &Keys,
    kek: &Secret,
    seed: &Secret,
    slots: Vec<Slot>,
    device_name: &str,
    source: &mut dyn Source,
) -> Result<Body, NoRandomness> {
    let (vault, device) = (keys.vault(), keys.device());
    let owner = [vault.as_bytes().as_slice(), device.as_bytes()];
    let signing = Wrapped::wrap(kek, seed, domains::WRAP_SIGNING, &owner, source)?;
    let exchange = Wrapped::wrap(kek, keys.exchange(), domains::WRAP_EXCHANGE, &owner, source)?;
    let mut epochs = Vec::new();
    for epoch in keys.epochs_to_give() {
        let about = epoch_about(vault, device, epoch.number, epoch.id, epoch.roll);
        let key = Wrapped::wrap(kek, &epoch.key, domains::WRAP_EPOCH, &[&about], source)?;
        epochs.push(WrappedEpoch {
            number: epoch.number,
            key_id: epoch.id,
            key,
            roll: epoch.roll,
        });
    }
    let wrap = |public| {
        let public = Secret::from_bytes(public);
        Wrapped::wrap(kek, &public, domains::WRAP_RECOVERY, &owner, source)
    };
    Ok(Body {
        vault,
        device,
        device_name: device_name.to_owned(),
        slots,
        signing,
        exchange,
        epochs,
        recovery: keys.recovery().map(wrap).transpose()?,
        drafts: (keys.drafts() != device).then_some(keys.drafts()),
    })
}

/// Whether these are a vault's epochs from the first one on, as a key file has them.
pub(crate) fn are_epochs(epochs: &[Epoch]) -> bool {
    let begins = epochs.first().is_some_and(|epoch| epoch.number == 1);
    begins
        && epochs.windows(2).all(|pair| {
            let (one, next) = (pair[0].number, pair[1].number);
            next == one || one.checked_add(1) == Some(next)
        })
}
