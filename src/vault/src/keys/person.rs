//! A person's own key: everything written about that person is under it, so that dropping it erases that person.
//!
//! The payload of a person-key frame is CBOR: `{ "subject": 16 bytes, "key_id": 16 bytes, "key": 32 bytes }`. The frame is
//! the wrap: it is sealed under a key derived from the epoch key for nothing but wrapping person keys.

use super::{Keys, OpenError, Proven, SealError};
use crate::frame::{Frame, Purpose};
use crate::ids::{KeyId, Subject};
use crate::random::{NoRandomness, Source, System, draw};
use crate::secret::Secret;
use serde::{Deserialize, Serialize};
use zeroize::{Zeroize, ZeroizeOnDrop, Zeroizing};

/// A person's key. Its id stands in the clear in every frame that is under it; the key never leaves the crate.
pub struct PersonKey {
    pub(super) subject: Subject,
    pub(super) id: KeyId,
    pub(super) key: Secret,
}

#[derive(Serialize, Deserialize, Zeroize, ZeroizeOnDrop)]
struct Payload {
    #[zeroize(skip)]
    subject: Subject,
    #[zeroize(skip)]
    key_id: KeyId,
    #[serde(with = "serde_bytes")]
    key: [u8; 32],
}

impl PersonKey {
    /// Whose key it is.
    pub fn subject(&self) -> Subject {
        self.subject
    }

    /// Its id.
    pub fn id(&self) -> KeyId {
        self.id
    }
}

impl Keys {
    /// Makes a key for a person. It counts once [`Keys::seal_person_key`]'s frame is kept.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn make_person_key(&self, subject: Subject) -> Result<PersonKey, NoRandomness> {
        PersonKey::make(subject, &mut System)
    }

    /// Seals a person's key as the next frame of this device's log.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn seal_person_key(
        &self,
        after: &Proven,
        person: &PersonKey,
    ) -> Result<(Frame, Proven), SealError> {
        let content = self.own_content(Purpose::PersonKey);
        let frame = self.seal_from(
            Some(after.head()),
            Purpose::PersonKey,
            self.current().id,
            &content,
            &person.payload(),
            &mut System,
        )?;
        let proven = Proven::after(&frame);
        Ok((frame, proven))
    }

    /// Opens a person-key frame.
    ///
    /// # Errors
    ///
    /// The frame holds something else, is under a key that is not here, or doesn't open.
    pub fn open_person_key(&self, frame: &Frame) -> Result<PersonKey, OpenError> {
        let plain = self.open_epoch(frame, Purpose::PersonKey)?;
        let payload: Payload =
            ciborium::from_reader(plain.as_slice()).map_err(|_| OpenError::Opaque)?;
        Ok(PersonKey {
            subject: payload.subject,
            id: payload.key_id,
            key: Secret::from_bytes(payload.key),
        })
    }
}

impl PersonKey {
    pub(crate) fn make(subject: Subject, source: &mut dyn Source) -> Result<Self, NoRandomness> {
        Ok(Self {
            subject,
            id: KeyId::from_bytes(draw(source)?),
            key: Secret::make(source)?,
        })
    }

    /// The plain payload of its frame; only for sealing.
    pub(crate) fn payload(&self) -> Zeroizing<Vec<u8>> {
        let payload = Payload {
            subject: self.subject,
            key_id: self.id,
            key: *self.key.bytes(),
        };
        // Room for the whole at once, so that growing leaves no copy of the key behind.
        let mut bytes = Zeroizing::new(Vec::with_capacity(256));
        ciborium::into_writer(&payload, &mut *bytes).expect("writing to memory can't fail");
        bytes
    }
}
