//! Where everything stands in a frame, and how long anything may be.

use std::ops::Range;

/// The format that this code writes and reads.
pub const FORMAT: u8 = 1;
/// XChaCha20-Poly1305, SHA-256, Ed25519.
pub const ALGORITHM: u8 = 1;

pub const VAULT: Range<usize> = 2..18;
pub const DEVICE: Range<usize> = 18..34;
pub const SEQUENCE: Range<usize> = 34..42;
pub const PREVIOUS: Range<usize> = 42..74;
pub const EPOCH: Range<usize> = 74..78;
pub const KEY: Range<usize> = 78..94;
pub const PURPOSE: usize = 94;
pub const LENGTH: Range<usize> = 95..99;
/// Bytes of the header, which is the associated data.
pub const HEADER: usize = 99;
pub const NONCE: Range<usize> = 99..123;
/// Where the ciphertext begins.
pub const CIPHERTEXT: usize = 123;
/// Bytes of the signature, which ends a frame.
pub const SIGNATURE: usize = 64;

/// The fixed-length field of `bytes` at `range`.
///
/// Callers have checked that `bytes` is at least a header long.
pub fn field<const N: usize>(bytes: &[u8], range: Range<usize>) -> [u8; N] {
    let mut field = [0; N];
    field.copy_from_slice(&bytes[range]);
    field
}
