//! The ciphers, signatures and derivations of this crate against what others have published, so that an upgrade of a library
//! can't change them unseen: the vectors of their standards, and the sets of Wycheproof, which hold what implementations
//! have got wrong before.
//!
//! It runs where the crate runs: in its own tests, and in a browser on the page of `tests/inside`. What the vault calls is
//! what is called here, through the vault's own functions where they can take a case; the rest goes to the library underneath.

mod aead;
mod ed25519;
mod hkdf;
mod standards;
mod x25519;

use wycheproof::TestResult;

/// What was published in one place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Set {
    /// The primitive, and who published the cases.
    pub name: &'static str,
    /// How many cases there are by its own account.
    pub stated: usize,
    /// What became of each.
    pub cases: Vec<Case>,
}

/// One published case.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Case {
    /// Its number or place, and what it is about.
    pub name: String,
    /// What became of it.
    pub ended: Ended,
}

/// What became of a case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// It came out as published: the same bytes, or a refusal of what is not valid.
    Passed,
    /// There is no way to ask it, for this reason.
    LeftOut(&'static str),
    /// It came out otherwise.
    Failed(&'static str),
}

/// Everything that was published, tried.
pub fn sets() -> Vec<Set> {
    let mut sets = standards::sets();
    sets.extend([
        aead::xchacha20_poly1305(),
        aead::chacha20_poly1305(),
        ed25519::set(),
        hkdf::set(),
        x25519::set(),
    ]);
    sets
}

/// What was made of a case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Made {
    /// Nothing: it was refused.
    Refused,
    /// What the publishers have.
    Same,
    /// Something else.
    Other,
}

impl Made {
    fn same(same: bool) -> Self {
        if same { Self::Same } else { Self::Other }
    }
}

/// Holds what was made to what must be.
fn judged(must: TestResult, made: Made) -> Ended {
    match (must, made) {
        (TestResult::Invalid | TestResult::Acceptable, Made::Refused)
        | (TestResult::Valid | TestResult::Acceptable, Made::Same) => Ended::Passed,
        (TestResult::Invalid, Made::Same | Made::Other) => {
            Ended::Failed("what is not valid was taken")
        }
        (TestResult::Valid, Made::Refused) => Ended::Failed("what is valid was refused"),
        (TestResult::Valid | TestResult::Acceptable, Made::Other) => {
            Ended::Failed("something else came out")
        }
    }
}

/// A case by its number in a set of Wycheproof.
fn numbered(number: usize, comment: &str, ended: Ended) -> Case {
    Case {
        name: format!("{number} {comment}").trim_end().to_owned(),
        ended,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of each set: how many cases pass, and how many can't be asked because a nonce or a signature has another length than
    /// the type. Counted in the published files, by their lengths alone.
    const COUNTS: [(&str, usize, usize); 12] = [
        ("RFC 8439, ChaCha20-Poly1305", 2, 0),
        ("draft-irtf-cfrg-xchacha-03, XChaCha20-Poly1305", 1, 0),
        ("RFC 9106, Argon2id", 1, 0),
        ("RFC 9180, HPKE", 1, 0),
        ("RFC 8032, Ed25519", 4, 0),
        ("RFC 5869, HKDF-SHA256", 3, 0),
        ("RFC 7748, X25519", 2, 0),
        ("Wycheproof, XChaCha20-Poly1305", 306, 9),
        ("Wycheproof, ChaCha20-Poly1305", 316, 9),
        ("Wycheproof, Ed25519", 139, 12),
        ("Wycheproof, HKDF-SHA256", 86, 0),
        ("Wycheproof, X25519", 518, 0),
    ];

    #[test]
    fn every_case_of_every_set_comes_out_as_published() {
        let sets = sets();
        for set in &sets {
            assert_eq!(set.cases.len(), set.stated, "{}", set.name);
            for case in &set.cases {
                assert!(
                    !matches!(case.ended, Ended::Failed(_)),
                    "{}: {case:?}",
                    set.name
                );
            }
        }
        let counted = sets.iter().map(|set| {
            let passed = set
                .cases
                .iter()
                .filter(|case| case.ended == Ended::Passed)
                .count();
            (set.name, passed, set.cases.len() - passed)
        });
        assert_eq!(counted.collect::<Vec<_>>(), COUNTS);
    }

    #[test]
    fn a_case_that_comes_out_otherwise_fails() {
        use TestResult::{Acceptable, Invalid, Valid};
        for (must, made) in [
            (Invalid, Made::Same),
            (Invalid, Made::Other),
            (Valid, Made::Refused),
            (Valid, Made::Other),
            (Acceptable, Made::Other),
        ] {
            assert!(
                matches!(judged(must, made), Ended::Failed(_)),
                "{must:?}, {made:?}"
            );
        }
        for (must, made) in [
            (Invalid, Made::Refused),
            (Valid, Made::Same),
            (Acceptable, Made::Same),
            (Acceptable, Made::Refused),
        ] {
            assert_eq!(judged(must, made), Ended::Passed, "{must:?}, {made:?}");
        }
    }
}
