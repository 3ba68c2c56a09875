//! What a client keeps between two rounds. It never travels.

use super::raw::{RawPlace, raw_vector, vector};
use super::{WireError, decode, encode};
use crate::exchange::Vector;
use serde::{Deserialize, Serialize};

/// The most bytes of it that are read: a head of every device that a vault may have.
const LONGEST: usize = 512 * 1024;

/// What a client knows of its relay. Keep it sealed and durably; give `seen` to [`crate::exchange::Exchange::new`].
///
/// ```text
/// remembered = { "version": 1, "body": { "seen": [* place], "last": uint / null } }
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Remembered {
    /// What the relay is known to have held.
    pub seen: Vector,
    /// When everything was exchanged last: milliseconds since 1970 by this device's clock.
    pub last: Option<u64>,
}

#[derive(Serialize, Deserialize)]
struct Raw {
    seen: Vec<RawPlace>,
    last: Option<u64>,
}

impl Remembered {
    /// The bytes to keep.
    pub fn to_bytes(&self) -> Vec<u8> {
        encode(Raw {
            seen: raw_vector(&self.seen),
            last: self.last,
        })
    }

    /// Reads them again.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with them.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, WireError> {
        let raw: Raw = decode(bytes, LONGEST)?;
        Ok(Self {
            seen: vector(raw.seen)?,
            last: raw.last,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use vault::{DeviceId, FrameHash, Head};

    #[test]
    fn it_is_read_as_it_was_kept_and_nothing_else_is() {
        let head = Head {
            sequence: 7,
            hash: FrameHash::from_bytes([7; 32]),
        };
        let remembered = Remembered {
            seen: [(DeviceId::from_bytes([1; 16]), head)]
                .into_iter()
                .collect(),
            last: Some(1_700_000_000_000),
        };
        let bytes = remembered.to_bytes();
        assert_eq!(Remembered::from_bytes(&bytes), Ok(remembered));
        for length in 0..bytes.len() {
            assert!(
                Remembered::from_bytes(&bytes[..length]).is_err(),
                "{length}"
            );
        }
    }
}
