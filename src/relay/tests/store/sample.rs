//! A vault with two devices and their frames.

use std::sync::atomic::{AtomicU64, Ordering};
use sync::exchange::Run;
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{DeviceId, Frame, Role, Roll, Statement, VaultId};

pub struct Vault {
    pub id: VaultId,
    pub devices: Vec<Device>,
    roll: Roll,
}

impl Vault {
    /// A vault that no other test has.
    pub fn new() -> Self {
        static SEED: AtomicU64 = AtomicU64::new(1);
        let devices = devices(SEED.fetch_add(1, Ordering::Relaxed), 2);
        let id = devices[0].keys.vault();
        Self {
            id,
            devices,
            roll: Roll::new(id),
        }
    }

    pub fn device(&self, at: usize) -> DeviceId {
        self.devices[at].keys.device()
    }

    /// So many frames of the first device.
    pub fn log(&mut self, frames: usize) -> Vec<Frame> {
        self.devices[0].log(frames - 1)
    }

    /// The statements of a roll: the first device, then the second.
    pub fn statements(&mut self) -> [Statement; 2] {
        let lead = self.state(0, Role::Lead);
        [lead, self.state(1, Role::Clinician)]
    }

    /// The next statement, without keeping it on the roll.
    pub fn next(&self, about: usize, role: Role) -> Statement {
        let about = self.devices[about].keys.public();
        self.devices[0]
            .keys
            .state(&self.roll, about, Change::Admit(role))
            .unwrap()
    }

    fn state(&mut self, about: usize, role: Role) -> Statement {
        let statement = self.next(about, role);
        self.roll.add(&statement).unwrap();
        statement
    }

    /// The frame after these, with this payload.
    pub fn after(&mut self, log: &[Frame], payload: &[u8]) -> Frame {
        self.devices[0].write(log[log.len() - 1].head(), payload)
    }
}

pub fn run(frames: &[Frame]) -> Run {
    Run::new(frames.to_vec()).unwrap()
}

pub fn bytes(frames: &[Frame]) -> Vec<Vec<u8>> {
    frames.iter().map(|frame| frame.bytes().to_vec()).collect()
}
