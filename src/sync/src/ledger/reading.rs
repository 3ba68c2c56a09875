//! Where reading stands, so that it can go on from there.

use super::people::People;
use super::reader::{Found, Reader};
use crate::checkpoint::{self, Covered};
use crate::log::DeviceLog;
use std::collections::{BTreeMap, BTreeSet};
use vault::frame::PublicKey;
use vault::{
    DeviceId, Erasure, Frame, FrameHash, Head, Introduction, KeyId, Keys, Purpose, Role, Roll,
};

/// What is known of a vault beside its entries.
#[derive(Default)]
pub struct Reading {
    pub people: People,
    pub(super) roll: Option<Roll>,
    pub(super) logs: BTreeMap<DeviceId, DeviceLog>,
    /// What each device says of itself.
    pub(super) introduced: BTreeMap<DeviceId, Introduction>,
    /// Frames whose key may stand in a log that is read later.
    pub(super) waiting: Vec<Waiting>,
    /// Epochs' frames that are not sealed to this device. One may carry older keys that can be had once its own key has come
    /// another way.
    pub(super) sealed: BTreeMap<(DeviceId, u64), Frame>,
    /// Keys and entries that are held back, until another roll lets them count.
    pub(super) held: Vec<Frame>,
    /// How far each epoch's key has spread.
    spread: BTreeMap<KeyId, Spread>,
    /// Who was erased.
    pub erasures: Vec<Erasure>,
}

/// How far an epoch's key has spread.
#[derive(Clone, Default)]
pub struct Spread {
    /// The public X25519 keys that it is sealed to.
    pub sealed_to: BTreeSet<[u8; 32]>,
    /// The keys that it carries.
    pub carries: BTreeSet<KeyId>,
}

/// A frame whose key is not here.
pub(super) struct Waiting {
    pub frame: Frame,
    /// Whether that was reported.
    pub told: bool,
}

impl Reading {
    pub fn going_by(roll: Option<Roll>) -> Self {
        Self {
            roll,
            ..Self::default()
        }
    }

    /// The number that comes next in a device's log.
    pub fn next(&self, device: DeviceId) -> u64 {
        self.logs.get(&device).map_or(1, DeviceLog::next)
    }

    /// Judges anew what is held back.
    pub fn judge_anew(&mut self, keys: &Keys, roll: Roll) -> Found {
        self.roll = Some(roll);
        let held = std::mem::take(&mut self.held);
        let mut reader = Reader::new(keys, self);
        for frame in held {
            reader.take(&frame);
        }
        reader.finish().0
    }

    /// The key that a device has introduced itself with, where that was read.
    pub fn introduced_as(&self, device: DeviceId) -> Option<PublicKey> {
        let introduction = self.introduced.get(&device)?;
        Some(introduction.signing)
    }

    /// What every device that was met calls itself.
    pub fn names(&self) -> BTreeMap<DeviceId, String> {
        let introduced = self.introduced.iter();
        introduced
            .map(|(device, introduction)| (*device, introduction.name.clone()))
            .collect()
    }

    /// Waits no longer for the keys of what could not be opened: nothing more will come.
    pub fn wait_no_longer(&mut self) {
        self.waiting.clear();
    }

    /// Reads frames beside the logs. Their signatures were checked.
    pub fn look_at(&self, keys: &Keys, frames: &[Frame]) -> Found {
        // What is met on the way is forgotten with this copy.
        let mut aside = Self {
            people: self.people.clone(),
            introduced: self.introduced.clone(),
            erasures: self.erasures.clone(),
            ..Self::going_by(self.roll.clone())
        };
        let mut reader = Reader::new(keys, &mut aside);
        for frame in frames {
            reader.take(frame);
        }
        reader.finish().0
    }

    /// Takes up what a device says of itself in a frame that was just made here.
    pub fn meet(&mut self, keys: &Keys, frame: &Frame) {
        if let Ok(introduction) = keys.open_introduction(frame) {
            self.introduced.insert(frame.device(), introduction);
        }
    }

