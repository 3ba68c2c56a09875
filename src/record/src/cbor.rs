//! The one door to and from CBOR: bounded, typed, and never a panic on outside bytes.

use ciborium::de::Error;
use serde::{Serialize, de::DeserializeOwned};

use crate::error::ReadError;

/// The longest an entry or a draft may be: what one push to a relay may carry.
const LONGEST: usize = 1 << 20;

/// Maps and arrays may stand in one another so deep; what this project writes stays under a dozen.
const DEEPEST: usize = 32;

pub fn write<T: Serialize>(value: &T) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(512);
    ciborium::into_writer(value, &mut bytes)
        .expect("plain structs with text keys always encode, and memory does not refuse a write");
    bytes
}

pub fn read<T: DeserializeOwned>(bytes: &[u8]) -> Result<T, ReadError> {
    if bytes.len() > LONGEST {
        return Err(ReadError::TooLong {
            bytes: bytes.len(),
            limit: LONGEST,
        });
    }
    let mut rest = bytes;
    let value = ciborium::de::from_reader_with_recursion_limit(&mut rest, DEEPEST).map_err(why)?;
    match rest.len() {
        0 => Ok(value),
        bytes => Err(ReadError::Trailing { bytes }),
    }
}

fn why<E>(error: Error<E>) -> ReadError {
    match error {
        Error::Io(_) => ReadError::NotCbor { at: None },
        Error::Syntax(at) => ReadError::NotCbor { at: Some(at) },
        Error::Semantic(_, why) => ReadError::Envelope { why },
        Error::RecursionLimitExceeded => ReadError::TooDeep,
    }
}
