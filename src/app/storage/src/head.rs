//! Keys and heads as bytes.

use sync::StorageError;
use vault::{DeviceId, FrameHash, Head};

/// Device, then number, big-endian, so that a log's frames lie in order.
pub fn frame_key(device: DeviceId, sequence: u64) -> Vec<u8> {
    [device.as_bytes().as_slice(), &sequence.to_be_bytes()].concat()
}

/// The number in a frame's key.
pub fn sequence_of(device: DeviceId, key: &[u8]) -> Result<u64, StorageError> {
    let number = key
        .get(16..)
        .and_then(|rest| rest.try_into().ok())
        .map(u64::from_be_bytes);
    number.ok_or(StorageError::Damaged {
        device,
        sequence: 0,
    })
}

/// Number, then hash.
pub fn head_value(head: Head) -> Vec<u8> {
    [head.sequence.to_be_bytes().as_slice(), head.hash.as_bytes()].concat()
}

/// Reads [`head_value`] back.
pub fn head_from(device: DeviceId, value: &[u8]) -> Result<Head, StorageError> {
    let number = value
        .get(..8)
        .and_then(|part| part.try_into().ok())
        .map(u64::from_be_bytes);
    let hash = value
        .get(8..)
        .and_then(|part| part.try_into().ok())
        .map(FrameHash::from_bytes);
    match (number, hash) {
        (Some(sequence), Some(hash)) => Ok(Head { sequence, hash }),
        _ => Err(StorageError::Damaged {
            device,
            sequence: 0,
        }),
    }
}
