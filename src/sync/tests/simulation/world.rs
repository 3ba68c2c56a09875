//! Everything there is: tablets, the line, the relay.

use super::chance::Chance;
use super::device::Device;
use super::line::{Kind, Message};
use sync::exchange::{
    Answer, Event, Failure, FrameStore, MemoryStore, Quota, Request, StoreCopy, Vector, answer,
};
use vault::roll::Change;
use vault::sample::devices;
use vault::{Role, Roll, VaultId};

pub struct World {
    pub vault: VaultId,
    pub devices: Vec<Device>,
    pub relay: MemoryStore,
    /// The relay's last backup.
    pub backup: StoreCopy,
    /// Messages under way, in no order.
    pub line: Vec<Message>,
    asked: u64,
}

impl World {
    pub fn new(seed: u64, chance: &mut Chance) -> Self {
        let count = 2 + chance.below(3) as u64;
        // Clocks are ahead of one another by up to two days.
        let devices: Vec<Device> = devices(seed, count)
            .into_iter()
            .map(|keys| Device::new(keys, chance.below(2 * 86_400_000) as u64))
            .collect();
        let vault = devices[0].vault();
        let relay = MemoryStore::new();
        let mut roll = Roll::new(vault);
        for device in &devices {
            let part = if roll.length() == 0 {
                Role::Lead
            } else {
                Role::Clinician
            };
            let statement = devices[0]
                .public()
                .state(&roll, device.public().public(), Change::Admit(part))
                .unwrap();
            roll.add(&statement).unwrap();
            assert!(relay.open_vault(&statement) || relay.extend_roll(&statement).unwrap());
        }
        Self {
            vault,
            devices,
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
                if !relay_dies {
                    self.line.push(reply);
                }
            }
            Kind::Answer | Kind::Refusal => self.at_device(&message, random),
        }
    }

    /// A question is signed, so an altered one is refused whatever it says.
    fn at_relay(&self, message: &Message, altered: bool) -> Message {
        let asker = self.devices[message.device].id();
        let quota = Quota { bytes: u64::MAX };
        let answered = Request::from_bytes(&message.bytes)
            .ok()
            .filter(|_| !altered)
            .and_then(|request| answer(&self.relay, self.vault, asker, quota, request).ok());
        Message {
            device: message.device,
            number: message.number,
            kind: if answered.is_some() {
                Kind::Answer
            } else {
                Kind::Refusal
            },
            bytes: answered.map_or_else(Vec::new, |answer| answer.to_bytes()),
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
            _ => match Answer::from_bytes(&message.bytes) {
                Ok(answer) => Event::Answered { answer, random },
                Err(error) => failed(Failure::Senseless(error.to_string())),
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

    /// How far the relay's logs go.
    pub fn relay_vector(&self) -> Vector {
        self.relay.vector(self.vault).unwrap()
    }
}
