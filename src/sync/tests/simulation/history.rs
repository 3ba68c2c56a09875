//! One history: chance does things and breaks things, then calm returns and everything is compared.

use super::chance::Chance;
use super::device::{Device, Fate};
use super::line::Passage;
use super::world::World;
use std::collections::{BTreeMap, HashMap, HashSet};
use sync::exchange::{Effect, FrameStore};
use vault::FrameHash;

/// Exchanges of each tablet after which all must hold the same, once nothing breaks any more.
const ROUNDS: usize = 3;

pub struct History {
    seed: u64,
    chance: Chance,
    world: World,
    /// What was written, by the frame's hash.
    entries: HashMap<FrameHash, Entry>,
    /// Faults in a thousand effects; none in a calm history.
    roughness: u64,
    /// The one effect that fails in a calm history.
    fails: Option<u64>,
    altered: bool,
    told: bool,
    outcome: Outcome,
}

/// An entry as the fold sees it: a section, and when it was written by a clock that may be wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Entry {
    clock: u64,
    device: usize,
    section: usize,
}

/// What came of it, for comparing two runs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outcome {
    /// Writes and messages.
    pub effects: u64,
    /// Things that went wrong.
    pub faults: u64,
    /// How often the relay was put back from an old copy.
    pub restored: u64,
    /// A digest of every step.
    trace: u64,
    /// Every log's end.
    heads: Vec<String>,
    /// The latest entry of each section.
    fold: Vec<(usize, u64)>,
}

impl History {
    /// Anything may happen.
    pub fn random(seed: u64) -> Self {
        let mut history = Self::calm(seed, None);
        history.roughness = 20 + history.chance.below(180) as u64;
        // Without altered messages nothing may ever look like a fork.
        history.altered = history.chance.happens(500);
        history
    }

    /// Nothing goes wrong but the one effect with this number.
    pub fn calm(seed: u64, fails: Option<u64>) -> Self {
        let mut chance = Chance::new(seed);
        let world = World::new(seed, &mut chance);
        Self {
            seed,
            chance,
            world,
            entries: HashMap::new(),
            roughness: 0,
            fails,
            altered: false,
            told: false,
            outcome: Outcome::default(),
        }
    }

    /// Prints every step.
    pub fn told(mut self) -> Self {
        self.told = true;
        self
    }

    pub fn run(mut self) -> Outcome {
        let steps = 50 + self.chance.below(80);
        for _ in 0..steps {
            self.step();
        }
        self.note("everybody exchanges");
        self.exchange_all();
        let effects = self.outcome.effects;
        self.note("nothing breaks any more");
        self.roughness = 0;
        self.fails = None;
        self.exchange_all();
        let busy = self.world.devices.iter().position(Device::is_busy);
        assert_eq!(busy, None, "this tablet never comes to an end");
        self.compare();
        self.outcome.effects = effects;
        self.outcome
    }

    fn step(&mut self) {
        let at = self.chance.below(self.world.devices.len());
        match self.chance.below(20) {
            0..=2 => self.write(at),
            3..=4 => self.want(at),
            5..=11 => self.effect(at),
            12..=17 => self.carry(),
            18 => self.mishap(at),
            _ => self.back_up(),
        }
    }

