//! One history: chance does things and breaks things, then calm returns and everything is compared.

use super::chance::Chance;
use super::device::{Device, Fate};
use super::line::Passage;
use super::world::World;
use std::collections::{BTreeMap, HashMap, HashSet};
use sync::carry::Apart;
use sync::exchange::{Effect, FrameStore, Vector, Why};
use vault::roll::Verdict;
use vault::{Frame, FrameHash, Roll};

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
    fails: Option<Fails>,
    altered: bool,
    told: bool,
    outcome: Outcome,
}

/// The effect with this number fails, before it has done anything or after.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fails {
    pub number: u64,
    pub after: bool,
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
    /// How often a tablet was removed.
    pub removed: u64,
    /// How often that was done by a lead who had not heard yet what the other had done.
    pub at_once: u64,
    /// How many entries a carry file brought that were not there.
    pub carried: u64,
    /// How many carry files were damaged, or brought nothing.
    pub in_vain: u64,
    /// How often the relay said that what a viewer wrote is not its to write.
    pub not_taken: u64,
    /// A digest of every step.
    trace: u64,
    /// Every log's end.
    heads: Vec<String>,
    /// The latest entry of each section.
    fold: Vec<(usize, u64)>,
}

impl Outcome {
    /// Adds what another history counted.
    pub fn add(&mut self, other: &Self) {
        self.faults += other.faults;
        self.restored += other.restored;
        self.removed += other.removed;
        self.at_once += other.at_once;
        self.carried += other.carried;
        self.in_vain += other.in_vain;
        self.not_taken += other.not_taken;
    }
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
    pub fn calm(seed: u64, fails: Option<Fails>) -> Self {
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
        self.outcome.not_taken = self
            .world
            .devices
            .iter()
            .map(|device| device.not_taken)
            .sum();
        self.outcome
    }

    fn step(&mut self) {
        let at = self.chance.below(self.world.devices.len());
        match self.chance.below(23) {
            0..=2 => self.write(at),
            3..=4 => self.want(at),
            5..=11 => self.effect(at),
            12..=17 => self.carry(),
            18 => self.mishap(at),
            19 => self.remove(),
            20 => self.carry_out(at),
            21 => self.carry_in(at),
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
        let fails = self.fails.is_some_and(|fails| fails.number == number)
            || self.chance.happens(self.roughness);
        self.outcome.faults += u64::from(fails);
        fails
    }

    fn fate(&mut self) -> Fate {
        let after = self.chance.happens(500);
        let after = self.fails.map_or(after, |fails| fails.after);
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
            self.settle(at);
            self.world.devices[at].want();
        }
    }

    /// The lists of tablets are brought together, as before each exchange.
    fn settle(&mut self, at: usize) {
        let breaks = match self.fate() {
            Fate::Done => None,
            Fate::DiesBefore => Some(false),
            Fate::DiesAfter => Some(true),
        };
        self.note(&format!("tablet {at} asks for the list: {breaks:?}"));
        self.world.settle(at, breaks);
    }

    /// Now and then a lead removes a tablet that is none.
    fn remove(&mut self) {
        let (lead, leads) = (self.chance.below(self.world.leads), self.world.leads);
        let others = self.world.devices.len() - leads;
        if others == 0 || !self.chance.happens(300) {
            return;
        }
        let other = leads + self.chance.below(others);
        let known = self.world.relay.roll(self.world.vault).unwrap();
        let [by, gone] = self
            .world
            .devices
            .get_disjoint_mut([lead, other])
            .expect("a lead is another tablet");
        let behind = by.disk.roll != known;
        if by.remove(gone.public()) {
            self.outcome.removed += 1;
            self.outcome.at_once += u64::from(behind);
            self.note(&format!("tablet {lead} removes tablet {other}"));
        }
    }

    /// A tablet writes a carry file for another one: what that lacks or, seldom, everything.
    fn carry_out(&mut self, at: usize) {
        let to = self.chance.below(self.world.devices.len());
        let theirs = if self.chance.happens(100) {
            Vector::new()
        } else {
            self.world.devices[to].disk.vector()
        };
        if let Some(file) = self.world.devices[at].carry_out(&theirs) {
            self.note(&format!("tablet {at} writes a carry file for tablet {to}"));
            self.world.files.push(file);
        }
    }

