//! Wycheproof's sets of the two ciphers: XChaCha20-Poly1305, under which everything is sealed, and ChaCha20-Poly1305, which
//! HPKE seals with.

use super::{Ended, Made, Set, judged, numbered};
use crate::secret::Secret;
use chacha20poly1305::aead::{Aead, Payload};
use chacha20poly1305::{ChaCha20Poly1305, KeyInit};
use wycheproof::aead::{Test, TestName, TestSet};

/// A cipher with a nonce of `N` bytes.
trait Cipher<const N: usize> {
    fn with(key: [u8; 32]) -> Self;
    fn seal(&self, nonce: &[u8; N], associated: &[u8], plain: &[u8]) -> Vec<u8>;
    fn open(&self, nonce: &[u8; N], associated: &[u8], sealed: &[u8]) -> Option<Vec<u8>>;
}

/// The vault's own.
impl Cipher<24> for Secret {
    fn with(key: [u8; 32]) -> Self {
        Self::from_bytes(key)
    }

    fn seal(&self, nonce: &[u8; 24], associated: &[u8], plain: &[u8]) -> Vec<u8> {
        Secret::seal(self, nonce, associated, plain)
    }

    fn open(&self, nonce: &[u8; 24], associated: &[u8], sealed: &[u8]) -> Option<Vec<u8>> {
        let opened = Secret::open(self, nonce, associated, sealed);
        opened.ok().map(|plain| plain.to_vec())
    }
}

/// The one within HPKE, which draws its keys and nonces itself: the library that it calls.
impl Cipher<12> for ChaCha20Poly1305 {
    fn with(key: [u8; 32]) -> Self {
        Self::new(&key.into())
    }

    fn seal(&self, nonce: &[u8; 12], aad: &[u8], msg: &[u8]) -> Vec<u8> {
        self.encrypt(&(*nonce).into(), Payload { msg, aad })
            .expect("a published message is far below the cipher's limit of 256 GiB")
    }

    fn open(&self, nonce: &[u8; 12], aad: &[u8], msg: &[u8]) -> Option<Vec<u8>> {
        self.decrypt(&(*nonce).into(), Payload { msg, aad }).ok()
    }
}

pub fn xchacha20_poly1305() -> Set {
    set::<24, Secret>(
        "Wycheproof, XChaCha20-Poly1305",
        TestName::XChaCha20Poly1305,
    )
}

pub fn chacha20_poly1305() -> Set {
    set::<12, ChaCha20Poly1305>("Wycheproof, ChaCha20-Poly1305", TestName::ChaCha20Poly1305)
}

fn set<const N: usize, C: Cipher<N>>(name: &'static str, published: TestName) -> Set {
    let published = TestSet::load(published).expect("the sets come with their crate");
    let tests = published.test_groups.iter().flat_map(|group| &group.tests);
    Set {
        name,
        stated: published.number_of_tests,
        cases: tests
            .map(|test| numbered(test.tc_id, &test.comment, tried::<N, C>(test)))
            .collect(),
    }
}

fn tried<const N: usize, C: Cipher<N>>(test: &Test) -> Ended {
    let Ok(nonce) = test.nonce.as_slice().try_into() else {
        return Ended::LeftOut("a nonce of another length: the type holds none");
    };
    let Ok(key) = test.key.as_slice().try_into() else {
        return Ended::LeftOut("a key of another length: the type holds none");
    };
    let cipher = C::with(key);
    let sealed = [test.ct.as_slice(), &test.tag].concat();
    let made = match cipher.open(&nonce, &test.aad, &sealed) {
        None => Made::Refused,
        Some(plain) => {
            Made::same(plain == **test.pt && cipher.seal(&nonce, &test.aad, &test.pt) == sealed)
        }
    };
    judged(test.result, made)
}
