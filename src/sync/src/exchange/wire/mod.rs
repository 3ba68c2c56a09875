//! Messages between a client and a relay, in CBOR (RFC 8949) with named fields.
//!
//! ```text
//! message    = { "version": 1, "body": request / answer }
//! request    = { "heads": {} } / { "pull": { "have": [* place] } } / { "push": { "frames": [1*500 bytes] } }
//!            / { "roll": {} } / { "state": { "statement": bytes } }
//!            / { "open": { "code": bytes, "statement": bytes } } / { "aside": { "after": place / null } }
//! answer     = { "heads": { "heads": [* shown] } } / { "page": page } / { "pushed": pushed }
//!            / { "roll": { "statements": [* bytes] } } / { "aside": { "frames": [* apart], "more": bool } }
//! apart      = { "why": "fork" / "removed", "frame": bytes }
//! page       = { "heads": [* shown], "runs": [* [1*500 bytes]], "forks": [* place], "more": bool }
//! pushed     = { "kept": { "head": head } } / { "gap": { "head": head / null } }
//!            / { "fork": { "sequence": uint } } / { "aside": { "head": head / null } }
//! head       = { "sequence": uint, "hash": 32 bytes }
//! place      = { "device": 16 bytes, "sequence": uint, "hash": 32 bytes }
//! shown      = { "key": 32 bytes, "sequence": uint, "hash": 32 bytes }
//! ```
//!
//! A byte string in `frames` and `runs` is a whole frame ([`vault::frame`]), a statement is one of the roll ([`vault::roll`]), a code is an invitation's 15 bytes. `shown` names a device by its public signing
//! key, of which its id is made. Fields that a reader doesn't know are passed over; a version that it doesn't know is
//! refused. A request is at most [`LONGEST_REQUEST`], an answer at most [`LONGEST_ANSWER`] bytes long, and no list of
//! devices has more than [`MOST_DEVICES`].

mod answer;
mod error;
mod raw;
mod remembered;
mod request;

pub use answer::{Answer, Asides, Page, Pushed, Shown};
pub use error::WireError;
pub use remembered::Remembered;
pub use request::Request;

use serde::de::{DeserializeOwned, IgnoredAny};
use serde::{Deserialize, Serialize};

/// The version that this code speaks.
pub const VERSION: u8 = 1;
/// The most bytes of a request: a run and what is around it.
pub const LONGEST_REQUEST: usize = 1024 * 1024 + 64 * 1024;
/// The most bytes of an answer: a page's frames, and every device's head.
pub const LONGEST_ANSWER: usize = 2 * 1024 * 1024;
/// The most statements of a roll.
pub const MOST_STATEMENTS: usize = 8192;
/// The most devices that a vault's messages may name.
pub const MOST_DEVICES: usize = 4096;

#[derive(Serialize, Deserialize)]
struct Message<B> {
    version: u8,
    body: B,
}

fn encode<B: Serialize>(body: B) -> Vec<u8> {
    let message = Message {
        version: VERSION,
        body,
    };
    let mut bytes = Vec::new();
    ciborium::into_writer(&message, &mut bytes).expect("writing to memory can't fail");
    bytes
}

fn decode<B: DeserializeOwned>(bytes: &[u8], most: usize) -> Result<B, WireError> {
    if bytes.len() > most {
        return Err(WireError::TooLong {
            length: bytes.len(),
            most,
        });
    }
    let mut rest = bytes;
    match ciborium::from_reader::<Message<B>, _>(&mut rest) {
        Ok(message) if message.version != VERSION => Err(WireError::Version(message.version)),
        Ok(_) if !rest.is_empty() => Err(WireError::Trailing(rest.len())),
        Ok(message) => Ok(message.body),
        Err(_) => Err(why(bytes)),
    }
}

/// A later version's body can't be read, but its version can.
fn why(bytes: &[u8]) -> WireError {
    match ciborium::from_reader::<Message<IgnoredAny>, _>(bytes) {
        Ok(message) if message.version != VERSION => WireError::Version(message.version),
        _ => WireError::Malformed,
    }
}
