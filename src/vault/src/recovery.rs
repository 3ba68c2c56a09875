//! The recovery code: what opens a vault when the passphrase is forgotten, or every device is lost. Printed once, kept on
//! paper.
//!
//! It is 27 random signs, 135 bits, and a check sign that catches any one wrong sign and any two exchanged ones (the code
//! and its proof are in `signs.rs`). It goes, as its 28 signs in capitals without blanks, into HKDF-SHA256 (no salt), which
//! gives with
//!
//! ```text
//! info = "lightround v1 recovery slot" || 0 || vault id        the key of its slot in the key file
//! info = "lightround v1 recovery exchange" || 0 || vault id    the X25519 secret to which every epoch key is sealed
//! ```
//!
//! So on the device itself it opens the key file, and without any device it opens a copy of the frames.

use crate::domains;
use crate::ids::VaultId;
use crate::random::{NoRandomness, Source, System, draw};
use crate::secret::Secret;
use crate::signs;
use std::fmt;
use std::str::FromStr;
use x25519_dalek::{PublicKey, StaticSecret};
use zeroize::{Zeroize, ZeroizeOnDrop, Zeroizing};

/// Signs of a code, the check sign among them.
const SIGNS: usize = 28;
/// Signs of a group.
const GROUP: usize = 4;

/// A recovery code. Whoever has it and a copy of the vault reads everything.
#[derive(Zeroize, ZeroizeOnDrop)]
pub struct RecoveryCode([u8; SIGNS]);

/// What somebody typed is no recovery code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RecoveryCodeError {
    /// A sign that never occurs.
    #[error(
        "\u{201c}{0}\u{201d} is none of the letters and digits of a recovery code (it has no U, and O and I are read as 0 and 1)"
    )]
    Sign(char),
    /// Too few or too many.
    #[error("a recovery code has 7 groups of 4 signs, {SIGNS} in all; these are {0}")]
    Length(usize),
    /// The check sign doesn't fit.
    #[error("one of the signs is wrong, or two are exchanged: compare them with the sheet")]
    Check,
}

impl RecoveryCode {
    pub(crate) fn make() -> Result<Self, NoRandomness> {
        Self::make_from(&mut System)
    }

    pub(crate) fn make_from(source: &mut dyn Source) -> Result<Self, NoRandomness> {
        let drawn = Zeroizing::new(draw::<{ SIGNS - 1 }>(source)?);
        let mut code = Self([0; SIGNS]);
        for (sign, byte) in code.0.iter_mut().zip(drawn.iter()) {
            // Five of eight random bits: still even.
            *sign = byte & 31;
        }
        code.0[SIGNS - 1] = signs::check(&code.0[..SIGNS - 1]);
        Ok(code)
    }

    /// Its groups, for the sheet.
    pub fn groups(&self) -> Vec<Zeroizing<String>> {
        let groups = self.0.chunks(GROUP);
        groups
            .map(|group| Zeroizing::new(group.iter().map(|number| signs::sign(*number)).collect()))
            .collect()
    }

    pub(crate) fn slot_key(&self, vault: VaultId) -> Secret {
        self.derive(domains::RECOVERY_SLOT, vault)
    }

    /// The X25519 secret to which epoch keys are sealed.
    pub(crate) fn exchange(&self, vault: VaultId) -> Secret {
        self.derive(domains::RECOVERY_EXCHANGE, vault)
    }

    /// Its public half, which all devices may know.
    pub fn exchange_public(&self, vault: VaultId) -> [u8; 32] {
        let secret = StaticSecret::from(*self.exchange(vault).bytes());
        PublicKey::from(&secret).to_bytes()
    }

    fn derive(&self, domain: &str, vault: VaultId) -> Secret {
        let mut text = Zeroizing::new([0; SIGNS]);
        for (sign, number) in text.iter_mut().zip(self.0) {
            *sign = signs::ALPHABET[usize::from(number)];
        }
        Secret::derive_from(&*text, &domains::join(domain, &[vault.as_bytes()]))
    }
}

impl FromStr for RecoveryCode {
    type Err = RecoveryCodeError;

    /// Reads a code as people type it: in capitals or not, with blanks or hyphens or without.
    fn from_str(text: &str) -> Result<Self, RecoveryCodeError> {
        let numbers = signs::numbers(text).map_err(RecoveryCodeError::Sign)?;
        let code: [u8; SIGNS] = numbers
            .as_slice()
            .try_into()
            .map_err(|_| RecoveryCodeError::Length(numbers.len()))?;
        let code = Self(code);
        if signs::sum(&code.0) == 0 {
            Ok(code)
        } else {
            Err(RecoveryCodeError::Check)
        }
    }
}

impl fmt::Debug for RecoveryCode {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("RecoveryCode").finish_non_exhaustive()
    }
}

