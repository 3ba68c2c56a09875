//! Erasing a person: a lead's word that a person's keys and everything under them are dropped, by everybody.
//!
//! The frame is an *open* one, as an epoch's is: its outer seal is under `HKDF-SHA256(vault id, info = "lightround v1 content
//! erasure" || 0 || device id || key id)`, so that a relay can follow it. It says nothing of who the person was. Its payload
//! is CBOR:
//!
//! ```text
//! { "subject": 16 bytes, "at": u64,      milliseconds since 1970
//!   "keys": [ { "id": 16 bytes, "device": 16 bytes, "sequence": u64 } ] }     each person key, and the frame that holds it
//! ```
//!
//! What goes, are the contents of those frames and of all entries under those keys, whoever wrote them and whenever they come; of
//! each the header, the hash of the content and the signature stay ([`Frame::emptied`]). A person who comes again gets
//! another key, to which the erasure does not reach.

use super::content::open_content;
use super::seal::open_with;
use super::{Keys, OpenError, Proven, SealError};
use crate::domains;
use crate::frame::{Frame, Purpose};
use crate::ids::{DeviceId, KeyId, Subject};
use crate::random::{Source, System};
use serde::{Deserialize, Serialize};

/// What an erasure says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Erasure {
    /// Who, as the record named that person; it names nobody any more.
    pub subject: Subject,
    /// When, in milliseconds since 1970.
    pub at: u64,
    /// The person's keys.
    pub keys: Vec<ErasedKey>,
}

/// A person's key that is erased, and the frame that holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ErasedKey {
    /// The key's id.
    pub id: KeyId,
    /// In whose log its frame is.
    pub device: DeviceId,
    /// That frame's number.
    pub sequence: u64,
}

impl ErasedKey {
    /// Whether this frame holds the key, or an entry under it.
    pub fn covers(&self, frame: &Frame) -> bool {
        let header = frame.header();
        match header.purpose {
            Purpose::Entry => self.id == header.key,
            Purpose::PersonKey => (self.device, self.sequence) == (header.device, header.sequence),
            _ => false,
        }
    }
}

impl Erasure {
    /// Reads an erasure, as anybody can who carries frames and has no key. Who may make one is the roll's business.
    ///
    /// # Errors
    ///
    /// The frame holds something else, or makes no sense.
    pub fn read(frame: &Frame) -> Result<Self, OpenError> {
        let header = frame.header();
        if header.purpose != Purpose::Erasure {
            return Err(OpenError::OtherPurpose);
        }
        let domain = domains::CONTENT_ERASURE;
        let content = open_content(header.vault, domain, header.device, header.key);
        let plain = open_with(frame, &content)?;
        ciborium::from_reader(plain.as_slice()).map_err(|_| OpenError::Opaque)
    }

    /// Whether it takes away what is in this frame.
    pub fn covers(&self, frame: &Frame) -> bool {
        self.keys.iter().any(|key| key.covers(frame))
    }

    /// Whether it takes this key away.
    pub fn has(&self, key: KeyId) -> bool {
        self.keys.iter().any(|erased| erased.id == key)
    }
}

impl Keys {
    /// Seals an erasure as the next frame of this device's log. It is carried out by whoever keeps frames.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn seal_erasure(
        &self,
        after: &Proven,
        erasure: &Erasure,
    ) -> Result<(Frame, Proven), SealError> {
        let frame = self.seal_erasure_from(after, erasure, &mut System)?;
        let proven = Proven::after(&frame);
        Ok((frame, proven))
    }

    pub(crate) fn seal_erasure_from(
        &self,
        after: &Proven,
        erasure: &Erasure,
        source: &mut dyn Source,
    ) -> Result<Frame, SealError> {
        let mut plain = Vec::new();
        ciborium::into_writer(erasure, &mut plain).expect("writing to memory can't fail");
        let key = self.current().id;
        let content = open_content(self.vault(), domains::CONTENT_ERASURE, self.device(), key);
        let after = Some(after.head());
        self.seal_from(after, Purpose::Erasure, key, &content, &plain, source)
    }

    /// Opens an erasure. Who may make one is the roll's business.
    ///
    /// # Errors
    ///
    /// The frame holds something else, or makes no sense.
    pub fn open_erasure(&self, frame: &Frame) -> Result<Erasure, OpenError> {
        if frame.header().vault != self.vault() {
            return Err(OpenError::OtherVault);
        }
        Erasure::read(frame)
    }
}
