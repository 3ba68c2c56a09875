//! Devices of one vault whose every key and nonce comes from a seed: the same seed, the same bytes.
//!
//! For tests of what stands on frames, and for nothing else: whoever knows the seed knows the keys.

use crate::domains;
use crate::frame::{Frame, Purpose};
use crate::ids::{Head, KeyId, VaultId};
use crate::keys::{Epoch, Keys, open_content};
use crate::random::{NoRandomness, Source, draw};
use crate::secret::Secret;
use ed25519_dalek::SigningKey;
use sha2::{Digest, Sha256};

/// SHA-256 of the seed and a counter, one block after the other.
struct Seeded {
    seed: u64,
    lane: u64,
    count: u64,
}

impl Source for Seeded {
    fn fill(&mut self, bytes: &mut [u8]) -> Result<(), NoRandomness> {
        for block in bytes.chunks_mut(32) {
            let parts = [self.seed, self.lane, self.count].map(u64::to_be_bytes);
            block.copy_from_slice(&Sha256::digest(parts.concat())[..block.len()]);
            self.count += 1;
        }
        Ok(())
    }
}

/// A device that writes reproducible frames.
pub struct Device {
    /// Its keys.
    pub keys: Keys,
    source: Seeded,
}

/// `count` devices of the one vault of this seed, all holding its one epoch key.
///
/// # Panics
///
/// Never: a seed gives bytes without end.
pub fn devices(seed: u64, count: u64) -> Vec<Device> {
    (1..=count).map(|lane| device(seed, lane)).collect()
}

fn device(seed: u64, lane: u64) -> Device {
    let never = "a seed gives bytes without end";
    let mut shared = Seeded {
        seed,
        lane: 0,
        count: 0,
    };
    let vault = VaultId::from_bytes(draw(&mut shared).expect(never));
    let epoch = Epoch {
        number: 1,
        id: KeyId::from_bytes(draw(&mut shared).expect(never)),
        roll: 0,
        key: Secret::make(&mut shared).expect(never),
    };
    let mut source = Seeded {
        seed,
        lane,
        count: 0,
    };
    let signing = SigningKey::from_bytes(&draw(&mut source).expect(never));
    let exchange = Secret::make(&mut source).expect(never);
    Device {
        keys: Keys::new(vault, signing, exchange, vec![epoch]),
        source,
    }
}

impl Device {
    /// Its introduction, the first frame of its log.
    ///
    /// # Panics
    ///
    /// On a name of half a megabyte.
    pub fn begin(&mut self, name: &str) -> Frame {
        self.keys
            .begin_from(name, &mut self.source)
            .expect("a name is short")
    }

    /// An entry about nobody, after `head`.
    ///
    /// # Panics
    ///
    /// On a payload that is too long for a frame.
    pub fn write(&mut self, head: Head, payload: &[u8]) -> Frame {
        let content = self.keys.own_content(Purpose::Entry);
        let key = self.keys.current().id;
        self.keys
            .seal_from(
                Some(head),
                Purpose::Entry,
                key,
                &content,
                payload,
                &mut self.source,
            )
            .expect("a sample's payload fits into a frame")
    }

    /// A frame of a purpose that this version knows, around any plain text at all: whoever holds the keys can make it, and
    /// this code never would. None where that is too long for a frame.
    pub fn seal_any(
        &mut self,
        after: Option<Head>,
        purpose: Purpose,
        plain: &[u8],
    ) -> Option<Frame> {
        let key = self.keys.current().id;
        let open = |domain| open_content(self.keys.vault(), domain, self.keys.device(), key);
        let content = match purpose {
            Purpose::Epoch => open(domains::CONTENT_EPOCH),
            Purpose::Erasure => open(domains::CONTENT_ERASURE),
            sealed => self.keys.own_content(sealed),
        };
        self.keys
            .seal_from(after, purpose, key, &content, plain, &mut self.source)
            .ok()
    }

    /// A whole log: the introduction and `entries` entries after it.
    pub fn log(&mut self, entries: usize) -> Vec<Frame> {
        let mut log = vec![self.begin("sample")];
        for entry in 0..entries {
            let head = log[entry].head();
            log.push(self.write(head, format!("entry {entry}").as_bytes()));
        }
        log
    }
}
