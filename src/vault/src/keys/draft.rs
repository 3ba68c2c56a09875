//! Drafts: what is half written, sealed on every change.
//!
//! A sealed draft is
//!
//! | bytes  | what                                                              |
//! |--------|-------------------------------------------------------------------|
//! | 0      | format: 1                                                         |
//! | 1      | algorithm: 1 (XChaCha20-Poly1305)                                 |
//! | 2..18  | id of the epoch key                                               |
//! | 18..42 | nonce, random                                                     |
//! | 42..   | ciphertext of the draft, padded as a frame's payload is, and tag  |
//!
//! with `"lightround v1 draft" || 0 || vault id || device id || draft name || bytes 0..18` as associated data, under
//! `HKDF-SHA256(epoch key, info = "lightround v1 content draft" || 0 || device id || key id)`. So a draft can't be put in
//! another draft's place, and no other device's drafts open here.
//!
//! Its name is the first 16 bytes of `HKDF-SHA256(oldest epoch key, info = "lightround v1 draft name" || 0 || device id ||
//! what it is of)`: always the same for the same thing, and telling nothing without the key.
//!
//! The device id in all of this is the one that the tablet had first, so that drafts outlive a change of identity.

use super::content::derive_content;
use super::{Keys, SealError};
use crate::domains;
use crate::frame::padding;
use crate::ids::{DraftName, KeyId};
use crate::random::{Source, System, draw};
use zeroize::Zeroizing;

const FORMAT: u8 = 1;
const ALGORITHM: u8 = 1;
/// Bytes before the nonce.
const PREFIX: usize = 18;
/// Bytes before the ciphertext.
const HEADER: usize = 42;

/// The draft doesn't open: altered, another draft's, another device's, or under a key that isn't here.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("a draft kept on this device can't be opened")]
pub struct DraftError;

impl Keys {
    /// The name under which the draft of `what` is kept.
    pub fn draft_name(&self, what: &[u8]) -> DraftName {
        let derived = self.oldest().key.derive(&domains::join(
            domains::DRAFT_NAME,
            &[self.drafts().as_bytes(), what],
        ));
        let mut name = [0; 16];
        name.copy_from_slice(&derived.bytes()[..16]);
        DraftName::from_bytes(name)
    }

    /// Seals a draft.
    ///
    /// # Errors
    ///
    /// A draft that is too long; no randomness.
    pub fn seal_draft(&self, name: DraftName, plain: &[u8]) -> Result<Vec<u8>, SealError> {
        self.seal_draft_from(name, plain, &mut System)
    }

    pub(crate) fn seal_draft_from(
        &self,
        name: DraftName,
        plain: &[u8],
        source: &mut dyn Source,
    ) -> Result<Vec<u8>, SealError> {
        let padded = padding::pad(plain)
            .map(Zeroizing::new)
            .ok_or(SealError::TooLong {
                length: plain.len(),
            })?;
        let epoch = self.current();
        let mut sealed = vec![FORMAT, ALGORITHM];
        sealed.extend_from_slice(epoch.id.as_bytes());
        let nonce = draw(source)?;
        let content = derive_content(&epoch.key, domains::CONTENT_DRAFT, self.drafts(), epoch.id);
        let ciphertext = content.seal(&nonce, &self.draft_about(name, &sealed), &padded);
        sealed.extend_from_slice(&nonce);
        sealed.extend_from_slice(&ciphertext);
        Ok(sealed)
    }

    /// Opens a draft that was sealed under this name.
    ///
    /// # Errors
    ///
    /// It doesn't open.
    pub fn open_draft(
        &self,
        name: DraftName,
        sealed: &[u8],
    ) -> Result<Zeroizing<Vec<u8>>, DraftError> {
        let (header, ciphertext) = sealed.split_first_chunk::<HEADER>().ok_or(DraftError)?;
        let (prefix, nonce) = header.split_first_chunk::<PREFIX>().ok_or(DraftError)?;
        let [FORMAT, ALGORITHM, id @ ..] = *prefix else {
            return Err(DraftError);
        };
        let epoch = self.epoch_by_id(KeyId::from_bytes(id)).ok_or(DraftError)?;
        let content = derive_content(&epoch.key, domains::CONTENT_DRAFT, self.drafts(), epoch.id);
        let nonce = nonce.try_into().map_err(|_| DraftError)?;
        let padded = content
            .open(&nonce, &self.draft_about(name, prefix), ciphertext)
            .map_err(|_| DraftError)?;
        padding::unpad(&padded)
            .map(|plain| Zeroizing::new(plain.to_vec()))
            .ok_or(DraftError)
    }

    fn draft_about(&self, name: DraftName, prefix: &[u8]) -> Vec<u8> {
        let (vault, device) = (self.vault(), self.drafts());
        domains::join(
            domains::DRAFT,
            &[vault.as_bytes(), device.as_bytes(), name.as_bytes(), prefix],
        )
    }
}
