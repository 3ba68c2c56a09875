//! What stays of a frame whose content was dropped, because the person whom it was about was erased.

use super::layout::{HEADER, SIGNATURE};
use super::{Frame, FrameError, Header};
use sha2::{Digest, Sha256};

/// The first byte of what stays of a frame.
pub const MARK: u8 = 129;
/// Where the body hash begins.
const BODY_HASH: usize = 1 + HEADER;
/// Bytes of a SHA-256.
const HASH: usize = 32;
/// Bytes of what stays of a frame.
const LENGTH: usize = BODY_HASH + HASH + SIGNATURE;

impl Frame {
    pub(super) fn parse_emptied(bytes: Vec<u8>) -> Result<Self, FrameError> {
        if bytes.len() != LENGTH {
            return Err(FrameError::Length {
                announced: LENGTH,
                length: bytes.len(),
            });
        }
        let header = Header::parse(&bytes[1..BODY_HASH])?;
        let mut body_hash = [0; HASH];
        body_hash.copy_from_slice(&bytes[BODY_HASH..BODY_HASH + HASH]);
        let hash = header.hash(&body_hash);
        Ok(Self {
            bytes,
            header,
            hash,
            emptied: true,
        })
    }

    /// Whether its content was dropped.
    pub fn is_emptied(&self) -> bool {
        self.emptied
    }

    /// What stays of it when its content is dropped: the header, the hash of the content, the signature.
    #[must_use]
    pub fn emptied(&self) -> Self {
        if self.emptied {
            return self.clone();
        }
        let content = &self.bytes[HEADER..self.bytes.len() - SIGNATURE];
        let mut bytes = Vec::with_capacity(LENGTH);
        bytes.push(MARK);
        bytes.extend_from_slice(&self.bytes[..HEADER]);
        bytes.extend_from_slice(&Sha256::digest(content));
        bytes.extend_from_slice(&self.signature());
        Self {
            bytes,
            header: self.header.clone(),
            hash: self.hash,
            emptied: true,
        }
    }
}
