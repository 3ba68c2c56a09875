//! Frames to try a storage with.

use super::Breach;
use crate::exchange::MOST_FRAMES;
use crate::storage::{Append, Storage, StoredFrame};
use vault::{
    DeviceId, DraftName, Frame, FrameHash, Head, KeyFile, SlotKey, StretchParams, Under,
    found_vault,
};

/// The frames to try a storage with could not be made.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("there is nothing to try the storage with: {0}")]
pub struct NoSample(String);

/// A key file and the first frames of three logs.
pub struct Sample {
    pub key_file: Vec<u8>,
    /// Seven frames of one device, the first of which belongs to the key file.
    pub log: Vec<Frame>,
    /// Two frames of another device.
    pub other: Vec<Frame>,
    /// More frames than a run has, and than a byte can number.
    pub long: Vec<Frame>,
}

impl Sample {
    pub fn make() -> Result<Self, NoSample> {
        let entries = |count| vec![b"entry".as_slice(); count];
        let (key_file, log) = device(&entries(6))?;
        Ok(Self {
            key_file: key_file.to_bytes(),
            log,
            other: device(&entries(1))?.1,
            long: device(&entries(MOST_FRAMES))?.1,
        })
    }

    pub fn device(&self) -> DeviceId {
        self.log[0].device()
    }

    /// The head of the first log after so many frames.
    pub fn head(&self, frames: usize) -> Option<Head> {
        frames.checked_sub(1).map(|last| self.log[last].head())
    }

    /// Founds the vault and keeps what comes after the first frame, up to so many.
    pub async fn found<S: Storage>(&self, storage: &S, frames: usize) -> Result<(), Breach> {
        storage.found(&self.key_file, &self.log[0]).await?;
        if frames > 1 {
            let rest = append(&self.log[1..frames], self.head(1));
            storage.append(rest).await?;
        }
        Ok(())
    }
}

/// A head after two frames that is none of any log here.
pub const FORKED: Head = Head {
    sequence: 2,
    hash: FrameHash::NONE,
};

/// An append of frames after `expected` that drops no drafts.
pub fn append(frames: &[Frame], expected: Option<Head>) -> Append<'_> {
    Append {
        device: frames[0].device(),
        expected,
        frames,
        drop_drafts: &[],
    }
}

/// The frames as a storage gives them.
pub fn kept(frames: &[Frame]) -> Vec<StoredFrame> {
    frames
        .iter()
        .map(|frame| StoredFrame {
            sequence: frame.sequence(),
            bytes: frame.bytes().to_vec(),
        })
        .collect()
}

/// A draft's name.
pub fn name(byte: u8) -> DraftName {
    DraftName::from_bytes([byte; 16])
}

/// A device's key file, its introduction and an entry for each payload.
fn device(payloads: &[&[u8]]) -> Result<(KeyFile, Vec<Frame>), NoSample> {
    let failed = |error: &dyn std::error::Error| NoSample(error.to_string());
    let params = StretchParams {
        salt: [0; 16],
        memory_kib: 8192,
        passes: 1,
        lanes: 1,
    };
    let (key_file, keys) = found_vault(&SlotKey::from_bytes([1; 32]), params, "sample")
        .map_err(|error| failed(&error))?;
    let (first, mut proven) = keys.begin("sample").map_err(|error| failed(&error))?;
    let mut log = vec![first];
    for payload in payloads {
        let (frame, next) = keys
            .seal(&proven, Under::Epoch, payload)
            .map_err(|error| failed(&error))?;
        log.push(frame);
        proven = next;
    }
    Ok((key_file, log))
}