/// What stands on a recovery sheet beside its words, which are said in the language of whoever prints it.
#[derive(PartialEq, Eq)]
pub struct RecoverySheet {
    /// The date as it is to be read.
    pub made_on: String,
    /// What the tablet is called that made it.
    pub made_with: String,
    /// Which records it opens: the vault's first eight signs.
    pub records: String,
    /// The code in its groups.
    pub groups: Vec<Zeroizing<String>>,
}

impl fmt::Debug for RecoverySheet {
    /// Says nothing of the code.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_struct("RecoverySheet")
            .field("made_on", &self.made_on)
            .field("records", &self.records)
            .finish_non_exhaustive()
    }
}

/// The sheet to print when a code is made. `made_on` is the date as it is to be read.
pub fn recovery_sheet(
    code: &RecoveryCode,
    vault: VaultId,
    device_name: &str,
    made_on: &str,
) -> RecoverySheet {
    RecoverySheet {
        made_on: made_on.to_owned(),
        made_with: device_name.to_owned(),
        records: vault.to_string()[..8].to_owned(),
        groups: code.groups(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn code(fill: u8) -> RecoveryCode {
        struct Filled(u8);
        impl Source for Filled {
            fn fill(&mut self, bytes: &mut [u8]) -> Result<(), NoRandomness> {
                for byte in bytes {
                    self.0 = self.0.wrapping_mul(29).wrapping_add(7);
                    *byte = self.0;
                }
                Ok(())
            }
        }
        RecoveryCode::make_from(&mut Filled(fill)).unwrap()
    }

    fn typed(numbers: &[u8]) -> String {
        numbers.iter().map(|number| signs::sign(*number)).collect()
    }

    #[test]
    fn a_code_is_read_as_it_was_printed_and_as_people_type_it() {
        for fill in 0..20 {
            let code = code(fill);
            let groups = code.groups();
            assert_eq!(groups.len(), 7);
            let printed = groups
                .iter()
                .map(|group| group.as_str())
                .collect::<Vec<_>>()
                .join(" ");
            for text in [
                printed.clone(),
                printed.to_lowercase(),
                printed.replace(' ', "-").replace('0', "O"),
            ] {
                assert_eq!(text.parse::<RecoveryCode>().unwrap().0, code.0);
            }
        }
    }

    /// Each of the 28 signs as each of the 31 others, and each two exchanged, of several codes: none is taken.
    #[test]
    fn no_wrong_sign_and_no_two_exchanged_ones_go_unseen() {
        for fill in 0..8 {
            let right = code(fill).0;
            for at in 0..SIGNS {
                for other in (0..32).filter(|other| *other != right[at]) {
                    let mut changed = right;
                    changed[at] = other;
                    let read = typed(&changed).parse::<RecoveryCode>();
                    assert_eq!(read.unwrap_err(), RecoveryCodeError::Check);
                }
                for with in (at + 1..SIGNS).filter(|with| right[*with] != right[at]) {
                    let mut changed = right;
                    changed.swap(at, with);
                    let read = typed(&changed).parse::<RecoveryCode>();
                    assert_eq!(read.unwrap_err(), RecoveryCodeError::Check);
                }
            }
        }
    }

    #[test]
    fn anything_else_is_no_code() {
        let right = typed(&code(1).0);
        assert_eq!(
            right[1..].parse::<RecoveryCode>().unwrap_err(),
            RecoveryCodeError::Length(27)
        );
        assert_eq!(
            format!("{right}0").parse::<RecoveryCode>().unwrap_err(),
            RecoveryCodeError::Length(29)
        );
        assert_eq!(
            format!("U{right}").parse::<RecoveryCode>().unwrap_err(),
            RecoveryCodeError::Sign('U')
        );
    }

    #[test]
    fn a_code_gives_other_keys_for_other_vaults_and_uses() {
        let code = code(1);
        let (one, other) = (VaultId::from_bytes([1; 16]), VaultId::from_bytes([2; 16]));
        assert_ne!(code.slot_key(one).bytes(), code.slot_key(other).bytes());
        assert_ne!(code.slot_key(one).bytes(), code.exchange(one).bytes());
        assert_eq!(format!("{code:?}"), "RecoveryCode { .. }");
    }

    #[test]
    fn the_sheet_has_the_whole_code_and_tells_it_to_no_log() {
        let code = code(1);
        let sheet = recovery_sheet(
            &code,
            VaultId::from_bytes([10; 16]),
            "bedside tablet",
            "4 March 2026",
        );
        let groups: Vec<&str> = sheet.groups.iter().map(|group| group.as_str()).collect();
        assert_eq!(groups.concat().parse::<RecoveryCode>().unwrap().0, code.0);
        assert_eq!(sheet.records, "0a0a0a0a");
        assert!(!format!("{sheet:?}").contains(groups[0]));
    }
}
