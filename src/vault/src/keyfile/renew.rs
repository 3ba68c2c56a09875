//! Another identity for a device that is a copy of another, or was put back from one.

use super::{ChangeError, KeyFile, Opener};
use crate::found::wrap_all;
use crate::ids::KeyId;
use crate::keys::Keys;
use crate::random::System;
use crate::secret::Secret;
use ed25519_dalek::SigningKey;

impl KeyFile {
    /// A key file with new signing and exchange keys for the same vault, opened by what opens this one, and its keys. `keys`
    /// are the open ones; of their epochs those in `without` are left out.
    ///
    /// The drafts that are kept stay readable. The old log stays readable too, and is never written again.
    ///
    /// # Errors
    ///
    /// It doesn't open; no randomness.
    pub fn renew(
        &self,
        by: Opener<'_>,
        keys: &Keys,
        without: &[KeyId],
    ) -> Result<(Self, Keys), ChangeError> {
        let kek = self.kek(by)?;
        let source = &mut System;
        let seed = Secret::make(source)?;
        let signing = SigningKey::from_bytes(seed.bytes());
        let mut epochs = keys.copied_epochs();
        epochs.retain(|epoch| epoch.number == 1 || !without.contains(&epoch.id));
        let new = Keys::new(keys.vault(), signing, Secret::make(source)?, epochs)
            .drafting_as(Some(keys.drafts()))
            .recovered_by(keys.own_recovery());
        let slots = self.body.slots.clone();
        let body = wrap_all(&new, &kek, &seed, slots, self.device_name(), source)?;
        Ok((Self { body }, new))
    }
}
