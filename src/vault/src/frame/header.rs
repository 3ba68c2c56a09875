//! What stands in the clear in a frame.

use super::layout::{
    ALGORITHM, DEVICE, EPOCH, FORMAT, HEADER, KEY, LENGTH, PREVIOUS, PURPOSE, SEQUENCE, VAULT,
    field,
};
use super::{FrameError, Purpose, padding};
use crate::domains;
use crate::ids::{DeviceId, FrameHash, KeyId, VaultId};
use crate::secret::TAG;
use sha2::{Digest, Sha256};

/// The header of a frame. It is signed and authenticated, not secret.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Header {
    /// The vault that the frame belongs to.
    pub vault: VaultId,
    /// The device that wrote it.
    pub device: DeviceId,
    /// Its number in that device's log, from 1.
    pub sequence: u64,
    /// The hash of the frame before it; [`FrameHash::NONE`] in the first.
    pub previous: FrameHash,
    /// The epoch in which it was written, from 1.
    pub epoch: u32,
    /// The content key: the epoch's or a person's.
    pub key: KeyId,
    /// What it is for.
    pub purpose: Purpose,
    /// Bytes of ciphertext, tag included.
    pub ciphertext_length: u32,
}

impl Header {
    /// Reads a header from the first 99 of `bytes`, which are at least that many.
    pub(super) fn parse(bytes: &[u8]) -> Result<Self, FrameError> {
        match (bytes[0], bytes[1]) {
            (FORMAT, ALGORITHM) => {}
            (FORMAT, other) => return Err(FrameError::Algorithm(other)),
            (other, _) => return Err(FrameError::Format(other)),
        }
        let header = Self {
            vault: VaultId::from_bytes(field(bytes, VAULT)),
            device: DeviceId::from_bytes(field(bytes, DEVICE)),
            sequence: u64::from_be_bytes(field(bytes, SEQUENCE)),
            previous: FrameHash::from_bytes(field(bytes, PREVIOUS)),
            epoch: u32::from_be_bytes(field(bytes, EPOCH)),
            key: KeyId::from_bytes(field(bytes, KEY)),
            purpose: Purpose::from_byte(bytes[PURPOSE]).ok_or(FrameError::Purpose)?,
            ciphertext_length: u32::from_be_bytes(field(bytes, LENGTH)),
        };
        header.check().map(|()| header)
    }

    fn check(&self) -> Result<(), FrameError> {
        if self.sequence == 0 {
            return Err(FrameError::Sequence);
        }
        if (self.sequence == 1) != (self.previous == FrameHash::NONE) {
            return Err(FrameError::Previous {
                sequence: self.sequence,
            });
        }
        if self.epoch == 0 {
            return Err(FrameError::Epoch);
        }
        let padded = (self.ciphertext_length as usize).checked_sub(TAG);
        if !padded.is_some_and(padding::is_class) {
            return Err(FrameError::CiphertextLength(self.ciphertext_length));
        }
        Ok(())
    }

    /// Its 99 bytes.
    pub fn bytes(&self) -> [u8; HEADER] {
        let mut bytes = [0; HEADER];
        bytes[0] = FORMAT;
        bytes[1] = ALGORITHM;
        bytes[VAULT].copy_from_slice(self.vault.as_bytes());
        bytes[DEVICE].copy_from_slice(self.device.as_bytes());
        bytes[SEQUENCE].copy_from_slice(&self.sequence.to_be_bytes());
        bytes[PREVIOUS].copy_from_slice(self.previous.as_bytes());
        bytes[EPOCH].copy_from_slice(&self.epoch.to_be_bytes());
        bytes[KEY].copy_from_slice(self.key.as_bytes());
        bytes[PURPOSE] = self.purpose.byte();
        bytes[LENGTH].copy_from_slice(&self.ciphertext_length.to_be_bytes());
        bytes
    }

    /// The hash of a frame with this header and a body (nonce and ciphertext) of this SHA-256.
    pub fn hash(&self, body_hash: &[u8; 32]) -> FrameHash {
        FrameHash::from_bytes(
            Sha256::digest(domains::join(
                domains::FRAME_HASH,
                &[&self.bytes(), body_hash],
            ))
            .into(),
        )
    }
}
