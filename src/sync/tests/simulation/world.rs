//! Everything there is: tablets, the line, the relay.

use super::chance::Chance;
use super::device::Device;
use super::line::{Kind, Message};
use super::roll::Rolls;
use futures::executor::block_on;
use std::collections::BTreeMap;
use sync::exchange::{
    Answer, Event, Failure, FrameStore, MemoryStore, Quota, Refusal, Request, StoreCopy, Vector,
    answer, settle_roll,
};
use vault::roll::Change;
use vault::sample::devices;
use vault::{DeviceId, Frame, Role, Roll, VaultId};

pub struct World {
    pub vault: VaultId,
    pub devices: Vec<Device>,
    /// How many of them, from the first on, are leads.
    pub leads: usize,
    /// The one that may only read, where there is one. It writes all the same, as if its program were another.
    pub viewer: Option<usize>,
    /// Carry files that lie about.
    pub files: Vec<Vec<u8>>,
    /// How far a removed tablet's log may go at the relay.
    ends: BTreeMap<DeviceId, u64>,
    pub relay: MemoryStore,
    /// The relay's last backup.
    pub backup: StoreCopy,
    /// Messages under way, in no order.
    pub line: Vec<Message>,
    asked: u64,
}

impl World {
    pub fn new(seed: u64, chance: &mut Chance) -> Self {
        // Mostly a few, now and then eight.
        let most = if chance.happens(100) { 7 } else { 3 };
        let count = 2 + chance.below(most) as u64;
        // Clocks are ahead of one another by up to two days.
        let mut devices: Vec<Device> = devices(seed, count)
            .into_iter()
            .map(|keys| Device::new(keys, chance.below(2 * 86_400_000) as u64))
            .collect();
        let vault = devices[0].vault();
        let relay = MemoryStore::new();
        let leads = if count > 2 { 1 + chance.below(2) } else { 1 };
        let viewer = (count > 2 && chance.happens(400)).then_some(devices.len() - 1);
        let mut roll = Roll::new(vault);
        for (at, device) in devices.iter().enumerate() {
            let part = match at {
                at if at < leads => Role::Lead,
                at if viewer == Some(at) => Role::Viewer,
                _ => Role::Clinician,
            };
            let statement = devices[0]
                .public()
                .state(&roll, device.public().public(), Change::Admit(part))
                .unwrap();
            roll.add(&statement).unwrap();
            assert!(relay.open_vault(&statement) || relay.extend_roll(&statement).unwrap());
        }
        for device in &mut devices {
            device.disk.roll = relay.roll(vault).unwrap();
        }
        Self {
            vault,
            devices,
            leads,
            viewer,
            files: Vec::new(),
            ends: BTreeMap::new(),
            backup: relay.copy(),
            relay,
            line: Vec::new(),
            asked: 0,
        }
    }

    /// A tablet's question goes on its way.
    pub fn ask(&mut self, device: usize, request: &Request) {
        self.asked += 1;
        self.devices[device].waiting = Some(self.asked);
        self.line.push(Message {
            device,
            number: self.asked,
            bytes: request.to_bytes(),
            kind: Kind::Question,
        });
    }

    /// A message comes to its end. `relay_dies` after it has done what it was asked.
    pub fn arrive(&mut self, message: Message, altered: bool, relay_dies: bool, random: u32) {
        match message.kind {
            Kind::Question => {
                let reply = self.at_relay(&message, altered);
                self.watch();
                if !relay_dies {
                    self.line.push(reply);
                }
            }
            Kind::Answer | Kind::Refusal | Kind::Forbidden => self.at_device(&message, random),
        }
    }

    /// A tablet's list of tablets and the relay's are brought together. Where the way there breaks, it does so `after` the
    /// relay has done what it was asked.
    pub fn settle(&mut self, at: usize, breaks: Option<bool>) {
        let device = &self.devices[at];
        let rolls = Rolls::new(&self.relay, self.vault, device.id(), breaks);
        let settled = settle_roll(&rolls, self.vault, device.id(), &device.disk.roll);
        if let Ok(settled) = block_on(settled) {
            self.devices[at].take_roll(&settled);
        }
        self.watch();
    }

