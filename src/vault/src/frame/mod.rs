//! A frame: one encrypted thing in a device's log.
//!
//! # Layout
//!
//! All numbers are big-endian. The header is bytes 0 to 98 and is, whole, the associated data of the ciphertext.
//!
//! | bytes      | what                                                                                     |
//! |------------|------------------------------------------------------------------------------------------|
//! | 0          | format: 1                                                                                |
//! | 1          | algorithms: 1 (XChaCha20-Poly1305, SHA-256, Ed25519)                                     |
//! | 2..18      | vault id                                                                                 |
//! | 18..34     | device id                                                                                |
//! | 34..42     | sequence number, u64, from 1 without gaps                                                |
//! | 42..74     | hash of this device's previous frame; zeros in the first, and only there                 |
//! | 74..78     | epoch number, u32, from 1                                                                |
//! | 78..94     | id of the content key: the epoch's or a person's                                         |
//! | 94         | purpose, see [`Purpose`]; never 0                                                        |
//! | 95..99     | length of the ciphertext, u32: a class of `padding.rs` and the tag of 16 bytes           |
//! | 99..123    | nonce, random                                                                            |
//! | 123..123+n | ciphertext                                                                               |
//! | the last 64| Ed25519 signature                                                                        |
//!
//! The content key is `HKDF-SHA256(key, info = domain || 0 || device id || key id)` with the domain of the purpose
//! (`domains.rs`).
//!
//! # Why the hash is made in two steps
//!
//! ```text
//! body hash  = SHA-256(nonce || ciphertext)
//! frame hash = SHA-256("lightround v1 frame hash" || 0 || header || body hash)
//! signature  = Ed25519("lightround v1 frame signature" || 0 || frame hash)
//! ```
//!
//! One flat hash over all the bytes would be simpler. But when a person's records are erased, their ciphertexts are
//! dropped for good, and the chain of the frames that stay must still verify. With a header, a body hash and a signature
//! it does ([`Header::hash`], [`verify`]): the erasure is provable and nothing erased is needed to prove it.
//!
//! # What stays of an erased frame
//!
//! | bytes    | what                                              |
//! |----------|---------------------------------------------------|
//! | 0        | 129: not a format of frames, but what stays of one |
//! | 1..100   | the header, as it was                             |
//! | 100..132 | the body hash                                     |
//! | 132..196 | the signature                                     |
//!
//! It has the hash that it had, so it stands in its log, is verified and travels as before; only it opens no more.

mod emptied;
mod error;
mod header;
mod layout;
pub(crate) mod padding;
mod purpose;
mod signature;

pub use error::FrameError;
pub use header::Header;
pub use padding::LONGEST_PAYLOAD;
pub use purpose::Purpose;
pub use signature::{BadSignature, PublicKey, verify};

pub(crate) use signature::signed_bytes;

use crate::ids::{DeviceId, FrameHash, Head};
use crate::secret::{Nonce, TAG};
use layout::{CIPHERTEXT, HEADER, NONCE, SIGNATURE, field};
use sha2::{Digest, Sha256};

/// The longest frame, in bytes.
pub const LONGEST: usize = CIPHERTEXT + padding::LARGEST + TAG + SIGNATURE;
/// The shortest frame, in bytes.
pub const SHORTEST: usize = CIPHERTEXT + padding::SMALLEST + TAG + SIGNATURE;

/// What is sealed in a frame.
pub(crate) struct Body<'a> {
    pub associated: &'a [u8],
    pub nonce: Nonce,
    pub ciphertext: &'a [u8],
}

/// A well-formed frame. Whether it is genuine, [`Frame::verify`] tells; whether it can be read, [`crate::Keys`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Frame {
    bytes: Vec<u8>,
    header: Header,
    hash: FrameHash,
    /// Whether its content was dropped.
    emptied: bool,
}

impl Frame {
    /// Reads a frame from bytes of any origin.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with them.
    pub fn parse(bytes: Vec<u8>) -> Result<Self, FrameError> {
        if bytes.first() == Some(&emptied::MARK) {
            return Self::parse_emptied(bytes);
        }
        if bytes.len() < SHORTEST {
            return Err(FrameError::TooShort {
                length: bytes.len(),
            });
        }
        if bytes.len() > LONGEST {
            return Err(FrameError::TooLong {
                length: bytes.len(),
            });
        }
        let header = Header::parse(&bytes)?;
        let announced = CIPHERTEXT + header.ciphertext_length as usize + SIGNATURE;
        if announced != bytes.len() {
            return Err(FrameError::Length {
                announced,
                length: bytes.len(),
            });
        }
        let body_hash = Sha256::digest(&bytes[HEADER..bytes.len() - SIGNATURE]).into();
        let hash = header.hash(&body_hash);
        Ok(Self {
            bytes,
            header,
            hash,
            emptied: false,
        })
    }

    /// Joins a header, a sealed body and a signature made over both.
    pub(crate) fn assemble(
        header: &Header,
        nonce: &Nonce,
        ciphertext: &[u8],
        sign: impl FnOnce(&FrameHash) -> [u8; 64],
    ) -> Self {
        let mut bytes = Vec::with_capacity(CIPHERTEXT + ciphertext.len() + SIGNATURE);
        bytes.extend_from_slice(&header.bytes());
        bytes.extend_from_slice(nonce);
        bytes.extend_from_slice(ciphertext);
        let hash = header.hash(&Sha256::digest(&bytes[HEADER..]).into());
        bytes.extend_from_slice(&sign(&hash));
        Self {
            bytes,
            header: header.clone(),
            hash,
            emptied: false,
        }
    }

    /// The bytes to keep and to send.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// What stands in the clear.
    pub fn header(&self) -> &Header {
        &self.header
    }

    /// The device that wrote it.
    pub fn device(&self) -> DeviceId {
        self.header.device
    }

    /// Its number in that device's log.
    pub fn sequence(&self) -> u64 {
        self.header.sequence
    }

    /// Its hash, which the next frame names.
    pub fn hash(&self) -> FrameHash {
        self.hash
    }

    /// The head of a log that ends with this frame.
    pub fn head(&self) -> Head {
        Head {
            sequence: self.header.sequence,
            hash: self.hash,
        }
    }

    /// Whether the device with this public key signed it, and the device id is that key's.
    ///
    /// # Errors
    ///
    /// Another key, or another signature.
    pub fn verify(&self, key: &PublicKey) -> Result<(), BadSignature> {
        verify(&self.header, &self.hash, &self.signature(), key)
    }

    pub(crate) fn signature(&self) -> [u8; 64] {
        field(&self.bytes, self.bytes.len() - SIGNATURE..self.bytes.len())
    }

    /// What is sealed in it; none where that was dropped.
    pub(crate) fn body(&self) -> Option<Body<'_>> {
        (!self.emptied).then(|| Body {
            associated: &self.bytes[..HEADER],
            nonce: field(&self.bytes, NONCE),
            ciphertext: &self.bytes[CIPHERTEXT..self.bytes.len() - SIGNATURE],
        })
    }
}
