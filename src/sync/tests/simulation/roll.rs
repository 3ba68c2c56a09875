//! The way to the relay for the list of tablets.

use std::cell::Cell;
use sync::exchange::{Answer, Failure, Host, MemoryStore, Notice, Quota, Request, Vector, answer};
use vault::{DeviceId, VaultId};

/// A way that may break once.
pub struct Rolls<'a> {
    relay: &'a MemoryStore,
    vault: VaultId,
    asker: DeviceId,
    /// Whether it breaks at the next question, and then whether only after the relay has done what it was asked.
    breaks: Cell<Option<bool>>,
}

impl<'a> Rolls<'a> {
    pub fn new(
        relay: &'a MemoryStore,
        vault: VaultId,
        asker: DeviceId,
        breaks: Option<bool>,
    ) -> Self {
        Self {
            relay,
            vault,
            asker,
            breaks: Cell::new(breaks),
        }
    }
}

impl Host for Rolls<'_> {
    async fn ask(&self, request: Request) -> Result<Answer, Failure> {
        let breaks = self.breaks.take();
        if breaks == Some(false) {
            return Err(Failure::Unreachable);
        }
        let quota = Quota { bytes: u64::MAX };
        let answered = answer(self.relay, self.vault, self.asker, quota, request);
        if breaks == Some(true) {
            return Err(Failure::Unreachable);
        }
        answered.map_err(|refusal| Failure::Refused(refusal.to_string()))
    }

    fn random(&self) -> u32 {
        0
    }

    async fn remember(&self, _: &Vector) {}

    fn tell(&self, _: Notice) {}
}