    /// Puts the relay back as it was when it was backed up.
    pub fn put_back(&mut self) {
        self.relay.restore(&self.backup);
        self.ends.clear();
    }

    /// Nothing that a tablet wrote after its removal comes into its log any more, and nothing of a viewer but its name.
    fn watch(&mut self) {
        if let Some(viewer) = self.viewer {
            let head = self
                .relay
                .head(self.vault, self.devices[viewer].id())
                .unwrap();
            let there = head.map_or(0, |head| head.sequence);
            assert!(there <= 1, "a viewer wrote, and its log went on to {there}");
        }
        let statements = self.relay.roll(self.vault).unwrap();
        let roll = Roll::reread(self.vault, &statements).unwrap();
        for (device, standing) in roll.devices() {
            let Some(last) = standing.removed_after else {
                continue;
            };
            let there = self.relay.head(self.vault, device).unwrap();
            let there = there.map_or(0, |head| head.sequence);
            let end = *self.ends.entry(device).or_insert(there.max(last));
            assert!(there <= end, "{device} was removed, and went on to {there}");
        }
    }

    /// A question is signed, so an altered one is refused whatever it says.
    fn at_relay(&self, message: &Message, altered: bool) -> Message {
        let asker = self.devices[message.device].id();
        let quota = Quota { bytes: u64::MAX };
        let request = Request::from_bytes(&message.bytes)
            .ok()
            .filter(|_| !altered);
        let answered =
            request.map(|request| answer(&self.relay, self.vault, asker, quota, request));
        let (kind, bytes) = match answered {
            Some(Ok(answer)) => (Kind::Answer, answer.to_bytes()),
            Some(Err(Refusal::NotAllowed { .. })) => (Kind::Forbidden, Vec::new()),
            Some(Err(_)) | None => (Kind::Refusal, Vec::new()),
        };
        Message {
            device: message.device,
            number: message.number,
            kind,
            bytes,
        }
    }

    /// Whoever reaches the relay takes only the answer to the question that is open.
    fn at_device(&mut self, message: &Message, random: u32) {
        let device = &mut self.devices[message.device];
        if device.waiting != Some(message.number) {
            return;
        }
        let failed = |failure| Event::Failed { failure, random };
        device.tell(match message.kind {
            Kind::Refusal => failed(Failure::Refused("altered on the way".into())),
            Kind::Forbidden => failed(Failure::Forbidden("not its tablet's to write".into())),
            _ => match Answer::from_bytes(&message.bytes) {
                Ok(answer) => Event::Answered { answer, random },
                Err(error) => failed(Failure::Senseless(error.into())),
            },
        });
    }

    /// Nobody answers: the tablet gives up.
    pub fn give_up(&mut self, device: usize, random: u32) {
        if self.devices[device].waiting.is_some() {
            let failure = Failure::Unreachable;
            self.devices[device].tell(Event::Failed { failure, random });
        }
    }

    /// A lost answer, or a lost question, is noticed only by waiting; here the wait is over at once, half of the time.
    pub fn give_up_if_lost(&mut self, message: &Message, random: u32) {
        let waits = self.devices[message.device].waiting == Some(message.number);
        if waits && random.is_multiple_of(2) {
            self.give_up(message.device, random);
        }
    }

    /// Everything in the relay's logs.
    pub fn relay_frames(&self) -> Vec<Frame> {
        let all = |device| {
            let range = self
                .relay
                .range(self.vault, device, 1, usize::MAX, usize::MAX);
            range
                .unwrap()
                .into_iter()
                .map(|bytes| Frame::parse(bytes).unwrap())
        };
        let heads = self.relay_vector();
        heads.iter().flat_map(|(device, _)| all(device)).collect()
    }

    /// How far the relay's logs go.
    pub fn relay_vector(&self) -> Vector {
        self.relay.vector(self.vault).unwrap()
    }
}