    fn note(&mut self, what: &str) {
        if self.told {
            println!("{}: {what}", self.seed);
        }
        // FNV-1a, 64 bits.
        for byte in what.bytes() {
            self.outcome.trace =
                (self.outcome.trace ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }

    /// Whether this effect fails.
    fn fails(&mut self) -> bool {
        let number = self.outcome.effects;
        self.outcome.effects += 1;
        let fails = self.fails == Some(number) || self.chance.happens(self.roughness);
        self.outcome.faults += u64::from(fails);
        fails
    }

    fn fate(&mut self) -> Fate {
        let after = self.chance.happens(500);
        match (self.fails(), after) {
            (false, _) => Fate::Done,
            (true, false) => Fate::DiesBefore,
            (true, true) => Fate::DiesAfter,
        }
    }

    fn write(&mut self, at: usize) {
        let clock = self.outcome.effects * 1_000 + self.world.devices[at].skew;
        let section = self.chance.below(4);
        let fate = self.fate();
        self.note(&format!("tablet {at} writes section {section}: {fate:?}"));
        let payload = format!("section {section} at {clock}");
        if let Some(hash) = self.world.devices[at].write(payload.as_bytes(), fate) {
            let entry = Entry {
                clock,
                device: at,
                section,
            };
            self.entries.insert(hash, entry);
        }
        if fate == Fate::Done && self.world.devices[at].is_busy() {
            self.world.devices[at].want_meanwhile();
        }
    }

    fn want(&mut self, at: usize) {
        if !self.world.devices[at].is_busy() {
            self.note(&format!("tablet {at} wants an exchange"));
            self.world.devices[at].want();
        }
    }

    /// Does the next thing that a tablet's exchange asks for.
    fn effect(&mut self, at: usize) {
        let Some(effect) = self.world.devices[at].effects.pop_front() else {
            return;
        };
        match effect {
            Effect::Ask(request) => {
                self.note(&format!("tablet {at} asks {}", request.name()));
                self.world.ask(at, &request);
            }
            Effect::Load { device, from } => self.world.devices[at].load(device, from),
            Effect::Store(run) => {
                let fate = self.fate();
                self.note(&format!(
                    "tablet {at} keeps {} to {}: {fate:?}",
                    run.device(),
                    run.head().sequence
                ));
                self.world.devices[at].store(&run, fate);
            }
            Effect::Remember(seen) => {
                let fate = self.fate();
                self.note(&format!("tablet {at} remembers: {fate:?}"));
                self.world.devices[at].remember(seen, fate);
            }
            Effect::Wait { .. } => self.world.devices[at].resting = true,
            Effect::Tell(notice) => {
                self.note(&format!("tablet {at}: {notice}"));
                self.world.devices[at].notice(&notice);
            }
        }
    }

    /// Some message under way comes to its end.
    fn carry(&mut self) {
        if self.world.line.is_empty() {
            return;
        }
        let which = self.chance.below(self.world.line.len());
        let mut message = self.world.line.swap_remove(which);
        let passage = self.passage();
        let random = self.chance.next() as u32;
        self.note(&format!(
            "{:?} {} {passage:?}",
            message.kind, message.number
        ));
        match passage {
            Passage::Lost => self.world.give_up_if_lost(&message, random),
            Passage::Arrives => {
                let relay_dies = self.fails();
                self.world.arrive(message, false, relay_dies, random);
            }
            Passage::Repeated => {
                self.world.line.push(message.clone());
                self.world.arrive(message, false, false, random);
            }
            Passage::Altered => {
                if !message.bytes.is_empty() {
                    let at = self.chance.below(message.bytes.len());
                    message.bytes[at] ^= 1 << self.chance.below(8);
                }
                self.world.arrive(message, true, false, random);
            }
        }
    }

    fn passage(&mut self) -> Passage {
        let kind = self.chance.below(3);
        match (self.fails(), kind) {
            (false, _) => Passage::Arrives,
            (true, 1) => Passage::Repeated,
            (true, 2) if self.altered => Passage::Altered,
            (true, _) => Passage::Lost,
        }
    }

    /// A tablet gives up waiting, dies, or the relay is put back from its backup.
    fn mishap(&mut self, at: usize) {
        if self.roughness == 0 {
            return;
        }
        self.outcome.faults += 1;
        match self.chance.below(4) {
            0..=1 => {
                self.note(&format!("tablet {at} gives up"));
                let random = self.chance.next() as u32;
                self.world.give_up(at, random);
            }
            2 => {
                self.note(&format!("tablet {at} dies"));
                self.world.devices[at].die();
            }
            _ => {
                self.note("the relay is put back");
                self.outcome.restored += 1;
                self.world.relay.restore(&self.world.backup);
            }
        }
    }

    fn back_up(&mut self) {
        self.note("the relay is backed up");
        self.world.backup = self.world.relay.copy();
    }

    /// Every tablet exchanges until nothing is under way, a few times over.
    fn exchange_all(&mut self) {
        for at in (0..self.world.devices.len())
            .cycle()
            .take(ROUNDS * self.world.devices.len())
        {
            self.world.give_up(at, 0);
            self.drain(at);
            self.want(at);
            self.drain(at);
        }
    }

    fn drain(&mut self, at: usize) {
        for _ in 0..10_000 {
            if self.world.devices[at].effects.is_empty() && self.world.line.is_empty() {
                return;
            }
            self.effect(at);
            self.carry();
        }
        panic!("tablet {at} and the relay never come to an end");
    }

    fn compare(&mut self) {
        let relay = self.world.relay_vector();
        let written: u64 = relay.iter().map(|(_, head)| head.sequence).sum();
        assert_eq!(
            written,
            self.entries.len() as u64,
            "the relay has everything"
        );
        let folds: Vec<_> = self
            .world
            .devices
            .iter()
            .map(|device| self.fold(device))
            .collect();
        for (at, device) in self.world.devices.iter().enumerate() {
            assert_eq!(
                device.disk.vector(),
                relay,
                "tablet {at} has what the relay has"
            );
            assert_eq!(folds[at], folds[0], "tablet {at} reads the same");
            assert!(
                self.altered || device.forks == 0,
                "tablet {at} saw a fork where there was none"
            );
            check_logs(device);
        }
        let everywhere: HashSet<FrameHash> = self.world.devices[0].hashes().collect();
        for (at, device) in self.world.devices.iter().enumerate() {
            let lost = device
                .acknowledged
                .iter()
                .filter(|hash| !everywhere.contains(hash));
            assert_eq!(
                lost.count(),
                0,
                "something that tablet {at} acknowledged is missing"
            );
        }
        assert_eq!(
            self.world.relay.aside(self.world.vault, None, 9).unwrap(),
            [],
            "nothing was set aside"
        );
        self.outcome.heads = relay
            .iter()
            .map(|(device, head)| format!("{device} {head:?}"))
            .collect();
        self.outcome.fold = folds.into_iter().next().unwrap_or_default();
    }

    /// The latest entry of each section, whatever order the entries came in.
    fn fold(&self, device: &Device) -> Vec<(usize, u64)> {
        let mut latest: BTreeMap<usize, Entry> = BTreeMap::new();
        for hash in device.hashes() {
            let entry = self.entries[&hash];
            let kept = latest.entry(entry.section).or_insert(entry);
            *kept = entry.max(*kept);
        }
        latest
            .into_iter()
            .map(|(section, entry)| (section, entry.clock))
            .collect()
    }
}

/// Every log is without gaps, each frame after the one that it names.
fn check_logs(device: &Device) {
    for log in device.disk.logs.values() {
        for (number, frame) in (1..).zip(log) {
            assert_eq!(frame.sequence(), number);
        }
        for pair in log.windows(2) {
            assert_eq!(pair[1].header().previous, pair[0].hash());
        }
    }
}
