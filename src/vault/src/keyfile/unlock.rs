//! Opening a key file.

use super::slot::Way;
use super::{Body, Flaw, KeyFile};
use crate::domains;
use crate::ids::{DeviceId, KeyId, VaultId};
use crate::keys::{Epoch, Keys};
use crate::recovery::RecoveryCode;
use crate::secret::{Secret, WontOpen};
use crate::stretch::SlotKey;
use ed25519_dalek::SigningKey;
use zeroize::{Zeroize, ZeroizeOnDrop};

/// What a platform's authenticator gives for a slot's salt (as WebAuthn's PRF extension does): 32 secret bytes.
#[derive(Zeroize, ZeroizeOnDrop)]
pub struct PlatformSecret([u8; 32]);

impl PlatformSecret {
    /// Takes what the authenticator gave.
    pub fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// `HKDF-SHA256(secret, info = "lightround v1 platform slot" || 0 || vault id)`.
    pub(super) fn slot_key(&self, vault: VaultId) -> Secret {
        let info = domains::join(domains::PLATFORM_SLOT, &[vault.as_bytes()]);
        Secret::derive_from(&self.0, &info)
    }
}

/// What opens a key file.
#[derive(Clone, Copy)]
pub enum Opener<'a> {
    /// The passphrase, stretched.
    Passphrase(&'a SlotKey),
    /// The code on the recovery sheet.
    Recovery(&'a RecoveryCode),
    /// The platform's authenticator.
    Platform(&'a PlatformSecret),
}

/// Why a key file stays shut.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum UnlockError {
    /// Almost surely a wrong passphrase; the module above says what can't be told apart.
    #[error("that is not the passphrase of this vault")]
    WrongPassphrase,
    /// A code of another sheet, or there is no sheet for this device.
    #[error("that is not the code of this tablet\u{2019}s newest recovery sheet")]
    WrongRecovery,
    /// An authenticator that isn't set up for this device, or no longer.
    #[error("this tablet\u{2019}s own unlocking doesn\u{2019}t open the vault: use the passphrase")]
    WrongPlatform,
    /// The passphrase is right, and what it opens is not whole.
    #[error(
        "the passphrase is right, but the keys on this device are damaged ({0}): nothing was changed"
    )]
    Damaged(Flaw),
}

impl KeyFile {
    /// Opens the vault with its passphrase.
    ///
    /// # Errors
    ///
    /// A wrong passphrase; keys that are not whole.
    pub fn unlock(&self, slot_key: &SlotKey) -> Result<Keys, UnlockError> {
        self.unlock_by(Opener::Passphrase(slot_key))
    }

    /// Opens the vault.
    ///
    /// # Errors
    ///
    /// Something that doesn't open it; keys that are not whole.
    pub fn unlock_by(&self, opener: Opener<'_>) -> Result<Keys, UnlockError> {
        let kek = self.kek(opener)?;
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
        let recovery = body
            .recovery
            .as_ref()
            .map(|wrapped| wrapped.unwrap(&kek, domains::WRAP_RECOVERY, &device))
            .transpose()
            .map_err(|WontOpen| DAMAGED_RECOVERY)?;
        let keys = Keys::new(body.vault, signing, exchange, epochs)
            .drafting_as(body.drafts)
            .recovered_by(recovery.map(|public| *public.bytes()));
        if keys.device() == body.device {
            Ok(keys)
        } else {
            Err(DAMAGED_SIGNING)
        }
    }

    /// The key-encryption key, from the first slot that opens.
    pub(crate) fn kek(&self, opener: Opener<'_>) -> Result<Secret, UnlockError> {
        let vault = self.body.vault;
        let (key, wrong) = match opener {
            Opener::Passphrase(key) => {
                let (slot, _) = self.body.passphrase_slot();
                return slot
                    .open(&key.0, vault)
                    .map_err(|WontOpen| UnlockError::WrongPassphrase);
            }
            Opener::Recovery(code) => (code.slot_key(vault), UnlockError::WrongRecovery),
            Opener::Platform(secret) => (secret.slot_key(vault), UnlockError::WrongPlatform),
        };
        let fits = |way: &&Way| match opener {
            Opener::Recovery(_) => matches!(way, Way::Recovery { .. }),
            _ => matches!(way, Way::Platform { .. }),
        };
        let mut ways = self.body.ways().filter(fits);
        ways.find_map(|way| way.open(&key, vault).ok()).ok_or(wrong)
    }
}

const DAMAGED_SIGNING: UnlockError = UnlockError::Damaged(Flaw::SigningKey);
const DAMAGED_EXCHANGE: UnlockError = UnlockError::Damaged(Flaw::ExchangeKey);
const DAMAGED_EPOCH: UnlockError = UnlockError::Damaged(Flaw::ContentKey);
const DAMAGED_RECOVERY: UnlockError = UnlockError::Damaged(Flaw::RecoveryKey);

impl Body {
    fn open_epochs(&self, kek: &Secret) -> Result<Vec<Epoch>, WontOpen> {
        self.epochs
            .iter()
            .map(|epoch| {
                let about = epoch_about(
                    self.vault,
                    self.device,
                    epoch.number,
                    epoch.key_id,
                    epoch.roll,
                );
                let key = epoch.key.unwrap(kek, domains::WRAP_EPOCH, &[&about])?;
                Ok(Epoch {
                    number: epoch.number,
                    id: epoch.key_id,
                    roll: epoch.roll,
                    key,
                })
            })
            .collect()
    }
}

/// What an epoch key's wrap is bound to. The first epochs were made before any roll, and their wraps say nothing of it.
pub fn epoch_about(vault: VaultId, device: DeviceId, number: u32, id: KeyId, roll: u64) -> Vec<u8> {
    let mut about = [
        vault.as_bytes().as_slice(),
        device.as_bytes(),
        &number.to_be_bytes(),
        id.as_bytes(),
    ]
    .concat();
    if roll > 0 {
        about.extend_from_slice(&roll.to_be_bytes());
    }
    about
}
