//! 256 secret bits that are wiped when they go, and the three things done with them.

use crate::random::{NoRandomness, Source, draw};
use chacha20poly1305::aead::{Aead, Payload};
use chacha20poly1305::{KeyInit, XChaCha20Poly1305, XNonce};
use hkdf::Hkdf;
use sha2::Sha256;
use zeroize::{Zeroize, ZeroizeOnDrop, Zeroizing};

/// Bytes that XChaCha20-Poly1305 adds to what it seals.
pub const TAG: usize = 16;

/// A nonce of XChaCha20-Poly1305: long enough to be drawn at random for every message of a key.
pub type Nonce = [u8; 24];

/// A key. It has no `Debug`, no `Clone` and no way out of this crate.
#[derive(Zeroize, ZeroizeOnDrop)]
pub struct Secret([u8; 32]);

/// It did not open: another key, or other bytes. Cryptography can't tell which.
#[derive(Debug, PartialEq, Eq)]
pub struct WontOpen;

impl Secret {
    pub fn make(source: &mut dyn Source) -> Result<Self, NoRandomness> {
        Ok(Self(draw(source)?))
    }

    pub fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    pub fn bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// HKDF-SHA256 without a salt: the key is uniformly random already, and `info` says what it is for.
    pub fn derive(&self, info: &[u8]) -> Self {
        Self::derive_from(&self.0, info)
    }

    /// The same from any bytes that are hard enough to guess.
    pub fn derive_from(bytes: &[u8], info: &[u8]) -> Self {
        let mut derived = Self([0; 32]);
        Hkdf::<Sha256>::new(None, bytes)
            .expand(info, &mut derived.0)
            .expect("32 bytes are within the 8160 that HKDF-SHA256 gives");
        derived
    }

    pub fn seal(&self, nonce: &Nonce, associated: &[u8], plain: &[u8]) -> Vec<u8> {
        XChaCha20Poly1305::new(&self.0.into())
            .encrypt(
                &XNonce::from(*nonce),
                Payload {
                    msg: plain,
                    aad: associated,
                },
            )
            .expect("a message in memory is far below the cipher's limit of 256 GiB")
    }

    pub fn open(
        &self,
        nonce: &Nonce,
        associated: &[u8],
        sealed: &[u8],
    ) -> Result<Zeroizing<Vec<u8>>, WontOpen> {
        XChaCha20Poly1305::new(&self.0.into())
            .decrypt(
                &XNonce::from(*nonce),
                Payload {
                    msg: sealed,
                    aad: associated,
                },
            )
            .map(Zeroizing::new)
            .map_err(|_| WontOpen)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn deriving_for_two_uses_gives_two_keys_and_for_one_use_one() {
        let key = Secret::from_bytes([7; 32]);
        assert_eq!(key.derive(b"one").bytes(), key.derive(b"one").bytes());
        assert_ne!(key.derive(b"one").bytes(), key.derive(b"two").bytes());
    }

    #[test]
    fn nothing_opens_with_another_key_nonce_or_associated_data() {
        let key = Secret::from_bytes([7; 32]);
        let sealed = key.seal(&[1; 24], b"about", b"plain");
        assert_eq!(*key.open(&[1; 24], b"about", &sealed).unwrap(), b"plain");
        assert_eq!(
            Secret::from_bytes([8; 32]).open(&[1; 24], b"about", &sealed),
            Err(WontOpen)
        );
        assert_eq!(key.open(&[2; 24], b"about", &sealed), Err(WontOpen));
        assert_eq!(key.open(&[1; 24], b"other", &sealed), Err(WontOpen));
        assert_eq!(key.open(&[1; 24], b"about", &sealed[..15]), Err(WontOpen));
    }
}
