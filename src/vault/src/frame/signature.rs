//! Who wrote a frame.

use super::Header;
use crate::domains;
use crate::ids::{DeviceId, FrameHash};
use ed25519_dalek::{Signature, VerifyingKey};
use sha2::{Digest, Sha256};

/// The frame was not signed by this key, or the key is not that of the device it names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the frame was not signed by the device that it names")]
pub struct BadSignature;

/// A device's public signing key (Ed25519). The device's id is made from it, so a key can't be passed off as another's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PublicKey(VerifyingKey);

impl PublicKey {
    /// The key that these bytes are; none where they are no point of the curve, or one of the few weak ones.
    pub fn from_bytes(bytes: &[u8; 32]) -> Option<Self> {
        let key = VerifyingKey::from_bytes(bytes).ok()?;
        (!key.is_weak()).then_some(Self(key))
    }

    /// Its bytes.
    pub fn bytes(&self) -> [u8; 32] {
        self.0.to_bytes()
    }

    /// The id of its device: the first 16 bytes of SHA-256 of the key.
    pub fn device(&self) -> DeviceId {
        let mut id = [0; 16];
        id.copy_from_slice(&Sha256::digest(self.0.as_bytes())[..16]);
        DeviceId::from_bytes(id)
    }

    /// Whether this key signed these bytes. Strict: one message, one key, one signature.
    pub(crate) fn signed(&self, bytes: &[u8], signature: &[u8; 64]) -> bool {
        self.0
            .verify_strict(bytes, &Signature::from_bytes(signature))
            .is_ok()
    }
}

impl From<VerifyingKey> for PublicKey {
    fn from(key: VerifyingKey) -> Self {
        Self(key)
    }
}

/// The bytes that a device signs.
pub(crate) fn signed_bytes(hash: &FrameHash) -> Vec<u8> {
    domains::join(domains::FRAME_SIGNATURE, &[hash.as_bytes()])
}

/// Checks a signature without the frame's body: for frames whose ciphertext was erased.
///
/// # Errors
///
/// `hash` was not signed by `key`, or `header` names another device than the key's.
pub fn verify(
    header: &Header,
    hash: &FrameHash,
    signature: &[u8; 64],
    key: &PublicKey,
) -> Result<(), BadSignature> {
    if header.device != key.device() {
        return Err(BadSignature);
    }
    // Strict: one message, one key, one signature; so a frame's bytes can't be varied by a bystander.
    key.0
        .verify_strict(&signed_bytes(hash), &Signature::from_bytes(signature))
        .map_err(|_| BadSignature)
}
