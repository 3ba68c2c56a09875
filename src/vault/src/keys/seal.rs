//! Sealing payloads into frames, and opening them.

use super::{Keys, PersonKey, Proven};
use crate::frame::{Frame, FrameError, Header, LONGEST_PAYLOAD, Purpose, padding, signed_bytes};
use crate::ids::{FrameHash, Head, KeyId};
use crate::random::{NoRandomness, Source, System, draw};
use crate::secret::{Secret, TAG};
use ed25519_dalek::Signer;
use zeroize::Zeroizing;

/// Which key an entry is sealed under, or may be opened with.
#[derive(Clone, Copy)]
pub enum Under<'a> {
    /// The epoch's: an entry about nobody in particular.
    Epoch,
    /// A person's: an entry about that person.
    Person(&'a PersonKey),
}

/// Why nothing was sealed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SealError {
    /// No random nonce.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// A public key to which nothing can be sealed.
    #[error("a tablet's key is none, so nothing can be sealed to it")]
    Key,
    /// Longer than [`LONGEST_PAYLOAD`].
    #[error(
        "this is too long to be kept in one piece: {length} bytes, and the most is {LONGEST_PAYLOAD}"
    )]
    TooLong {
        /// Its length, in bytes.
        length: usize,
    },
}

/// Why a frame was not opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum OpenError {
    /// No frame at all.
    #[error(transparent)]
    Frame(#[from] FrameError),
    /// It belongs to another vault.
    #[error("it belongs to another vault")]
    OtherVault,
    /// It is under a key that is not at hand: another epoch's, or another person's.
    #[error("the key that it is under is not on this device")]
    UnknownKey,
    /// It holds something else than was asked for.
    #[error("it holds something else")]
    OtherPurpose,
    /// Its content was dropped, as it is when a person is erased.
    #[error("its content was erased")]
    Emptied,
    /// It doesn't open, or what it opens to is not what is written there. Which of the two is not told, to nobody.
    #[error("it can't be opened")]
    Opaque,
}

impl Keys {
    /// Seals an entry as the next frame of this device's log.
    ///
    /// Returns the frame and the proof to write after it with. If the frame does not come to be kept, drop both and go on
    /// with the proof that you had.
    ///
    /// # Errors
    ///
    /// A payload that is too long; no randomness.
    pub fn seal(
        &self,
        after: &Proven,
        under: Under<'_>,
        payload: &[u8],
    ) -> Result<(Frame, Proven), SealError> {
        let (id, content) = match under {
            Under::Epoch => (self.current().id, self.own_content(Purpose::Entry)),
            Under::Person(person) => (person.id(), person.content(self.device())),
        };
        let frame = self.seal_from(
            Some(after.head()),
            Purpose::Entry,
            id,
            &content,
            payload,
            &mut System,
        )?;
        let proven = Proven::after(&frame);
        Ok((frame, proven))
    }

    /// Opens an entry. Chain and signature are the log's business ([`Frame::verify`]), not looked at here.
    ///
    /// # Errors
    ///
    /// The frame is not an entry of this vault, is under another key than `under`, or doesn't open.
    pub fn open(&self, frame: &Frame, under: Under<'_>) -> Result<Zeroizing<Vec<u8>>, OpenError> {
        match under {
            Under::Epoch => self.open_epoch(frame, Purpose::Entry),
            Under::Person(person) => self.open_person(frame, person),
        }
    }

    /// Whether a frame is under an epoch's key, as far as its header says, and not under a person's.
    pub fn is_epoch(&self, frame: &Frame) -> bool {
        self.epoch_by_id(frame.header().key).is_some()
    }

    fn open_person(
        &self,
        frame: &Frame,
        person: &PersonKey,
    ) -> Result<Zeroizing<Vec<u8>>, OpenError> {
        self.expect(frame, Purpose::Entry)?;
        if frame.header().key != person.id() {
            return Err(OpenError::UnknownKey);
        }
        open_with(frame, &person.content(frame.device()))
    }

    pub(super) fn open_epoch(
        &self,
        frame: &Frame,
        purpose: Purpose,
    ) -> Result<Zeroizing<Vec<u8>>, OpenError> {
        self.expect(frame, purpose)?;
        let epoch = self
            .epoch(frame.header().epoch, frame.header().key)
            .ok_or(OpenError::UnknownKey)?;
        open_with(
            frame,
            &epoch
                .content(frame.device(), purpose)
                .ok_or(OpenError::OtherPurpose)?,
        )
    }

    fn expect(&self, frame: &Frame, purpose: Purpose) -> Result<(), OpenError> {
        if frame.header().vault != self.vault() {
            return Err(OpenError::OtherVault);
        }
        if frame.header().purpose == purpose {
            Ok(())
        } else {
            Err(OpenError::OtherPurpose)
        }
    }

    /// The content key of this device's own frames, under the current epoch.
    pub(crate) fn own_content(&self, purpose: Purpose) -> Secret {
        self.current()
            .content(self.device(), purpose)
            .expect("this version seals only purposes that it knows")
    }

    /// Seals under a content key, at a place in this device's log, with a nonce from `source`.
    pub(crate) fn seal_from(
        &self,
        after: Option<Head>,
        purpose: Purpose,
        key: KeyId,
        content: &Secret,
        payload: &[u8],
        source: &mut dyn Source,
    ) -> Result<Frame, SealError> {
        let epoch = self.current().number;
        self.seal_in(epoch, after, purpose, key, content, payload, source)
    }

    /// The same, with the number of an epoch that may be a new one.
    #[allow(
        clippy::too_many_arguments,
        reason = "each is one field of the header, or what it is sealed with"
    )]
    pub(crate) fn seal_in(
        &self,
        epoch: u32,
        after: Option<Head>,
        purpose: Purpose,
        key: KeyId,
        content: &Secret,
        payload: &[u8],
        source: &mut dyn Source,
    ) -> Result<Frame, SealError> {
        let padded = padding::pad(payload)
            .map(Zeroizing::new)
            .ok_or(SealError::TooLong {
                length: payload.len(),
            })?;
        let header = Header {
            vault: self.vault(),
            device: self.device(),
            sequence: after.map_or(1, |head| head.sequence + 1),
            previous: after.map_or(FrameHash::NONE, |head| head.hash),
            epoch,
            key,
            purpose,
            ciphertext_length: (padded.len() + TAG) as u32,
        };
        let nonce = draw(source)?;
        let ciphertext = content.seal(&nonce, &header.bytes(), &padded);
        Ok(Frame::assemble(&header, &nonce, &ciphertext, |hash| {
            self.signing.sign(&signed_bytes(hash)).to_bytes()
        }))
    }
}

pub(super) fn open_with(frame: &Frame, content: &Secret) -> Result<Zeroizing<Vec<u8>>, OpenError> {
    let body = frame.body().ok_or(OpenError::Emptied)?;
    let padded = content
        .open(&body.nonce, body.associated, body.ciphertext)
        .map_err(|_| OpenError::Opaque)?;
    padding::unpad(&padded)
        .map(|payload| Zeroizing::new(payload.to_vec()))
        .ok_or(OpenError::Opaque)
}
