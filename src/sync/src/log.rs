//! A device's log as it is read: is each frame the next one, and that device's own?

use crate::damage::Fault;
use crate::storage::StoredFrame;
use vault::frame::PublicKey;
use vault::{DeviceId, Frame, FrameHash, Head, VaultId};

/// Follows one device's log from its first frame on and says of each whether it is sound.
///
/// A damaged frame breaks nothing but itself: the frames after it are signed on their own, and are taken up again with
/// the next one that is sound.
#[derive(Debug)]
pub struct DeviceLog {
    vault: VaultId,
    device: DeviceId,
    key: Option<PublicKey>,
    /// The number that comes next.
    next: u64,
    /// The hash that the next frame must name; none after a damaged one, whose hash can't be trusted.
    previous: Option<FrameHash>,
}

/// What became of one kept frame.
#[derive(Debug)]
pub enum Admitted {
    /// Well-formed, in its place and signed.
    Sound(Frame),
    /// Signed, but it doesn't follow the frame before it: this device's log was continued twice.
    Unlinked(Frame),
    /// Not to be read.
    Faulty(Fault),
}

impl DeviceLog {
    /// The log of `device`, before its first frame. `key` is its public key, where that is known already.
    pub fn new(vault: VaultId, device: DeviceId, key: Option<PublicKey>) -> Self {
        Self {
            vault,
            device,
            key,
            next: 1,
            previous: Some(FrameHash::NONE),
        }
    }

    /// The log of the device with this key, sound up to and with `head`.
    pub fn resumed(vault: VaultId, key: PublicKey, head: Head) -> Self {
        Self {
            vault,
            device: key.device(),
            key: Some(key),
            next: head.sequence.saturating_add(1),
            previous: Some(head.hash),
        }
    }

    /// Its device's public key, where that is known.
    pub fn key(&self) -> Option<PublicKey> {
        self.key
    }

    /// The public key, where another source than the first frame has it.
    pub fn learn_key(&mut self, key: Option<PublicKey>) {
        self.key = self.key.or(key.filter(|key| key.device() == self.device));
    }

    /// Whose log it is.
    pub fn device(&self) -> DeviceId {
        self.device
    }

    /// The number that comes next.
    pub fn next(&self) -> u64 {
        self.next
    }

    /// The numbers that are missing before `sequence`, and goes on from there.
    pub fn skip_to(&mut self, sequence: u64) -> std::ops::Range<u64> {
        let missing = self.next..sequence;
        if !missing.is_empty() {
            self.next = sequence;
            self.previous = None;
        }
        missing
    }

    /// Whether the log, as far as it was followed, ends soundly with `head`.
    pub fn ends_with(&self, head: Head) -> bool {
        self.next == head.sequence.saturating_add(1) && self.previous == Some(head.hash)
    }

    /// Takes the frame kept under the next number. `key_of` tells the public key from a first frame, where it must be
    /// learnt from there.
    pub fn admit(
        &mut self,
        kept: StoredFrame,
        key_of: impl FnOnce(&Frame) -> Option<PublicKey>,
    ) -> Admitted {
        self.next = kept.sequence.saturating_add(1);
        let expected = self.previous.take();
        let frame = match self.genuine(kept, key_of) {
            Ok(frame) => frame,
            Err(fault) => return Admitted::Faulty(fault),
        };
        self.previous = Some(frame.hash());
        match expected {
            Some(hash) if hash != frame.header().previous => Admitted::Unlinked(frame),
            _ => Admitted::Sound(frame),
        }
    }

    fn genuine(
        &mut self,
        kept: StoredFrame,
        key_of: impl FnOnce(&Frame) -> Option<PublicKey>,
    ) -> Result<Frame, Fault> {
        let sequence = kept.sequence;
        let frame = Frame::parse(kept.bytes).map_err(Fault::Malformed)?;
        if frame.device() != self.device
            || frame.sequence() != sequence
            || frame.header().vault != self.vault
        {
            return Err(Fault::Misplaced);
        }
        if self.key.is_none() {
            self.key = key_of(&frame);
        }
        let key = self.key.as_ref().ok_or(Fault::UnknownWriter)?;
        frame.verify(key).map_err(|_| Fault::Unsigned)?;
        Ok(frame)
    }
}
