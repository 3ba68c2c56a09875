//! The key file's bytes.

use super::slot::Way;
use super::{Flaw, KeyFile, Slot};
use crate::domains;
use crate::ids::{DeviceId, KeyId, VaultId};
use crate::stretch::StretchParams;
use crate::wrap::Wrapped;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// The format that this version writes and reads.
const FORMAT: u32 = 1;
/// More than any key file: one with a thousand epochs has about 200 KB.
const LONGEST: usize = 1 << 20;

/// Why bytes are no key file.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum KeyFileError {
    /// Written by a later version of this program.
    #[error(
        "this vault was last used with a newer version (its key file is of format {0}): update before opening it"
    )]
    Newer(u32),
    /// Not what was written: cut short, altered, or something else altogether.
    #[error("the key file on this device is damaged ({0}): nothing was changed")]
    Damaged(Flaw),
}

/// Everything in a key file; the module above says what each thing is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Body {
    pub vault: VaultId,
    pub device: DeviceId,
    pub device_name: String,
    pub slots: Vec<Slot>,
    pub signing: Wrapped,
    pub exchange: Wrapped,
    pub epochs: Vec<WrappedEpoch>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub recovery: Option<Wrapped>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drafts: Option<DeviceId>,
}

/// An epoch key in a key file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WrappedEpoch {
    pub number: u32,
    pub key_id: KeyId,
    pub key: Wrapped,
    #[serde(default, skip_serializing_if = "is_zero")]
    pub roll: u64,
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde passes a reference"
)]
fn is_zero(number: &u64) -> bool {
    *number == 0
}

#[derive(Serialize, Deserialize)]
struct Outer {
    format: u32,
    #[serde(with = "serde_bytes")]
    body: Vec<u8>,
    #[serde(with = "serde_bytes")]
    sum: [u8; 32],
}

/// Only the format, which every version can read.
#[derive(Deserialize)]
struct Format {
    format: u32,
}

impl KeyFile {
    /// The bytes to keep.
    pub fn to_bytes(&self) -> Vec<u8> {
        let body = cbor(&self.body);
        let sum = sum(&body);
        cbor(&Outer {
            format: FORMAT,
            body,
            sum,
        })
    }

    /// Reads a key file.
    ///
    /// # Errors
    ///
    /// A later version's file; a damaged one.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, KeyFileError> {
        if bytes.len() > LONGEST {
            return Err(KeyFileError::Damaged(Flaw::TooLong));
        }
        let format: Format = read(bytes, Flaw::Unreadable)?;
        if format.format > FORMAT {
            return Err(KeyFileError::Newer(format.format));
        }
        let outer: Outer = read(bytes, Flaw::PartMissing)?;
        if outer.format != FORMAT || sum(&outer.body) != outer.sum {
            return Err(KeyFileError::Damaged(Flaw::Sum));
        }
        let body: Body = read(&outer.body, Flaw::Inside)?;
        body.check().map(|()| Self { body })
    }
}

impl Body {
    /// The slot that a passphrase opens, and how that is stretched; [`Body::check`] has seen to it that there is one.
    pub fn passphrase_slot(&self) -> (&Way, StretchParams) {
        let mut passphrases = self.ways().filter_map(|way| match way {
            Way::Passphrase { stretch, .. } => Some((way, *stretch)),
            _ => None,
        });
        passphrases
            .next()
            .expect("a key file without a passphrase is never read or made")
    }

    /// The slots that this version knows.
    pub fn ways(&self) -> impl Iterator<Item = &Way> {
        self.slots.iter().filter_map(Slot::way)
    }

    fn check(&self) -> Result<(), KeyFileError> {
        let stretches: Vec<&StretchParams> = self
            .ways()
            .filter_map(|way| match way {
                Way::Passphrase { stretch, .. } => Some(stretch),
                _ => None,
            })
            .collect();
        if stretches.is_empty() {
            return Err(KeyFileError::Damaged(Flaw::NoPassphrase));
        }
        if stretches.iter().any(|stretch| stretch.check().is_err()) {
            return Err(KeyFileError::Damaged(Flaw::Stretching));
        }
        let begins = self.epochs.first().is_some_and(|epoch| epoch.number == 1);
        // Two leads may have begun the same one.
        let goes_on = self.epochs.windows(2).all(|pair| {
            let (one, next) = (pair[0].number, pair[1].number);
            next == one || one.checked_add(1) == Some(next)
        });
        if !begins || !goes_on {
            return Err(KeyFileError::Damaged(Flaw::Epochs));
        }
        Ok(())
    }
}

fn sum(body: &[u8]) -> [u8; 32] {
    Sha256::digest(domains::join(domains::KEY_FILE_SUM, &[body])).into()
}

fn cbor(value: &impl Serialize) -> Vec<u8> {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).expect("writing to memory can't fail");
    bytes
}

fn read<T: for<'a> Deserialize<'a>>(bytes: &[u8], or: Flaw) -> Result<T, KeyFileError> {
    ciborium::from_reader(bytes).map_err(|_| KeyFileError::Damaged(or))
}
