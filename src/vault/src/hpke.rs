//! Sealing to a device's X25519 key: HPKE (RFC 9180) in its base mode, with DHKEM(X25519, HKDF-SHA256), HKDF-SHA256 and
//! ChaCha20-Poly1305. Every box is of a context of its own, so its number is always 0.

use crate::random::{NoRandomness, Source, draw};
use crate::secret::{Secret, WontOpen};
use hpke::aead::ChaCha20Poly1305;
use hpke::kdf::HkdfSha256;
use hpke::kem::X25519HkdfSha256;
use hpke::rand_core::{TryCryptoRng, TryRng};
use hpke::{Deserializable, Kem, OpModeR, OpModeS, Serializable};
use std::convert::Infallible;
use zeroize::{Zeroize, ZeroizeOnDrop, Zeroizing};

/// What is sealed to somebody: the encapsulated key and the ciphertext with its tag.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sealed {
    pub enc: [u8; 32],
    pub ciphertext: Vec<u8>,
}

/// Why nothing was sealed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum BoxError {
    /// No random numbers.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// A public key to which nothing can be sealed.
    #[error("the key that this should be sealed to is none")]
    Key,
}

/// Seals `plain` to whoever has the secret of the public key `to`.
pub fn seal(
    to: &[u8; 32],
    info: &[u8],
    associated: &[u8],
    plain: &[u8],
    source: &mut dyn Source,
) -> Result<Sealed, BoxError> {
    let mut drawn = Drawn(draw(source)?);
    let to = <X25519HkdfSha256 as Kem>::PublicKey::from_bytes(to).map_err(|_| BoxError::Key)?;
    let (enc, ciphertext) = hpke::single_shot_seal_with_rng::<
        ChaCha20Poly1305,
        HkdfSha256,
        X25519HkdfSha256,
    >(&OpModeS::Base, &to, info, plain, associated, &mut drawn)
    .map_err(|_| BoxError::Key)?;
    Ok(Sealed {
        enc: enc.to_bytes().into(),
        ciphertext,
    })
}

/// Opens what was sealed to the public key of `secret`.
pub fn open(
    secret: &Secret,
    info: &[u8],
    associated: &[u8],
    sealed: &Sealed,
) -> Result<Zeroizing<Vec<u8>>, WontOpen> {
    let secret =
        <X25519HkdfSha256 as Kem>::PrivateKey::from_bytes(secret.bytes()).map_err(|_| WontOpen)?;
    let enc =
        <X25519HkdfSha256 as Kem>::EncappedKey::from_bytes(&sealed.enc).map_err(|_| WontOpen)?;
    hpke::single_shot_open::<ChaCha20Poly1305, HkdfSha256, X25519HkdfSha256>(
        &OpModeR::Base,
        &secret,
        &enc,
        info,
        &sealed.ciphertext,
        associated,
    )
    .map(Zeroizing::new)
    .map_err(|_| WontOpen)
}

/// The 32 bytes that the ephemeral key is made of, already drawn: HPKE asks for no more.
#[derive(Zeroize, ZeroizeOnDrop)]
struct Drawn([u8; 32]);

impl TryRng for Drawn {
    type Error = Infallible;

    fn try_next_u32(&mut self) -> Result<u32, Infallible> {
        let mut bytes = [0; 4];
        self.try_fill_bytes(&mut bytes)?;
        Ok(u32::from_be_bytes(bytes))
    }

    fn try_next_u64(&mut self) -> Result<u64, Infallible> {
        let mut bytes = [0; 8];
        self.try_fill_bytes(&mut bytes)?;
        Ok(u64::from_be_bytes(bytes))
    }

    /// Gives the drawn bytes once, and stops the program rather than give them twice.
    fn try_fill_bytes(&mut self, bytes: &mut [u8]) -> Result<(), Infallible> {
        assert!(
            bytes.len() == self.0.len() && self.0 != [0; 32],
            "one ephemeral key is made of one draw of 32 bytes"
        );
        bytes.copy_from_slice(&self.0);
        self.0.zeroize();
        Ok(())
    }
}

impl TryCryptoRng for Drawn {}

#[cfg(test)]
mod tests {
    use super::*;

    struct Given([u8; 32]);

    impl Source for Given {
        fn fill(&mut self, bytes: &mut [u8]) -> Result<(), NoRandomness> {
            bytes.copy_from_slice(&self.0);
            Ok(())
        }
    }

    #[test]
    fn nothing_opens_with_anything_changed() {
        let secret = Secret::from_bytes([7; 32]);
        let public = x25519_dalek::PublicKey::from(&x25519_dalek::StaticSecret::from([7; 32]));
        let sealed = seal(
            public.as_bytes(),
            b"info",
            b"about",
            b"plain",
            &mut Given([3; 32]),
        )
        .unwrap();
        assert!(open(&secret, b"info", b"about", &sealed).is_ok());
        assert!(open(&secret, b"other", b"about", &sealed).is_err());
        assert!(open(&secret, b"info", b"other", &sealed).is_err());
        assert!(open(&Secret::from_bytes([8; 32]), b"info", b"about", &sealed).is_err());
        for at in 0..32 {
            let mut changed = sealed.clone();
            changed.enc[at] ^= 1;
            assert!(open(&secret, b"info", b"about", &changed).is_err());
        }
        for at in 0..sealed.ciphertext.len() {
            let mut changed = sealed.clone();
            changed.ciphertext[at] ^= 1;
            assert!(open(&secret, b"info", b"about", &changed).is_err());
        }
    }

    // RFC 7748, section 6.1: an all-zero result of X25519 is refused, and RFC 9180, section 7.1.4, demands it.
    #[test]
    fn nothing_is_sealed_to_a_key_that_everybody_can_open() {
        let sealed = seal(&[0; 32], b"", b"", b"plain", &mut Given([3; 32]));
        assert_eq!(sealed, Err(BoxError::Key));
    }
}
