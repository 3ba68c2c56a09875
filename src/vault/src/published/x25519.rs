//! Wycheproof's set of X25519.
//!
//! The vault meets X25519 within HPKE alone, so each case becomes a box: sealed here with the published shared secret, by
//! RFC 9180 step by step, and opened by the vault with the published private key. A public key that gives a shared secret
//! of zeros must be refused (RFC 9180, section 7.1.4); every other case must come out, those among them that Wycheproof
//! leaves to the implementation.

use super::{Ended, Made, Set, judged, numbered};
use crate::hpke::{self, Sealed};
use crate::random::System;
use crate::secret::Secret;
use chacha20poly1305::aead::{Aead, Payload};
use chacha20poly1305::{ChaCha20Poly1305, KeyInit};
use hkdf::Hkdf;
use sha2::Sha256;
use wycheproof::TestResult;
use wycheproof::xdh::{Test, TestFlag, TestName, TestSet};
use x25519_dalek::{PublicKey, StaticSecret, x25519};

const INFO: &[u8] = b"info";
const ABOUT: &[u8] = b"about";
const PLAIN: &[u8] = b"plain";
/// RFC 9180, section 4.1: of the KEM alone.
const KEM: &[u8] = b"KEM\x00\x20";
/// RFC 9180, section 5.1: DHKEM(X25519, HKDF-SHA256), HKDF-SHA256, ChaCha20-Poly1305.
const SUITE: &[u8] = b"HPKE\x00\x20\x00\x01\x00\x03";

pub fn set() -> Set {
    let published = TestSet::load(TestName::X25519).expect("the sets come with their crate");
    let tests = published.test_groups.iter().flat_map(|group| &group.tests);
    Set {
        name: "Wycheproof, X25519",
        stated: published.number_of_tests,
        cases: tests
            .map(|test| numbered(test.tc_id, &test.comment, tried(test)))
            .collect(),
    }
}

fn tried(test: &Test) -> Ended {
    let keys = [&test.public_key, &test.private_key, &test.shared_secret];
    let [Ok(public), Ok(private), Ok(shared)] = keys.map(|key| key.as_slice().try_into()) else {
        return Ended::LeftOut("a key of another length: the type holds none");
    };
    if test.flags.contains(&TestFlag::ZeroSharedSecret) {
        return judged(TestResult::Invalid, zeros(public, private));
    }
    let made = Made::same(x25519(private, public) == shared);
    let opened = hpke::open(
        &Secret::from_bytes(private),
        INFO,
        ABOUT,
        &sealed(public, private, shared),
    );
    match opened {
        Err(_) => judged(TestResult::Valid, Made::Refused),
        Ok(plain) if *plain == PLAIN => judged(TestResult::Valid, made),
        Ok(_) => judged(TestResult::Valid, Made::Other),
    }
}

/// Nothing is sealed to such a key, and no box that names it opens, though it be made as if it could.
fn zeros(public: [u8; 32], private: [u8; 32]) -> Made {
    let to_it = hpke::seal(&public, INFO, ABOUT, PLAIN, &mut System);
    let from_it = hpke::open(
        &Secret::from_bytes(private),
        INFO,
        ABOUT,
        &sealed(public, private, [0; 32]),
    );
    if to_it == Err(hpke::BoxError::Key) && from_it.is_err() {
        Made::Refused
    } else {
        Made::Same
    }
}

/// RFC 9180, sections 4.1 and 5.1, in base mode, from the ephemeral public key and the shared secret of X25519.
fn sealed(enc: [u8; 32], receiver: [u8; 32], shared: [u8; 32]) -> Sealed {
    let receiver = PublicKey::from(&StaticSecret::from(receiver)).to_bytes();
    let kem_context = [enc, receiver].concat();
    let eae = extract(KEM, &[], b"eae_prk", &shared);
    let shared: [u8; 32] = expand(KEM, &eae, b"shared_secret", &kem_context);
    let context = [
        &[0][..],
        &extract(SUITE, &[], b"psk_id_hash", &[]),
        &extract(SUITE, &[], b"info_hash", INFO),
    ]
    .concat();
    let secret = extract(SUITE, &shared, b"secret", &[]);
    let key: [u8; 32] = expand(SUITE, &secret, b"key", &context);
    let nonce: [u8; 12] = expand(SUITE, &secret, b"base_nonce", &context);
    let payload = Payload {
        msg: PLAIN,
        aad: ABOUT,
    };
    let ciphertext = ChaCha20Poly1305::new(&key.into())
        .encrypt(&nonce.into(), payload)
        .expect("five bytes are far below the cipher's limit of 256 GiB");
    Sealed { enc, ciphertext }
}

/// `LabeledExtract` of RFC 9180, section 4.
fn extract(suite: &[u8], salt: &[u8], label: &[u8], ikm: &[u8]) -> [u8; 32] {
    let labelled = [b"HPKE-v1", suite, label, ikm].concat();
    Hkdf::<Sha256>::extract(Some(salt), &labelled).0.into()
}

/// `LabeledExpand` of RFC 9180, section 4.
fn expand<const N: usize>(suite: &[u8], prk: &[u8; 32], label: &[u8], info: &[u8]) -> [u8; N] {
    let length = (N as u16).to_be_bytes();
    let labelled = [&length, b"HPKE-v1".as_slice(), suite, label, info].concat();
    let mut expanded = [0; N];
    Hkdf::<Sha256>::from_prk(prk)
        .expect("32 bytes are a whole key of HKDF-SHA256")
        .expand(&labelled, &mut expanded)
        .expect("32 bytes are within the 8160 that HKDF-SHA256 gives");
    expanded
}
