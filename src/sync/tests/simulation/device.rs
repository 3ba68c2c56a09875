//! A tablet: what it keeps durably, and what it forgets when it dies.

use std::collections::{BTreeMap, VecDeque};
use sync::exchange::{Effect, Event, Exchange, Notice, Run, Vector, restated};
use vault::roll::Change;
use vault::sample::Device as Keys;
use vault::{DeviceId, Frame, FrameHash, Role, Roll, Statement, VaultId};

pub struct Device {
    keys: Keys,
    /// What survives.
    pub disk: Disk,
    live: Exchange,
    pub effects: VecDeque<Effect>,
    /// The number of the question that is to be answered.
    pub waiting: Option<u64>,
    /// Whether it was told to come back later.
    pub resting: bool,
    /// Hashes of everything whose writing was acknowledged to the person at the screen.
    pub acknowledged: Vec<FrameHash>,
    /// How far its clock is ahead, in milliseconds.
    pub skew: u64,
    pub forks: usize,
    /// How often it heard that a log is not its tablet's to write.
    pub not_taken: u64,
}

#[derive(Clone, Default)]
pub struct Disk {
    pub logs: BTreeMap<DeviceId, Vec<Frame>>,
    pub roll: Vec<Statement>,
    seen: Vector,
}

impl Disk {
    pub fn vector(&self) -> Vector {
        let logs = self.logs.iter();
        logs.map(|(device, log)| (*device, log[log.len() - 1].head()))
            .collect()
    }

    /// Keeps a run if the log ends where it begins.
    fn append(&mut self, run: &Run) -> bool {
        let fits = self.vector().head(run.device()) == run.before();
        if fits {
            self.logs
                .entry(run.device())
                .or_default()
                .extend_from_slice(run.frames());
        }
        fits
    }
}

/// What becomes of a write.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    Done,
    /// The device dies before anything is written.
    DiesBefore,
    /// It is written, and the device dies before it hears so.
    DiesAfter,
}

impl Device {
    pub fn new(keys: Keys, skew: u64) -> Self {
        let live = fresh(&keys, Vector::new());
        Self {
            keys,
            disk: Disk::default(),
            live,
            effects: VecDeque::new(),
            waiting: None,
            resting: false,
            acknowledged: Vec::new(),
            skew,
            forks: 0,
            not_taken: 0,
        }
    }

    pub fn id(&self) -> DeviceId {
        self.keys.keys.device()
    }

    pub fn vault(&self) -> VaultId {
        self.keys.keys.vault()
    }

    pub fn public(&self) -> &vault::Keys {
        &self.keys.keys
    }

    /// Everything that it keeps.
    pub fn frames(&self) -> impl Iterator<Item = &Frame> {
        self.disk.logs.values().flatten()
    }

    /// The roll as it knows it.
    pub fn roll(&self) -> Roll {
        Roll::reread(self.vault(), &self.disk.roll).unwrap()
    }

    /// Removes another one, as far as it has heard of it, if it may; says whether it did.
    pub fn remove(&mut self, other: &vault::Keys) -> bool {
        let roll = self.roll();
        let there = roll.role(other.device()).is_some();
        if !there || roll.role(self.id()) != Some(Role::Lead) {
            return false;
        }
        let last = self.disk.vector().sequence(other.device());
        let change = Change::Remove { last };
        let statement = self.keys.keys.state(&roll, other.public(), change).unwrap();
        self.disk.roll.push(statement);
        true
    }

    /// Goes by another roll, and says again what it lacks.
    pub fn take_roll(&mut self, settled: &[Statement]) {
        self.disk.roll = restated(&self.keys.keys, &self.disk.roll, settled);
    }

    /// Whether it is in the middle of an exchange.
    pub fn is_busy(&self) -> bool {
        !self.live.is_idle()
    }

    /// Writes an entry of its own: sealed, then kept, then acknowledged.
    pub fn write(&mut self, payload: &[u8], fate: Fate) -> Option<FrameHash> {
        let head = self.disk.vector().head(self.id());
        let frame = match head {
            None => self.keys.begin("tablet"),
            Some(head) => self.keys.write(head, payload),
        };
        let hash = frame.hash();
        if fate != Fate::DiesBefore {
            assert!(self.disk.append(&Run::new(vec![frame]).unwrap()));
        }
        match fate {
            Fate::Done => self.acknowledged.push(hash),
            _ => self.die(),
        }
        (fate != Fate::DiesBefore).then_some(hash)
    }

    /// Forgets everything that isn't on the disk, and starts again.
    pub fn die(&mut self) {
        self.live = fresh(&self.keys, self.disk.seen.clone());
        self.effects.clear();
        self.waiting = None;
        self.resting = false;
    }

    pub fn want(&mut self) {
        self.resting = false;
        let have = self.disk.vector();
        self.tell(Event::Wanted { have });
    }

    pub fn tell(&mut self, event: Event) {
        self.waiting = None;
        let effects = self.live.handle(event);
        self.effects.extend(effects);
    }

    /// Another exchange is wanted while one is going on: the question stays open.
    pub fn want_meanwhile(&mut self) {
        let have = self.disk.vector();
        let effects = self.live.handle(Event::Wanted { have });
        self.effects.extend(effects);
    }

    pub fn store(&mut self, run: &Run, fate: Fate) {
        let kept = fate != Fate::DiesBefore && self.disk.append(run);
        match fate {
            Fate::Done if kept => self.tell(Event::Stored),
            Fate::Done => {
                let have = self.disk.vector();
                self.tell(Event::Moved { have });
            }
            _ => self.die(),
        }
    }

    pub fn remember(&mut self, seen: Vector, fate: Fate) {
        if fate != Fate::DiesBefore {
            self.disk.seen = seen;
        }
        if fate != Fate::Done {
            self.die();
        }
    }

    pub fn load(&mut self, device: DeviceId, from: u64) {
        let log = self.disk.logs.get(&device).cloned().unwrap_or_default();
        let frames = log.into_iter().filter(|frame| frame.sequence() >= from);
        self.tell(Event::Loaded(frames.collect()));
    }

    pub fn notice(&mut self, notice: &Notice) {
        match notice {
            Notice::Fork { .. } | Notice::Copied { .. } => self.forks += 1,
            Notice::NotTaken { .. } => self.not_taken += 1,
            _ => {}
        }
    }
}

fn fresh(keys: &Keys, seen: Vector) -> Exchange {
    Exchange::new(keys.keys.vault(), keys.keys.device(), seen)
}
