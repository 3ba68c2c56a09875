//! The names of resources: the same exam gives the same names, so that a second export replaces the first.

use record::{Exam, Person};
use uuid::{Builder, Uuid};

use crate::resources::Reference;

/// How a resource is found within its bundle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Name(Uuid);

impl Name {
    pub const fn person(person: &Person) -> Self {
        Self(*person.id().as_uuid())
    }

    pub const fn exam(exam: &Exam) -> Self {
        Self(*exam.id().as_uuid())
    }

    /// Something within an exam, by what it is: the same however much stands beside it.
    pub fn within(exam: &Exam, what: &str) -> Self {
        Self::of_words(&exam.id().to_string(), what)
    }

    /// Somebody or something that is known by its words alone.
    pub fn of_words(kind: &str, words: &str) -> Self {
        let words = format!("{kind}\0{words}");
        Self(Builder::from_custom_bytes(fnv(words.as_bytes()).to_be_bytes()).into_uuid())
    }

    /// `urn:uuid:…`
    pub fn url(self) -> String {
        format!("urn:uuid:{}", self.0)
    }

    pub fn id(self) -> String {
        self.0.to_string()
    }

    pub fn reference(self) -> Reference {
        Reference {
            reference: Some(self.url()),
            display: None,
        }
    }
}

/// FNV-1a of 128 bits (Fowler, Noll and Vo; RFC 9923): a name needs no secrecy.
fn fnv(bytes: &[u8]) -> u128 {
    const OFFSET: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013b;
    bytes.iter().fold(OFFSET, |hash, byte| {
        (hash ^ u128::from(*byte)).wrapping_mul(PRIME)
    })
}
