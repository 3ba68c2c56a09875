//! Changing what opens a key file. No frame is touched by it: the key-encryption key stays, only its wraps change.

use super::slot::Way;
use super::unlock::{Opener, PlatformSecret, UnlockError};
use super::{KeyFile, Slot};
use crate::domains;
use crate::random::{NoRandomness, Source, System};
use crate::recovery::RecoveryCode;
use crate::secret::Secret;
use crate::stretch::{SlotKey, StretchError, StretchParams};
use crate::wrap::Wrapped;

/// Why nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ChangeError {
    /// What should open the key file doesn't.
    #[error(transparent)]
    Unlock(#[from] UnlockError),
    /// No random numbers.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// Parameters that no key file may hold.
    #[error(transparent)]
    Stretch(#[from] StretchError),
}

/// A platform's authenticator that opens a key file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Platform<'a> {
    /// The credential.
    pub id: &'a [u8],
    /// What it is to be asked with.
    pub salt: &'a [u8; 32],
}

/// What a new authenticator is to be asked with. It stands in the key file and is no secret.
///
/// # Errors
///
/// No randomness.
pub fn platform_salt() -> Result<[u8; 32], NoRandomness> {
    crate::random::random()
}

impl KeyFile {
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
        self.set_passphrase(Opener::Passphrase(old), new, params)
    }

    /// The same key file with another passphrase, opened by anything that opens it: the way back for somebody who has
    /// forgotten the old one and has the recovery sheet.
    ///
    /// # Errors
    ///
    /// It doesn't open; no randomness; parameters out of range.
    pub fn set_passphrase(
        &self,
        by: Opener<'_>,
        new: &SlotKey,
        params: StretchParams,
    ) -> Result<Self, ChangeError> {
        params.check()?;
        let kek = self.kek(by)?;
        let slot = Slot::passphrase(&kek, &new.0, params, self.body.vault, &mut System)?;
        Ok(self.with_in_place_of(slot, |way| matches!(way, Way::Passphrase { .. })))
    }

    /// The same key file with a new recovery code, which is for the sheet; an older sheet opens it no more.
    ///
    /// # Errors
    ///
    /// It doesn't open; no randomness.
    pub fn add_recovery(&self, by: Opener<'_>) -> Result<(Self, RecoveryCode), ChangeError> {
        let kek = self.kek(by)?;
        let code = RecoveryCode::make()?;
        let changed = self.with_recovery(&kek, &code, &mut System)?;
        Ok((changed, code))
    }

    pub(crate) fn with_recovery(
        &self,
        kek: &Secret,
        code: &RecoveryCode,
        source: &mut dyn Source,
    ) -> Result<Self, NoRandomness> {
        let (vault, device) = (self.body.vault, self.body.device);
        let slot = Slot::recovery(kek, &code.slot_key(vault), vault, source)?;
        let mut changed = self.with_in_place_of(slot, |way| matches!(way, Way::Recovery { .. }));
        let public = Secret::from_bytes(code.exchange_public(vault));
        let about = [vault.as_bytes().as_slice(), device.as_bytes()];
        let wrapped = Wrapped::wrap(kek, &public, domains::WRAP_RECOVERY, &about, source)?;
        changed.body.recovery = Some(wrapped);
        Ok(changed)
    }

    /// The same key file, which a platform's authenticator opens as well: one that answers `salt` with `secret`, under the
    /// credential `id`. It is never the only way: the passphrase stays.
    ///
    /// # Errors
    ///
    /// It doesn't open; no randomness.
    pub fn add_platform(
        &self,
        by: Opener<'_>,
        platform: Platform<'_>,
        secret: &PlatformSecret,
    ) -> Result<Self, ChangeError> {
        let kek = self.kek(by)?;
        Ok(self.with_platform(&kek, platform, secret, &mut System)?)
    }

    pub(crate) fn with_platform(
        &self,
        kek: &Secret,
        Platform { id, salt }: Platform<'_>,
        secret: &PlatformSecret,
        source: &mut dyn Source,
    ) -> Result<Self, NoRandomness> {
        let vault = self.body.vault;
        let slot = Slot::platform(kek, &secret.slot_key(vault), id, *salt, vault, source)?;
        Ok(self.with_in_place_of(slot, |way| is_platform(way, id)))
    }

    /// The authenticators that open it.
    pub fn platforms(&self) -> impl Iterator<Item = Platform<'_>> {
        self.body.ways().filter_map(|way| match way {
            Way::Platform { id, salt, .. } => Some(Platform { id, salt }),
            _ => None,
        })
    }

    /// The same key file of a device that is called otherwise.
    #[must_use]
    pub fn renamed(&self, device_name: &str) -> Self {
        let mut changed = self.clone();
        device_name.clone_into(&mut changed.body.device_name);
        changed
    }

    /// Whether there is a recovery sheet for it.
    pub fn has_recovery(&self) -> bool {
        self.body
            .ways()
            .any(|way| matches!(way, Way::Recovery { .. }))
    }

    /// The same key file without an authenticator.
    #[must_use]
    pub fn without_platform(&self, id: &[u8]) -> Self {
        let mut changed = self.clone();
        let slots = &mut changed.body.slots;
        slots.retain(|slot| !slot.way().is_some_and(|way| is_platform(way, id)));
        changed
    }

    fn with_in_place_of(&self, slot: Slot, old: impl Fn(&Way) -> bool) -> Self {
        let mut changed = self.clone();
        let slots = &mut changed.body.slots;
        match slots.iter_mut().find(|slot| slot.way().is_some_and(&old)) {
            Some(place) => *place = slot,
            None => slots.push(slot),
        }
        changed
    }
}

fn is_platform(way: &Way, which: &[u8]) -> bool {
    matches!(way, Way::Platform { id, .. } if id == which)
}
