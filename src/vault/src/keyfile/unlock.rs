//! Opening a key file, and changing what opens it.

use super::{Body, KeyFile, Slot};
use crate::domains;
use crate::ids::{DeviceId, KeyId, VaultId};
use crate::keys::{Epoch, Keys};
use crate::random::{NoRandomness, System};
use crate::secret::{Secret, WontOpen};
use crate::stretch::{SlotKey, StretchError, StretchParams};
use ed25519_dalek::SigningKey;

/// Why a key file stays shut.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum UnlockError {
    /// Almost surely a wrong passphrase; the module above says what can't be told apart.
    #[error("that is not the passphrase of this vault")]
    WrongPassphrase,
    /// The passphrase is right, and what it opens is not whole.
    #[error(
        "the passphrase is right, but the keys on this device are damaged ({0}): nothing was changed"
    )]
    Damaged(&'static str),
}

/// Why a passphrase was not changed; the old one stands.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ChangeError {
    /// The old passphrase doesn't open the key file.
    #[error(transparent)]
    Unlock(#[from] UnlockError),
    /// No random numbers.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// Parameters that no key file may hold.
    #[error(transparent)]
    Stretch(#[from] StretchError),
}

impl KeyFile {
    /// Opens the vault.
    ///
    /// # Errors
    ///
    /// A wrong passphrase; keys that are not whole.
    pub fn unlock(&self, slot_key: &SlotKey) -> Result<Keys, UnlockError> {
        let kek = self.kek(slot_key)?;
        let body = &self.body;
        let device = [body.vault.as_bytes().as_slice(), body.device.as_bytes()];
        let seed = body
            .signing
            .unwrap(&kek, domains::WRAP_SIGNING, &device)
            .map_err(|WontOpen| DAMAGED_SIGNING)?;
        let signing = SigningKey::from_bytes(seed.bytes());
        let exchange = body
            .exchange
            .unwrap(&kek, domains::WRAP_EXCHANGE, &device)
            .map_err(|WontOpen| DAMAGED_EXCHANGE)?;
        let epochs = body.open_epochs(&kek).map_err(|WontOpen| DAMAGED_EPOCH)?;
        let keys = Keys::new(body.vault, signing, exchange, epochs);
        if keys.device() == body.device {
            Ok(keys)
        } else {
            Err(DAMAGED_SIGNING)
        }
    }

    /// The same key file with another passphrase in place of the one that `old` is of.
    ///
    /// # Errors
    ///
    /// `old` is not of the passphrase until now; no randomness; parameters out of range.
    pub fn change_passphrase(
        &self,
        old: &SlotKey,
        new: &SlotKey,
        params: StretchParams,
    ) -> Result<Self, ChangeError> {
        params.check()?;
        let kek = self.kek(old)?;
        let mut changed = self.clone();
        changed.body.slots[0] =
            Slot::passphrase(&kek, &new.0, params, self.body.vault, &mut System)?;
        Ok(changed)
    }

    fn kek(&self, slot_key: &SlotKey) -> Result<Secret, UnlockError> {
        let slot = self.body.passphrase_slot();
        slot.open(&slot_key.0, self.body.vault)
            .map_err(|WontOpen| UnlockError::WrongPassphrase)
    }
}

const DAMAGED_SIGNING: UnlockError = UnlockError::Damaged("its signing key doesn't open");
const DAMAGED_EXCHANGE: UnlockError = UnlockError::Damaged("its exchange key doesn't open");
const DAMAGED_EPOCH: UnlockError = UnlockError::Damaged("a content key doesn't open");

impl Body {
    fn open_epochs(&self, kek: &Secret) -> Result<Vec<Epoch>, WontOpen> {
        self.epochs
            .iter()
            .map(|epoch| {
                let about = epoch_about(self.vault, self.device, epoch.number, epoch.key_id);
                let key = epoch.key.unwrap(kek, domains::WRAP_EPOCH, &[&about])?;
                Ok(Epoch {
                    number: epoch.number,
                    id: epoch.key_id,
                    key,
                })
            })
            .collect()
    }
}

/// What an epoch key's wrap is bound to.
pub fn epoch_about(vault: VaultId, device: DeviceId, number: u32, id: KeyId) -> Vec<u8> {
    [
        vault.as_bytes().as_slice(),
        device.as_bytes(),
        &number.to_be_bytes(),
        id.as_bytes(),
    ]
    .concat()
}
