//! The exchange: messages, the relay's side, the client's side, and both together over a storage.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod client;
mod relay;
mod together;
mod wire;

use std::sync::atomic::{AtomicU64, Ordering};
use sync::exchange::{
    Answer, FrameStore, MemoryStore, Page, Pushed, Quota, Refusal, Request, Run, Vector, answer,
};
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{DeviceId, Frame, Role, Roll, VaultId};

/// No test's frames come near it.
const ROOMY: Quota = Quota { bytes: 1 << 40 };

/// A relay with an open vault: a lead, a clinician, a viewer, and a fourth device that is not on the roll.
struct Relay {
    store: MemoryStore,
    vault: VaultId,
    roll: Roll,
    devices: [Device; 4],
}

impl Relay {
    fn new() -> Self {
        static SEED: AtomicU64 = AtomicU64::new(1);
        let devices: [Device; 4] = devices(SEED.fetch_add(1, Ordering::Relaxed), 4)
            .try_into()
            .ok()
            .unwrap();
        let vault = devices[0].keys.vault();
        let mut relay = Self {
            store: MemoryStore::new(),
            vault,
            roll: Roll::new(vault),
            devices,
        };
        relay.state(0, Change::Admit(Role::Lead));
        relay.state(1, Change::Admit(Role::Clinician));
        relay.state(2, Change::Admit(Role::Viewer));
        relay
    }

    /// The lead states something of a device.
    fn state(&mut self, about: usize, change: Change) {
        let about = self.devices[about].keys.public();
        let statement = self.devices[0]
            .keys
            .state(&self.roll, about, change)
            .unwrap();
        self.roll.add(&statement).unwrap();
        if !self.store.open_vault(&statement) {
            assert!(self.store.extend_roll(&statement).unwrap());
        }
    }

    fn id(&self, device: usize) -> DeviceId {
        self.devices[device].keys.device()
    }

    fn ask(&self, asker: usize, request: Request) -> Result<Answer, Refusal> {
        answer(&self.store, self.vault, self.id(asker), ROOMY, request)
    }

    fn push(&self, asker: usize, frames: &[Frame]) -> Result<Pushed, Refusal> {
        let run = Run::new(frames.to_vec()).unwrap();
        match self.ask(asker, Request::Push(run))? {
            Answer::Pushed(pushed) => Ok(pushed),
            other => panic!("{other:?}"),
        }
    }

    fn pull(&self, asker: usize, have: Vector) -> Page {
        match self.ask(asker, Request::Pull { have }).unwrap() {
            Answer::Page(page) => page,
            other => panic!("{other:?}"),
        }
    }

    /// Every frame that is kept of a device.
    fn kept(&self, device: usize) -> Vec<Vec<u8>> {
        self.store
            .range(self.vault, self.id(device), 1, usize::MAX, usize::MAX)
            .unwrap()
    }
}

fn bytes(frames: &[Frame]) -> Vec<Vec<u8>> {
    frames.iter().map(|frame| frame.bytes().to_vec()).collect()
}

/// The same log continued differently from number `from` on.
fn forked(device: &mut Device, log: &[Frame], from: usize) -> Vec<Frame> {
    let mut fork = log[..from - 1].to_vec();
    while fork.len() < log.len() {
        let head = fork[fork.len() - 1].head();
        fork.push(device.write(head, b"otherwise"));
    }
    fork
}