    /// A device's public key, from the roll.
    pub(super) fn key_on_roll(&self, device: DeviceId) -> Option<PublicKey> {
        let standing = self.roll.as_ref()?.standing(device)?;
        Some(standing.key)
    }

    /// What a device may do; none where there is no roll, or it is not on it any more.
    pub fn role(&self, device: DeviceId) -> Option<Role> {
        self.roll.as_ref()?.role(device)
    }

    /// Whether this device may do what a lead does: it is one, or there is no roll yet.
    pub fn leads(&self, device: DeviceId) -> bool {
        self.roll.is_none() || self.role(device) == Some(Role::Lead)
    }

    /// How many statements the roll has, and the number of its last removal.
    pub fn roll_ends(&self) -> (u64, u64) {
        let roll = self.roll.as_ref();
        roll.map_or((0, 0), |roll| (roll.length(), roll.last_removal()))
    }

    /// The public X25519 keys of all devices that belong to the vault, as far as they have introduced themselves.
    pub fn exchanges(&self) -> BTreeSet<[u8; 32]> {
        let belongs = |device: &DeviceId| self.roll.is_none() || self.role(*device).is_some();
        let introduced = self.introduced.iter();
        introduced
            .filter(|(device, _)| belongs(device))
            .map(|(_, introduction)| introduction.exchange)
            .collect()
    }

    /// How far an epoch's key has spread.
    pub fn spread_of(&self, epoch: KeyId) -> Spread {
        self.spread.get(&epoch).cloned().unwrap_or_default()
    }

    /// An epoch's key was sealed to some, carrying some.
    pub fn spread(
        &mut self,
        epoch: KeyId,
        to: impl IntoIterator<Item = [u8; 32]>,
        carrying: impl IntoIterator<Item = KeyId>,
    ) {
        let spread = self.spread.entry(epoch).or_default();
        spread.sealed_to.extend(to);
        spread.carries.extend(carrying);
    }

    /// Whether somebody's erasure takes away what is in this frame.
    pub(super) fn is_erased(&self, frame: &Frame) -> bool {
        self.erasures.iter().any(|erasure| erasure.covers(frame))
    }

    /// Whether everything that a frame needs to be opened is here.
    pub(super) fn can_open(&self, keys: &Keys, frame: &Frame) -> bool {
        match frame.header().purpose {
            Purpose::Introduction | Purpose::PersonKey => keys.is_epoch(frame),
            Purpose::Entry => {
                keys.is_epoch(frame) || self.people.by_id(frame.header().key).is_some()
            }
            _ => true,
        }
    }
}

/// Taking up where a checkpoint was made, and making one.
impl Reading {
    /// Begins where a checkpoint was made.
    pub fn resume(&mut self, keys: &Keys, logs: Vec<Covered>) {
        for log in logs {
            let device = log.device();
            let read = DeviceLog::resumed(keys.vault(), log.key, log.head);
            self.logs.insert(device, read);
            let introduced = log.introduced.map(|(name, exchange)| Introduction {
                signing: log.key,
                exchange,
                name,
            });
            self.introduced.extend(introduced.map(|one| (device, one)));
        }
    }

    /// The roll that reading goes by, as a checkpoint remembers it.
    pub fn roll_mark(&self) -> Option<(u64, FrameHash)> {
        self.roll.as_ref().map(checkpoint::mark)
    }

    /// The part of a device's log that ends with `head`, for a checkpoint; none where nobody knows whose log it is.
    pub fn covered(&self, device: DeviceId, head: Head) -> Option<Covered> {
        let introduced = self.introduced.get(&device);
        Some(Covered {
            key: self.logs.get(&device)?.key()?,
            head,
            introduced: introduced.map(|one| (one.name.clone(), one.exchange)),
        })
    }
}
