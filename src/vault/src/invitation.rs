//! Invitations: one-time codes with which a relay lets somebody open a vault on it.
//!
//! A code is 15 random bytes, written as six groups of four signs of an alphabet without look-alikes. A relay keeps only
//! its hash, `SHA-256("lightround v1 invitation" || 0 || 15 bytes)`.

use crate::domains;
use crate::random::{NoRandomness, random};
use crate::signs::ALPHABET;
use sha2::{Digest, Sha256};
use std::fmt;
use std::str::FromStr;

/// Bytes of a code.
const BYTES: usize = 15;
/// Signs of a code, without the hyphens.
const SIGNS: usize = 24;
/// Signs of a group.
const GROUP: usize = 4;

/// A code. Whoever has it may open one vault.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Invitation([u8; BYTES]);

/// What somebody typed is no code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "an invitation is six groups of four letters and digits, as in 7G2K-0DQM-8XRA-V5TN-3BHC-94WE"
)]
pub struct NoInvitation;

impl Invitation {
    /// A new code.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn make() -> Result<Self, NoRandomness> {
        random().map(Self)
    }

    /// The code that these bytes are.
    pub const fn from_bytes(bytes: [u8; BYTES]) -> Self {
        Self(bytes)
    }

    /// Its bytes.
    pub const fn bytes(&self) -> [u8; BYTES] {
        self.0
    }

    /// What a relay keeps of it.
    pub fn hash(&self) -> [u8; 32] {
        Sha256::digest(domains::join(domains::INVITATION, &[&self.0])).into()
    }
}

impl fmt::Display for Invitation {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let bits = self
            .0
            .iter()
            .fold(0_u128, |bits, byte| bits << 8 | u128::from(*byte));
        for sign in 0..SIGNS {
            if sign > 0 && sign % GROUP == 0 {
                out.write_str("-")?;
            }
            let five = (bits >> (5 * (SIGNS - 1 - sign))) & 31;
            write!(out, "{}", char::from(ALPHABET[five as usize]))?;
        }
        Ok(())
    }
}

impl FromStr for Invitation {
    type Err = NoInvitation;

    /// Reads a code with or without hyphens and spaces, in capitals or not.
    fn from_str(text: &str) -> Result<Self, NoInvitation> {
        let signs = text.bytes().filter(|sign| !matches!(sign, b'-' | b' '));
        let (mut bits, mut count) = (0_u128, 0);
        for sign in signs {
            let five = ALPHABET
                .iter()
                .position(|known| *known == sign.to_ascii_uppercase())
                .ok_or(NoInvitation)?;
            count += 1;
            if count > SIGNS {
                return Err(NoInvitation);
            }
            bits = bits << 5 | five as u128;
        }
        let mut bytes = [0; BYTES];
        bytes.copy_from_slice(&bits.to_be_bytes()[1..]);
        (count == SIGNS).then_some(Self(bytes)).ok_or(NoInvitation)
    }
}

impl fmt::Debug for Invitation {
    /// It is a secret until it is used.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("Invitation").finish_non_exhaustive()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_read_as_it_was_written_and_as_people_type_it() {
        for _ in 0..50 {
            let code = Invitation::make().unwrap();
            let written = code.to_string();
            assert_eq!(written.len(), 29);
            assert_eq!(written.parse(), Ok(code));
            assert_eq!(written.to_lowercase().replace('-', " ").parse(), Ok(code));
        }
        // Computed by hand: five bits a sign, the first sign the highest.
        assert_eq!(
            Invitation([0; 15]).to_string(),
            "0000-0000-0000-0000-0000-0000"
        );
        assert_eq!(
            Invitation([255; 15]).to_string(),
            "ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ"
        );
        let mut one = [0; 15];
        one[14] = 33;
        assert_eq!(Invitation(one).to_string(), "0000-0000-0000-0000-0000-0011");
    }

    #[test]
    fn anything_else_is_no_code() {
        for text in [
            "",
            "0000",
            "0000-0000-0000-0000-0000-000",
            "0000-0000-0000-0000-0000-00000",
            "U000-0000-0000-0000-0000-0000",
            "é",
        ] {
            assert_eq!(text.parse::<Invitation>(), Err(NoInvitation), "{text}");
        }
    }

    #[test]
    fn two_codes_have_two_hashes() {
        assert_ne!(Invitation([1; 15]).hash(), Invitation([2; 15]).hash());
    }
}
