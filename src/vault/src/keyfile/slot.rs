//! A slot: one way to the device's key-encryption key.

use crate::domains;
use crate::ids::VaultId;
use crate::random::{NoRandomness, Source};
use crate::secret::{Secret, WontOpen};
use crate::stretch::StretchParams;
use crate::wrap::Wrapped;
use serde::{Deserialize, Serialize};

/// What kinds of slot there are. A kind that isn't known belongs to a later version's key file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SlotKind {
    Passphrase,
}

/// A wrap of the key-encryption key and how to come to the key that opens it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slot {
    kind: SlotKind,
    pub stretch: StretchParams,
    kek: Wrapped,
}

impl Slot {
    pub fn passphrase(
        kek: &Secret,
        slot_key: &Secret,
        stretch: StretchParams,
        vault: VaultId,
        source: &mut dyn Source,
    ) -> Result<Self, NoRandomness> {
        let about = about(&stretch);
        let kek = Wrapped::wrap(
            slot_key,
            kek,
            domains::WRAP_KEK,
            &[vault.as_bytes(), &about],
            source,
        )?;
        Ok(Self {
            kind: SlotKind::Passphrase,
            stretch,
            kek,
        })
    }

    /// The key-encryption key.
    pub fn open(&self, slot_key: &Secret, vault: VaultId) -> Result<Secret, WontOpen> {
        self.kek.unwrap(
            slot_key,
            domains::WRAP_KEK,
            &[vault.as_bytes(), &about(&self.stretch)],
        )
    }
}

/// The slot's description, which its wrap is bound to.
fn about(stretch: &StretchParams) -> Vec<u8> {
    let numbers = [stretch.memory_kib, stretch.passes, stretch.lanes].map(u32::to_be_bytes);
    domains::join("passphrase", &[&stretch.salt, numbers.as_flattened()])
}
