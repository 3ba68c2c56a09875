//! Frames to check a storage with.

use super::Breach;
use crate::storage::Append;
use vault::{DeviceId, Frame, Head, KeyFile, SlotKey, StretchParams, Under, found_vault};

/// A key file and the first frames of two logs.
pub struct Sample {
    pub key_file: KeyFile,
    /// Seven frames of one device, the first of which belongs to the key file.
    pub log: Vec<Frame>,
    /// Two frames of another device.
    pub other: Vec<Frame>,
}

impl Sample {
    pub fn make() -> Result<Self, Breach> {
        let (key_file, log) = device(7)?;
        let (_, other) = device(2)?;
        Ok(Self {
            key_file,
            log,
            other,
        })
    }

    pub fn device(&self) -> DeviceId {
        self.key_file.device()
    }
}

/// An append of frames after `expected` that drops no drafts.
pub fn append(frames: &[Frame], expected: Option<Head>) -> Append<'_> {
    Append {
        device: frames[0].device(),
        expected,
        frames,
        drop_drafts: &[],
    }
}

fn device(length: usize) -> Result<(KeyFile, Vec<Frame>), Breach> {
    let failed = |error: &dyn std::error::Error| Breach::Sample(error.to_string());
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
    while log.len() < length {
        let (frame, next) = keys
            .seal(&proven, Under::Epoch, b"entry")
            .map_err(|error| failed(&error))?;
        log.push(frame);
        proven = next;
    }
    Ok((key_file, log))
}
