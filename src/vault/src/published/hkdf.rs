//! Wycheproof's set of HKDF-SHA256. What the vault derives is 32 bytes long and without a salt, so the cases without one go
//! through its own function as well, as far as 32 bytes reach.

use super::{Ended, Made, Set, judged, numbered};
use crate::secret::Secret;
use hkdf::Hkdf;
use sha2::Sha256;
use wycheproof::hkdf::{Test, TestName, TestSet};

pub fn set() -> Set {
    let published = TestSet::load(TestName::HkdfSha256).expect("the sets come with their crate");
    let tests = published.test_groups.iter().flat_map(|group| &group.tests);
    Set {
        name: "Wycheproof, HKDF-SHA256",
        stated: published.number_of_tests,
        cases: tests
            .map(|test| numbered(test.tc_id, &test.comment, tried(test)))
            .collect(),
    }
}

fn tried(test: &Test) -> Ended {
    let mut derived = vec![0; test.size];
    let expanded =
        Hkdf::<Sha256>::new(Some(&test.salt), &test.ikm).expand(&test.info, &mut derived);
    let made = match expanded {
        Err(_) => Made::Refused,
        Ok(()) => {
            Made::same(derived == **test.okm && (!test.salt.is_empty() || by_the_vault(test)))
        }
    };
    judged(test.result, made)
}

/// A longer derivation begins with a shorter one (RFC 5869, section 2.3).
fn by_the_vault(test: &Test) -> bool {
    let derived = Secret::derive_from(&test.ikm, &test.info);
    let shared = test.okm.len().min(32);
    derived.bytes()[..shared] == test.okm[..shared]
}
