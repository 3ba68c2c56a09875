//! Frames to keep. They are well formed, follow one another, and are sealed and signed by nobody: whoever only keeps frames
//! looks into none, and so they can have whatever ids, sizes and headers a case needs, the same every time.

use vault::frame::Header;
use vault::{DeviceId, Frame, FrameHash, Head, KeyId, Purpose, VaultId};

/// Bytes of the smallest class of what is sealed.
pub const SMALLEST: usize = 256;
/// Bytes of the tag, which are counted with the ciphertext.
const TAG: usize = 16;

/// A vault.
#[derive(Clone, Copy)]
pub struct Vault {
    pub id: VaultId,
}

impl Vault {
    /// The vault of the case of this number.
    pub fn numbered(case: usize) -> Self {
        Self {
            id: VaultId::from_bytes((case as u128 + 1).to_be_bytes()),
        }
    }

    /// A device whose id has this byte throughout.
    pub fn device(self, byte: u8) -> Device {
        self.device_of([byte; 16])
    }

    pub fn device_of(self, id: [u8; 16]) -> Device {
        Device {
            vault: self.id,
            id: DeviceId::from_bytes(id),
        }
    }
}

/// A device of a vault.
#[derive(Clone, Copy)]
pub struct Device {
    vault: VaultId,
    pub id: DeviceId,
}

impl Device {
    /// So many frames from the first on.
    pub fn log(self, frames: usize) -> Vec<Frame> {
        let mut log: Vec<Frame> = Vec::with_capacity(frames);
        for at in 0..frames {
            log.push(self.frame(head(&log), SMALLEST, at as u8));
        }
        log
    }

    /// A frame after `before`: so many bytes are sealed in it, and its body has this byte throughout.
    pub fn frame(self, before: Option<Head>, class: usize, byte: u8) -> Frame {
        let header = self.header(before, class);
        framed(&header, &vec![byte; body(class)])
    }

    /// The header of such a frame.
    pub fn header(self, before: Option<Head>, class: usize) -> Header {
        Header {
            vault: self.vault,
            device: self.id,
            sequence: before.map_or(0, |head| head.sequence) + 1,
            previous: before.map_or(FrameHash::NONE, |head| head.hash),
            epoch: 1,
            key: KeyId::from_bytes([3; 16]),
            purpose: Purpose::Entry,
            ciphertext_length: (class + TAG) as u32,
        }
    }
}

/// Bytes of a frame after its header, where so many are sealed in it: nonce, ciphertext, tag and signature.
pub const fn body(class: usize) -> usize {
    24 + class + TAG + 64
}

/// A frame of a header and what follows that.
pub fn framed(header: &Header, body: &[u8]) -> Frame {
    let bytes = [header.bytes().as_slice(), body].concat();
    Frame::parse(bytes).expect("the header says how long the body is")
}

/// The head of a log that ends with these frames.
pub fn head(log: &[Frame]) -> Option<Head> {
    log.last().map(Frame::head)
}
