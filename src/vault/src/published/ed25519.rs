//! Wycheproof's set of Ed25519, by the vault's own check of a signature.

use super::{Ended, Made, Set, judged, numbered};
use crate::frame::PublicKey;
use wycheproof::eddsa::{Test, TestName, TestSet};

pub fn set() -> Set {
    let published = TestSet::load(TestName::Ed25519).expect("the sets come with their crate");
    let tests = published.test_groups.iter().flat_map(|group| {
        let key = &group.key.pk;
        group.tests.iter().map(move |test| (key.as_slice(), test))
    });
    Set {
        name: "Wycheproof, Ed25519",
        stated: published.number_of_tests,
        cases: tests
            .map(|(key, test)| numbered(test.tc_id, &test.comment, tried(key, test)))
            .collect(),
    }
}

fn tried(key: &[u8], test: &Test) -> Ended {
    let Ok(signature) = test.sig.as_slice().try_into() else {
        return Ended::LeftOut("a signature of another length: the type holds none");
    };
    let Ok(key) = key.try_into() else {
        return Ended::LeftOut("a key of another length: the type holds none");
    };
    let signed = PublicKey::from_bytes(key).is_some_and(|key| key.signed(&test.msg, signature));
    let made = if signed { Made::Same } else { Made::Refused };
    judged(test.result, made)
}
