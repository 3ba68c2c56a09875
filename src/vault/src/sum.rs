//! A sum over a whole file, so that a damaged one is told from one that says something wrong.

use crate::domains;
use sha2::{Digest, Sha256};

/// `SHA-256("lightround v1 carry sum" || 0 || bytes)`. It guards against accidents; signatures guard against people.
pub fn carry_sum(bytes: &[u8]) -> [u8; 32] {
    Sha256::new()
        .chain_update(domains::CARRY_SUM)
        .chain_update([0])
        .chain_update(bytes)
        .finalize()
        .into()
}
