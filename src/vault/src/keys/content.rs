//! The content keys, derived for one device, one purpose and one key id.

use super::{Epoch, PersonKey};
use crate::domains;
use crate::frame::Purpose;
use crate::ids::{DeviceId, KeyId, VaultId};
use crate::secret::Secret;

/// `HKDF-SHA256(key, info = domain || 0 || device id || key id)`.
pub fn derive_content(key: &Secret, domain: &str, device: DeviceId, id: KeyId) -> Secret {
    key.derive(&domains::join(domain, &[device.as_bytes(), id.as_bytes()]))
}

/// The key of an open frame's outer seal: `HKDF-SHA256(vault id, info = domain || 0 || device id || key id)`. Anybody can
/// derive it; nothing secret is under it.
pub fn open_content(vault: VaultId, domain: &str, device: DeviceId, id: KeyId) -> Secret {
    let info = domains::join(domain, &[device.as_bytes(), id.as_bytes()]);
    Secret::derive_from(vault.as_bytes(), &info)
}

impl Epoch {
    /// The content key for `device`'s frames of this purpose; none for purposes of later versions.
    pub fn content(&self, device: DeviceId, purpose: Purpose) -> Option<Secret> {
        purpose
            .epoch_domain()
            .map(|domain| derive_content(&self.key, domain, device, self.id))
    }
}

impl PersonKey {
    /// The content key for `device`'s entries about this person.
    pub(crate) fn content(&self, device: DeviceId) -> Secret {
        derive_content(&self.key, domains::CONTENT_PERSON_ENTRY, device, self.id)
    }
}
