//! A slot: one way to the device's key-encryption key.

use crate::domains;
use crate::ids::VaultId;
use crate::random::{NoRandomness, Source};
use crate::secret::{Secret, WontOpen};
use crate::stretch::StretchParams;
use crate::wrap::Wrapped;
use ciborium::Value;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// How to come to the key that opens a slot.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Way {
    /// The passphrase, stretched.
    Passphrase {
        stretch: StretchParams,
        kek: Wrapped,
    },
    /// The recovery code.
    Recovery { kek: Wrapped },
    /// What the platform's authenticator gives for `salt`, under the credential `id`.
    Platform {
        #[serde(with = "serde_bytes")]
        id: Vec<u8>,
        #[serde(with = "serde_bytes")]
        salt: [u8; 32],
        kek: Wrapped,
    },
}

/// A slot of a key file.
#[derive(Clone, Debug, PartialEq)]
pub enum Slot {
    Known(Way),
    /// Of a later version: carried as it is.
    Later(Value),
}

/// The kinds that this version knows.
const KINDS: [&str; 3] = ["passphrase", "recovery", "platform"];

impl Slot {
    pub fn passphrase(
        kek: &Secret,
        slot_key: &Secret,
        stretch: StretchParams,
        vault: VaultId,
        source: &mut dyn Source,
    ) -> Result<Self, NoRandomness> {
        let kek = wrap(kek, slot_key, vault, &passphrase(&stretch), source)?;
        Ok(Self::Known(Way::Passphrase { stretch, kek }))
    }

    pub fn recovery(
        kek: &Secret,
        slot_key: &Secret,
        vault: VaultId,
        source: &mut dyn Source,
    ) -> Result<Self, NoRandomness> {
        let kek = wrap(kek, slot_key, vault, &recovery(), source)?;
        Ok(Self::Known(Way::Recovery { kek }))
    }

    pub fn platform(
        kek: &Secret,
        slot_key: &Secret,
        id: &[u8],
        salt: [u8; 32],
        vault: VaultId,
        source: &mut dyn Source,
    ) -> Result<Self, NoRandomness> {
        let kek = wrap(kek, slot_key, vault, &platform(id, &salt), source)?;
        let id = id.to_vec();
        Ok(Self::Known(Way::Platform { id, salt, kek }))
    }

    /// What this version knows of it.
    pub fn way(&self) -> Option<&Way> {
        match self {
            Self::Known(way) => Some(way),
            Self::Later(_) => None,
        }
    }
}

impl Way {
    /// The key-encryption key.
    pub fn open(&self, slot_key: &Secret, vault: VaultId) -> Result<Secret, WontOpen> {
        let (kek, about) = match self {
            Self::Passphrase { stretch, kek } => (kek, passphrase(stretch)),
            Self::Recovery { kek } => (kek, recovery()),
            Self::Platform { id, salt, kek } => (kek, platform(id, salt)),
        };
        kek.unwrap(slot_key, domains::WRAP_KEK, &[vault.as_bytes(), &about])
    }
}

fn wrap(
    kek: &Secret,
    slot_key: &Secret,
    vault: VaultId,
    about: &[u8],
    source: &mut dyn Source,
) -> Result<Wrapped, NoRandomness> {
    let about = [vault.as_bytes().as_slice(), about];
    Wrapped::wrap(slot_key, kek, domains::WRAP_KEK, &about, source)
}

// The slot's description, which its wrap is bound to.

fn passphrase(stretch: &StretchParams) -> Vec<u8> {
    let numbers = [stretch.memory_kib, stretch.passes, stretch.lanes].map(u32::to_be_bytes);
    domains::join("passphrase", &[&stretch.salt, numbers.as_flattened()])
}

fn recovery() -> Vec<u8> {
    domains::join("recovery", &[])
}

fn platform(id: &[u8], salt: &[u8; 32]) -> Vec<u8> {
    domains::join("platform", &[salt, id])
}

impl Serialize for Slot {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Known(way) => way.serialize(serializer),
            Self::Later(value) => value.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for Slot {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let value = Value::deserialize(deserializer)?;
        let kind = kind(&value).ok_or_else(|| D::Error::custom("a slot without a kind"))?;
        if KINDS.contains(&kind) {
            value
                .deserialized()
                .map(Self::Known)
                .map_err(D::Error::custom)
        } else {
            Ok(Self::Later(value))
        }
    }
}

fn kind(slot: &Value) -> Option<&str> {
    let fields = slot.as_map()?.iter();
    let kind = fields.filter(|(name, _)| name.as_text() == Some("kind"));
    kind.map(|(_, kind)| kind).next()?.as_text()
}
