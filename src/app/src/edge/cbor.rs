//! The little that the app itself writes down, as CBOR.

use serde::Serialize;
use serde::de::DeserializeOwned;

/// A value's bytes.
pub fn write<T: Serialize>(value: &T) -> Vec<u8> {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).expect("a Vec takes whatever is written to it");
    bytes
}

/// Reads a value back; none where the bytes are another's.
pub fn read<T: DeserializeOwned>(bytes: &[u8]) -> Option<T> {
    ciborium::from_reader(bytes).ok()
}
