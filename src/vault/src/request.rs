//! Requests to a relay, signed by the device that asks, so that a relay needs no sessions and no passwords.
//!
//! What is signed:
//!
//! ```text
//! "lightround v1 request signature" || 0 || time u64 BE || nonce (16) || SHA-256(body) (32) || method || " " || path
//! ```
//!
//! The time is in milliseconds since 1970 by the relay's clock as the device knows it, the method is in capitals, and the
//! path is everything after the host, as it is sent. The path ends the message and a method holds no space, so no two
//! requests have the same signed bytes: a signature can't be moved to another path, another method or another body.
//!
//! In HTTP it stands in the `authorization` field (RFC 9110, section 11.6.2), numbers in decimal and bytes in base 16:
//!
//! ```text
//! Lightround key=<64 digits>, time=<decimal>, nonce=<32 digits>, signature=<128 digits>
//! ```

use crate::domains;
use crate::frame::PublicKey;
use crate::keys::Keys;
use crate::random::{NoRandomness, random};
use ed25519_dalek::Signer;
use sha2::{Digest, Sha256};
use std::fmt;
use std::str::FromStr;

/// The scheme's name in HTTP.
pub const SCHEME: &str = "Lightround";

/// The field is missing something, or holds something else.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the request doesn't say who asks in the way that is agreed")]
pub struct NotVouched;

/// What is asked of a relay, as far as it is signed.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// `POST` and its like, in capitals.
    pub method: &'a str,
    /// Everything after the host.
    pub path: &'a str,
    /// The body, empty where there is none.
    pub body: &'a [u8],
}

/// Who asks, and the proof of it. None of it is secret.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Vouched {
    /// The key of the device that asks.
    pub key: PublicKey,
    /// When it asks: milliseconds since 1970.
    pub time: u64,
    /// Random, so that the same request asked twice is two requests.
    pub nonce: [u8; 16],
    /// The signature over all of it.
    pub signature: [u8; 64],
}

impl Keys {
    /// Signs a request that is made now.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn vouch(&self, asked: Asked<'_>, time: u64) -> Result<Vouched, NoRandomness> {
        let nonce = random()?;
        let signature = self
            .signing()
            .sign(&signed_bytes(asked, time, &nonce))
            .to_bytes();
        Ok(Vouched {
            key: self.public(),
            time,
            nonce,
            signature,
        })
    }
}

impl Vouched {
    /// Whether this very request was signed by the key that it names. Time and nonce are the relay's to judge.
    pub fn is_for(&self, asked: Asked<'_>) -> bool {
        self.key.signed(
            &signed_bytes(asked, self.time, &self.nonce),
            &self.signature,
        )
    }
}

impl fmt::Display for Vouched {
    /// The field of HTTP.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            out,
            "{SCHEME} key={}, time={}, nonce={}, signature={}",
            digits(&self.key.bytes()),
            self.time,
            digits(&self.nonce),
            digits(&self.signature)
        )
    }
}

impl FromStr for Vouched {
    type Err = NotVouched;

    fn from_str(field: &str) -> Result<Self, NotVouched> {
        let rest = field.strip_prefix(SCHEME).ok_or(NotVouched)?;
        let parts: Vec<&str> = rest.split(',').map(str::trim).collect();
        let [key, time, nonce, signature] = parts[..] else {
            return Err(NotVouched);
        };
        let read = || {
            Some(Self {
                key: PublicKey::from_bytes(&bytes(named(key, "key")?)?)?,
                time: named(time, "time")?.parse().ok()?,
                nonce: bytes(named(nonce, "nonce")?)?,
                signature: bytes(named(signature, "signature")?)?,
            })
        };
        read().ok_or(NotVouched)
    }
}

fn named<'a>(part: &'a str, name: &str) -> Option<&'a str> {
    part.strip_prefix(name)?.strip_prefix('=')
}

fn digits(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |digits, byte| {
        digits + &format!("{byte:02x}")
    })
}

fn bytes<const N: usize>(digits: &str) -> Option<[u8; N]> {
    let mut bytes = [0; N];
    let all = digits.bytes().all(|digit| digit.is_ascii_hexdigit());
    if digits.len() != 2 * N || !all {
        return None;
    }
    for (at, byte) in bytes.iter_mut().enumerate() {
        *byte = u8::from_str_radix(&digits[2 * at..2 * at + 2], 16).ok()?;
    }
    Some(bytes)
}

fn signed_bytes(asked: Asked<'_>, time: u64, nonce: &[u8; 16]) -> Vec<u8> {
    domains::join(
        domains::REQUEST_SIGNATURE,
        &[
            &time.to_be_bytes(),
            nonce,
            &Sha256::digest(asked.body),
            asked.method.as_bytes(),
            b" ",
            asked.path.as_bytes(),
        ],
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::devices;

    const ASKED: Asked<'_> = Asked {
        method: "POST",
        path: "/relay/v1/pull",
        body: b"body",
    };

    #[test]
    fn a_signature_is_for_one_request_and_no_other() {
        let device = devices(1, 1).remove(0);
        let vouched = device.keys.vouch(ASKED, 7).unwrap();
        assert!(vouched.is_for(ASKED));
        for other in [
            Asked {
                method: "GET",
                ..ASKED
            },
            Asked {
                path: "/relay/v1/push",
                ..ASKED
            },
            Asked {
                path: "/relay/v1/pull?",
                ..ASKED
            },
            Asked {
                body: b"bodY",
                ..ASKED
            },
            Asked { body: b"", ..ASKED },
        ] {
            assert!(!vouched.is_for(other), "{other:?}");
        }
    }

    #[test]
    fn a_field_is_read_as_it_was_written_and_nothing_else_is() {
        let vouched = devices(1, 1)[0].keys.vouch(ASKED, 7).unwrap();
        let field = vouched.to_string();
        assert_eq!(field.parse(), Ok(vouched));
        for wrong in [
            String::new(),
            SCHEME.to_owned(),
            field.replace("Lightround", "Basic"),
            field.replace("time=7", "time=-7"),
            field.replace("time=7, ", ""),
            field.replace("nonce=", "nonce=0"),
            field.replace("key=", "key=+"),
            field[..field.len() - 1].to_owned(),
            format!("{field}, more=1"),
            field.replace("key=", "schlüssel="),
        ] {
            assert_eq!(wrong.parse::<Vouched>(), Err(NotVouched), "{wrong}");
        }
    }

    #[test]
    fn neither_time_nor_nonce_nor_key_can_be_changed() {
        let [one, other] = devices(1, 2).try_into().ok().unwrap();
        let vouched = one.keys.vouch(ASKED, 7).unwrap();
        let key = other.keys.public();
        let mut signature = vouched.signature;
        signature[3] ^= 1;
        for changed in [
            Vouched { time: 8, ..vouched },
            Vouched {
                nonce: [0; 16],
                ..vouched
            },
            Vouched { key, ..vouched },
            Vouched {
                signature,
                ..vouched
            },
        ] {
            assert!(!changed.is_for(ASKED));
        }
    }
}
