//! The first frame of a device's log: who it is.
//!
//! Its payload is CBOR: `{ "signing": 32 bytes, "exchange": 32 bytes, "name": text }`. It proves itself: the device id in
//! its header is the hash of the signing key inside, its signature is that key's, and only a holder of the epoch key could
//! have sealed it. Another one later in the same log tells a new name; of several, the newest holds.

use super::{Keys, OpenError, Proven, SealError};
use crate::frame::{Frame, PublicKey, Purpose};
use crate::ids::Head;
use crate::random::{Source, System};
use serde::{Deserialize, Serialize};

/// What a device says of itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Introduction {
    /// Its public signing key.
    pub signing: PublicKey,
    /// Its public X25519 key.
    pub exchange: [u8; 32],
    /// What it is called.
    pub name: String,
}

#[derive(Serialize, Deserialize)]
struct Payload {
    #[serde(with = "serde_bytes")]
    signing: [u8; 32],
    #[serde(with = "serde_bytes")]
    exchange: [u8; 32],
    name: String,
}

impl Keys {
    /// Begins this device's log with frame 1. Only for a log that has never been written to.
    ///
    /// # Errors
    ///
    /// No randomness; a name of half a megabyte.
    pub fn begin(&self, name: &str) -> Result<(Frame, Proven), SealError> {
        let frame = self.begin_from(name, &mut System)?;
        let proven = Proven::after(&frame);
        Ok((frame, proven))
    }

    /// Introduces this device anew, under another name.
    ///
    /// # Errors
    ///
    /// As [`Keys::begin`].
    pub fn introduce_again(
        &self,
        after: &Proven,
        name: &str,
    ) -> Result<(Frame, Proven), SealError> {
        let frame = self.introduction(Some(after.head()), name, &mut System)?;
        let proven = Proven::after(&frame);
        Ok((frame, proven))
    }

    pub(crate) fn begin_from(
        &self,
        name: &str,
        source: &mut dyn Source,
    ) -> Result<Frame, SealError> {
        self.introduction(None, name, source)
    }

    fn introduction(
        &self,
        after: Option<Head>,
        name: &str,
        source: &mut dyn Source,
    ) -> Result<Frame, SealError> {
        let payload = Payload {
            signing: self.public().bytes(),
            exchange: self.exchange_public(),
            name: name.to_owned(),
        };
        let mut plain = Vec::new();
        ciborium::into_writer(&payload, &mut plain).expect("writing to memory can't fail");
        let content = self.own_content(Purpose::Introduction);
        self.seal_from(
            after,
            Purpose::Introduction,
            self.current().id,
            &content,
            &plain,
            source,
        )
    }

    /// Opens a device's introduction and checks that it is that device's own.
    ///
    /// # Errors
    ///
    /// The frame holds something else, is under a key that is not here, doesn't open, or is not signed by the key inside.
    pub fn open_introduction(&self, frame: &Frame) -> Result<Introduction, OpenError> {
        let plain = self.open_epoch(frame, Purpose::Introduction)?;
        let payload: Payload =
            ciborium::from_reader(plain.as_slice()).map_err(|_| OpenError::Opaque)?;
        let signing = PublicKey::from_bytes(&payload.signing).ok_or(OpenError::Opaque)?;
        frame.verify(&signing).map_err(|_| OpenError::Opaque)?;
        Ok(Introduction {
            signing,
            exchange: payload.exchange,
            name: payload.name,
        })
    }
}
