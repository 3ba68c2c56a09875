//! A sum over a whole file, so that a damaged one is told from one that says something wrong.

use crate::domains;
use sha2::{Digest, Sha256};

/// `SHA-256("lightround v1 carry sum" || 0 || bytes)`. It guards against accidents; signatures guard against people.
pub fn carry_sum(bytes: &[u8]) -> [u8; 32] {
    let mut sum = CarrySum::begin();
    sum.add(bytes);
    sum.end()
}

/// [`carry_sum`] of a file that is read piece by piece.
pub struct CarrySum(Sha256);

impl CarrySum {
    /// The sum of nothing yet.
    pub fn begin() -> Self {
        let begun = Sha256::new().chain_update(domains::CARRY_SUM);
        Self(begun.chain_update([0]))
    }

    /// Takes the next bytes.
    pub fn add(&mut self, bytes: &[u8]) {
        self.0.update(bytes);
    }

    /// The sum of everything that was taken.
    pub fn end(self) -> [u8; 32] {
        self.0.finalize().into()
    }
}
