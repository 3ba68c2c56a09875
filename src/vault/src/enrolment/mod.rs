//! Enrolment: how another device comes into a vault.
//!
//! Four messages, each shown as a picture for the other's camera or typed ([`Message::lines`]), and no clock, network or
//! storage:
//!
//! ```text
//! new device                                    a lead
//! Newcomer::new        -- 1 request -->         Host::receive      its keys, its name, a commitment to a nonce
//! Newcomer::meet       <-- 2 offer ---          (Host)             the vault, the lead's key, the lead's nonce
//! (Acquainted)         -- 3 reveal -->          Host::check        the nonce
//!        both show the same four words; the lead says that they are the same
//! Acquainted::take     <-- 4 packet --          Checked::admit     sealed: epoch keys, roll, role, relay
//! ```
//!
//! # The check phrase
//!
//! Four words of the project's 1,295, drawn from a hash over all that was said until then: 41 bits. Whoever stands between
//! the two must pass off keys of his own as each one's to the other, and have both show the same phrase. He can't choose
//! it: to the lead, he has committed to his nonce before he learns the lead's; to the new device, he has named his nonce
//! before it reveals its own, of which he knows only the hash. Each of the two phrases then depends on a nonce of 128
//! random bits that came after his last choice, so they agree with a chance of 1 in 1,295^4, about 2.8 million million, in
//! each attempt, and an attempt that fails is seen by two people. Without the commitment he could try keys until the
//! phrases agree, and 41 bits would be far too few.
//!
//! # Formats
//!
//! | message | bytes    | what                                                              |
//! |---------|----------|-------------------------------------------------------------------|
//! | all     | 0        | format: 1                                                         |
//! |         | 1        | which message: 1 to 4                                             |
//! | request | 2..34    | the new device's public signing key                               |
//! |         | 34..66   | its public X25519 key                                             |
//! |         | 66..98   | commitment: `SHA-256("lightround v1 enrolment commitment" || 0 || nonce)` |
//! |         | 98       | length of its name, 1 to 60                                       |
//! |         | 99..     | its name, UTF-8                                                   |
//! | offer   | 2..18    | vault id                                                          |
//! |         | 18..50   | the lead's public signing key                                     |
//! |         | 50..66   | the lead's nonce                                                  |
//! | reveal  | 2..18    | the new device's nonce                                            |
//! | packet  | 2..34    | HPKE's encapsulated key                                           |
//! |         | 34..98   | the lead's signature                                              |
//! |         | 98..     | HPKE's ciphertext                                                 |
//!
//! ```text
//! dialogue = SHA-256("lightround v1 enrolment dialogue" || 0 || SHA-256(request) || SHA-256(offer) || SHA-256(reveal))
//! words      = SHA-256("lightround v1 enrolment phrase" || 0 || dialogue), each 8 bytes (u64) modulo 1,295
//! HPKE       = base mode, to the new device's X25519 key, info "lightround v1 enrolment packet" || 0 || dialogue,
//!              associated data: bytes 0..2 of the packet
//! signature  = Ed25519("lightround v1 enrolment signature" || 0 || dialogue || bytes 2..34 || SHA-256(ciphertext))
//! plaintext  = CBOR: { "epochs": [ { "number": u32, "key_id": 16 bytes, "roll": u64, "key": 32 bytes } ],
//!                      "roll": [ bytes ], "recovery": 32 bytes / null, "relay": text / null }
//! ```
//!
//! The nonce of the reveal makes the dialogue one of this enrolment only, so a packet of another one, or for another
//! device, neither opens nor is signed.

mod error;
mod host;
mod message;
mod newcomer;
mod packet;
#[cfg(test)]
mod tests;

pub use error::EnrolmentError;
pub use host::{Checked, Host, Terms};
pub use message::{Message, Offer, Request, Reveal};
pub use newcomer::{Acquainted, Arrival, Newcomer, Rejected};
pub use packet::Packet;

use crate::domains;
use crate::phrase;
use sha2::{Digest, Sha256};

/// Words of a check phrase.
const WORDS: usize = 4;
/// Bytes of a nonce.
const NONCE: usize = 16;

/// Everything that was said before the packet, as one hash.
fn dialogue(request: &Request, offer: &Offer, reveal: &Reveal) -> [u8; 32] {
    let said = [request.bytes(), offer.bytes(), reveal.bytes()].map(Sha256::digest);
    hash(domains::ENROLMENT_DIALOGUE, &[&said[0], &said[1], &said[2]])
}

/// What both devices show.
fn check_phrase(dialogue: &[u8; 32]) -> String {
    let drawn = hash(domains::ENROLMENT_PHRASE, &[dialogue]);
    let words = drawn.chunks(32 / WORDS).map(|eight| {
        let number = eight
            .iter()
            .fold(0, |number: u64, byte| number << 8 | u64::from(*byte));
        phrase::word(number)
    });
    words.collect::<Vec<_>>().join(" ")
}

fn commitment(nonce: &[u8; NONCE]) -> [u8; 32] {
    hash(domains::ENROLMENT_COMMITMENT, &[nonce])
}

fn hash(domain: &str, parts: &[&[u8]]) -> [u8; 32] {
    Sha256::digest(domains::join(domain, parts)).into()
}
