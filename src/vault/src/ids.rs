//! Names of things: none of them is secret.

use serde::{Deserialize, Serialize};
use std::fmt;

macro_rules! id {
    ($(#[$doc:meta])* $name:ident, $length:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(#[serde(with = "serde_bytes")] [u8; $length]);

        impl $name {
            /// The id that these bytes are.
            pub const fn from_bytes(bytes: [u8; $length]) -> Self {
                Self(bytes)
            }

            /// Its bytes.
            pub const fn as_bytes(&self) -> &[u8; $length] {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.iter().try_for_each(|byte| write!(out, "{byte:02x}"))
            }
        }

        impl fmt::Debug for $name {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(out, "{}({self})", stringify!($name))
            }
        }
    };
}

id! {
    /// A vault: a clinic's or a locum's set of records. Random.
    VaultId, 16
}
id! {
    /// A device: the first 16 bytes of SHA-256 of its public signing key.
    DeviceId, 16
}
id! {
    /// A content key: an epoch's or a person's. Random.
    KeyId, 16
}
id! {
    /// What a draft is kept under; made by [`crate::Keys::draft_name`], so that it tells nothing without the keys.
    DraftName, 16
}
id! {
    /// Whom an entry is about, as the record names that person; the vault reads nothing into it.
    Subject, 16
}
id! {
    /// A frame's hash: the next frame of the same device names it. All zero before the first frame.
    FrameHash, 32
}

impl FrameHash {
    /// What the first frame names as the one before it.
    pub const NONE: Self = Self([0; 32]);
}

/// The newest frame of a device's log.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Head {
    /// Its number; the first frame of a log is 1.
    pub sequence: u64,
    /// Its hash.
    pub hash: FrameHash,
}