    /// A tablet takes in some carry file, as it was written or damaged since, for whomever it was and however often it was
    /// taken in already.
    fn carry_in(&mut self, at: usize) {
        let which = self.chance.below(self.world.files.len().max(1));
        let Some(mut file) = self.world.files.get(which).cloned() else {
            return;
        };
        let (before, fate) = (self.world.devices[at].disk.vector(), self.fate());
        let device = &mut self.world.devices[at];
        let taken = match fate {
            Fate::Done => device.carry_in(&file),
            Fate::DiesBefore => {
                let at = self.chance.below(file.len());
                file[at] ^= 1 << self.chance.below(8);
                device.carry_in(&file)
            }
            Fate::DiesAfter => {
                let taken = device.carry_in(&file);
                device.die();
                taken
            }
        };
        let new = taken.as_ref().map_or(0, |report| report.new);
        self.note(&format!(
            "tablet {at} takes carry file {which} in: {fate:?}, {new} new"
        ));
        let device = &self.world.devices[at];
        assert_eq!(
            taken.is_err(),
            fate == Fate::DiesBefore,
            "damage is seen, and nothing else is damage"
        );
        assert_eq!(
            device.disk.vector() == before,
            new == 0,
            "what is refused or known changes nothing"
        );
        let apart = taken.map(|report| report.apart).unwrap_or_default();
        let forks = apart
            .iter()
            .filter(|apart| matches!(apart, Apart::Fork { .. }))
            .count();
        assert_eq!(forks, 0, "tablet {at} saw a fork where there was none");
        self.outcome.carried += new;
        self.outcome.in_vain += u64::from(new == 0);
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
        let kind = self.fails.map_or(kind, |fails| usize::from(fails.after));
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
                self.world.put_back();
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
        let statements = self.world.relay.roll(self.world.vault).unwrap();
        let roll = Roll::reread(self.world.vault, &statements).unwrap();
        let relay = self.world.relay_vector();
        let there: HashSet<FrameHash> = self.counting(&roll, &self.world.relay_frames());
        let mut folds = Vec::new();
        for (at, device) in self.world.devices.iter().enumerate() {
            check_logs(device);
            assert!(
                self.altered || device.forks == 0,
                "tablet {at} saw a fork where there was none"
            );
            let own: Vec<Frame> = device
                .disk
                .logs
                .get(&device.id())
                .cloned()
                .unwrap_or_default();
            let lost = self.counting(&roll, &own);
            assert!(
                lost.is_subset(&there),
                "something that tablet {at} wrote and that counts is missing"
            );
            if roll.role(device.id()).is_none() {
                let known = device.roll().role(device.id());
                assert_eq!(known, None, "tablet {at} has heard of its removal");
                continue;
            }
            assert_eq!(device.disk.roll, statements, "tablet {at} has the list");
            let everything: Vec<Frame> = device.frames().cloned().collect();
            let counting = self.counting(&roll, &everything);
            assert_eq!(counting, there, "tablet {at} has what the relay has");
            let lost = device.acknowledged.iter();
            let lost = lost.filter(|hash| !there.contains(hash)).count();
            assert!(
                lost == 0 || self.world.viewer == Some(at),
                "something that tablet {at} acknowledged is missing"
            );
            folds.push(self.fold(&counting));
        }
        assert!(
            folds.iter().all(|fold| *fold == folds[0]),
            "all read the same"
        );
        self.check_aside(&roll);
        if let Some(viewer) = self.world.viewer {
            self.check_viewer(&roll, viewer);
        } else if self.outcome.removed == 0 {
            let all = self.world.devices.iter();
            assert!(all.clone().all(|device| device.disk.vector() == relay));
            assert_eq!(there.len(), self.entries.len(), "the relay has everything");
        }
        self.outcome.heads = relay
            .iter()
            .map(|(device, head)| format!("{device} {head:?}"))
            .collect();
        self.outcome.fold = folds.into_iter().next().unwrap_or_default();
    }

    /// Those of these frames that count, but for a viewer's name, which stays behind where more of its log comes with it. What
    /// a removed tablet wrote later is set aside, or held back where it came before.
    fn counting(&self, roll: &Roll, frames: &[Frame]) -> HashSet<FrameHash> {
        let viewer = self
            .world
            .viewer
            .map(|viewer| self.world.devices[viewer].id());
        let counts = |frame: &&Frame| {
            Some(frame.device()) != viewer && roll.judge_genuine(frame) == Verdict::Counts
        };
        frames.iter().filter(counts).map(Frame::hash).collect()
    }

    /// Only what a removed tablet wrote later is aside.
    fn check_aside(&self, roll: &Roll) {
        let relay = &self.world.relay;
        for (why, bytes) in relay.aside(self.world.vault, None, usize::MAX).unwrap() {
            let frame = Frame::parse(bytes).unwrap();
            assert_eq!(why, Why::AfterRemoval);
            assert_eq!(roll.judge_genuine(&frame), Verdict::AfterRemoval);
        }
    }

    /// Whatever a viewer wrote but its name counts nowhere, wherever it has come to.
    fn check_viewer(&self, roll: &Roll, viewer: usize) {
        let id = self.world.devices[viewer].id();
        for log in self
            .world
            .devices
            .iter()
            .filter_map(|device| device.disk.logs.get(&id))
        {
            let counts = log
                .iter()
                .filter(|frame| roll.judge_genuine(frame) == Verdict::Counts);
            assert!(counts.count() <= 1, "something that a viewer wrote counts");
        }
    }

    /// The latest entry of each section, whatever order the entries came in.
    fn fold(&self, counting: &HashSet<FrameHash>) -> Vec<(usize, u64)> {
        let mut latest: BTreeMap<usize, Entry> = BTreeMap::new();
        for hash in counting {
            let entry = self.entries[hash];
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
