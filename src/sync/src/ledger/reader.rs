//! Reading frame by frame: is it sound, does it open, does it count?

use super::held::{Held, HeldFor};
use super::people::People;
use super::{Read, Refusal};
use crate::damage::{Damage, Fault};
use crate::log::{Admitted, DeviceLog};
use crate::storage::StoredFrame;
use std::collections::BTreeMap;
use vault::{DeviceId, Frame, Head, Keys, OpenError, PersonKey, Proven, Purpose, Roll, Under};

/// What was read.
#[derive(Debug, Default)]
pub struct Found {
    /// Everything that can be read and counts, by device and number.
    pub entries: Vec<Read>,
    /// Everything that can be read and is held back, by device and number.
    pub held: Vec<Held>,
    /// Everything that can't be read, by device and number.
    pub damage: Vec<Damage>,
    /// How many frames are of kinds that only a later version reads; they are kept as they are.
    pub unread: usize,
}

/// Where reading stands, so that it can go on from there.
#[derive(Default)]
pub struct Reading {
    pub people: People,
    roll: Option<Roll>,
    logs: BTreeMap<DeviceId, DeviceLog>,
    names: BTreeMap<DeviceId, String>,
    /// Entries whose person's key may stand in a log that is read later.
    waiting: Vec<Waiting>,
    /// Person keys and entries that are held back, until another roll lets them count.
    held: Vec<Frame>,
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

    /// Reads frames beside the logs. Their signatures were checked.
    pub fn look_at(&self, keys: &Keys, frames: &[Frame]) -> Found {
        // What is met on the way is forgotten with this copy.
        let mut aside = Self {
            people: self.people.clone(),
            names: self.names.clone(),
            ..Self::going_by(self.roll.clone())
        };
        let mut reader = Reader::new(keys, &mut aside);
        for frame in frames {
            reader.take(frame);
        }
        reader.finish().0
    }
}

/// An entry whose person's key is not here.
struct Waiting {
    frame: Frame,
    /// Whether that was reported.
    told: bool,
}

/// A device's log while it is read.
pub struct Part {
    log: DeviceLog,
    /// Its newest frame, if that is sound.
    newest: Option<Frame>,
}

/// Reads frames into what is known of a vault.
pub struct Reader<'a> {
    keys: &'a Keys,
    reading: &'a mut Reading,
    found: Found,
    own: Own,
}

/// What is learnt about this device's own log on the way.
#[derive(Default)]
pub struct Own {
    /// Whether there are frames at all.
    any: bool,
    /// The newest frame under the current epoch's key that opened.
    witness: Option<Frame>,
    /// The newest frame, if the log ends soundly with it.
    newest: Option<Frame>,
}

impl<'a> Reader<'a> {
    pub fn new(keys: &'a Keys, reading: &'a mut Reading) -> Self {
        Self {
            keys,
            reading,
            found: Found::default(),
            own: Own::default(),
        }
    }

    /// Goes on in a device's log.
    pub fn begin(&mut self, device: DeviceId) -> Part {
        let own = (device == self.keys.device()).then(|| self.keys.public());
        let read = self.reading.logs.remove(&device);
        Part {
            log: read.unwrap_or_else(|| DeviceLog::new(self.keys.vault(), device, own)),
            newest: None,
        }
    }

    /// Ends a log that was read up to its head.
    pub fn end(&mut self, mut part: Part, head: Head) {
        let device = part.log.device();
        self.miss(device, part.log.skip_to(head.sequence.saturating_add(1)));
        if device == self.keys.device() {
            self.own.any = true;
            self.own.newest = part.newest.filter(|_| part.log.ends_with(head));
        }
        self.reading.logs.insert(device, part.log);
    }

    /// Reads the next frame of a log.
    pub fn read(&mut self, part: &mut Part, kept: StoredFrame) {
        part.newest = self.read_frame(&mut part.log, kept);
    }

    /// Reads one frame; gives it back where it is sound.
    fn read_frame(&mut self, log: &mut DeviceLog, kept: StoredFrame) -> Option<Frame> {
        let (device, sequence) = (log.device(), kept.sequence);
        self.miss(device, log.skip_to(sequence));
        let keys = self.keys;
        let admitted = log.admit(kept, |first| {
            Some(keys.open_introduction(first).ok()?.signing)
        });
        match admitted {
            Admitted::Sound(frame) => {
                self.take(&frame);
                Some(frame)
            }
            Admitted::Unlinked(frame) => {
                self.report(device, sequence, Fault::Unlinked);
                self.take(&frame);
                None
            }
            Admitted::Faulty(fault) => {
                self.report(device, sequence, fault);
                None
            }
        }
    }

    /// Reads what is in a genuine frame.
    fn take(&mut self, frame: &Frame) {
        let opened = match frame.header().purpose {
            Purpose::Introduction => self.keys.open_introduction(frame).map(|introduction| {
                self.reading.names.insert(frame.device(), introduction.name);
            }),
            Purpose::PersonKey => self
                .keys
                .open_person_key(frame)
                .map(|key| self.meet(frame, key)),
            Purpose::Entry if self.keys.is_epoch(frame) => self
                .keys
                .open(frame, Under::Epoch)
                .map(|payload| self.keep(frame, None, payload.to_vec())),
            Purpose::Entry if self.reading.people.by_id(frame.header().key).is_none() => {
                self.reading.waiting.push(Waiting {
                    frame: frame.clone(),
                    told: false,
                });
                return;
            }
            Purpose::Entry => return self.take_personal(frame),
            Purpose::Later(_) => {
                self.found.unread += 1;
                return;
            }
        };
        match opened {
            Ok(()) if frame.device() == self.keys.device() => {
                self.own.witness = Some(frame.clone());
            }
            Ok(()) => {}
            Err(error) => self.unopened(frame, error),
        }
    }

    /// Reads an entry about a person.
    fn take_personal(&mut self, frame: &Frame) {
        let opened = match self.reading.people.by_id(frame.header().key) {
            Some(key) => self
                .keys
                .open(frame, Under::Person(key))
                .map(|payload| (key.subject(), payload)),
            None => Err(OpenError::UnknownKey),
        };
        match opened {
            Ok((subject, payload)) => self.keep(frame, Some(subject), payload.to_vec()),
            Err(error) => self.unopened(frame, error),
        }
    }

    /// Why a frame is held back; none where it counts. What this device wrote itself, it always shows.
    fn held_for(&self, frame: &Frame) -> Option<HeldFor> {
        let roll = self.reading.roll.as_ref()?;
        let others = frame.device() != self.keys.device();
        others.then(|| HeldFor::going_by(roll, frame)).flatten()
    }

    fn meet(&mut self, frame: &Frame, key: PersonKey) {
        if self.held_for(frame).is_some() {
            self.reading.held.push(frame.clone());
            self.reading.people.add_for_reading(key);
        } else {
            self.reading.people.add(key);
        }
    }

    /// Takes up what waits, sorts everything and gives it back with what was learnt of this device's own log.
    pub fn finish(mut self) -> (Found, Own) {
        for waiting in std::mem::take(&mut self.reading.waiting) {
            self.wait_on(waiting);
        }
        let (names, mut found) = (&self.reading.names, self.found);
        found
            .entries
            .sort_by_key(|entry| (entry.device, entry.sequence));
        found
            .held
            .sort_by_key(|held| (held.read.device, held.read.sequence));
        found
            .damage
            .sort_by_key(|damage| (damage.device, damage.sequence));
        for damage in &mut found.damage {
            damage.device_name = names.get(&damage.device).cloned();
        }
        for held in &mut found.held {
            held.device_name = names.get(&held.read.device).cloned();
        }
        (found, self.own)
    }

    /// Reads an entry whose key has come, or goes on waiting.
    fn wait_on(&mut self, Waiting { frame, told }: Waiting) {
        let key = frame.header().key;
        if self.reading.people.by_id(key).is_some() {
            return self.take_personal(&frame);
        }
        if !told {
            self.unopened(&frame, OpenError::UnknownKey);
        }
        self.reading.waiting.push(Waiting { frame, told: true });
    }

    fn keep(&mut self, frame: &Frame, subject: Option<vault::Subject>, payload: Vec<u8>) {
        let read = Read {
            device: frame.device(),
            sequence: frame.sequence(),
            subject,
            payload,
        };
        if let Some(why) = self.held_for(frame) {
            self.reading.held.push(frame.clone());
            self.found.held.push(Held {
                read,
                device_name: None,
                why,
            });
        } else {
            self.found.entries.push(read);
        }
    }

    fn unopened(&mut self, frame: &Frame, error: OpenError) {
        let fault = if error == OpenError::UnknownKey {
            Fault::NoKey
        } else {
            Fault::Unopened
        };
        self.report(frame.device(), frame.sequence(), fault);
    }

    fn miss(&mut self, device: DeviceId, missing: std::ops::Range<u64>) {
        if let Some(through) = missing.end.checked_sub(1).filter(|_| !missing.is_empty()) {
            self.report(device, missing.start, Fault::Missing { through });
        }
    }

    fn report(&mut self, device: DeviceId, sequence: u64, fault: Fault) {
        self.found.damage.push(Damage {
            device,
            device_name: None,
            sequence,
            fault,
        });
    }
}

impl Own {
    /// The proof that this device's own log can be continued, or why it can't.
    pub fn prove(&self, keys: &Keys) -> Result<Proven, Refusal> {
        if !self.any {
            return Err(Refusal::NoLog);
        }
        let newest = self.newest.as_ref().ok_or(Refusal::DamagedEnd)?;
        let witness = self.witness.as_ref().ok_or(Refusal::WrongKey)?;
        keys.prove(witness, newest).map_err(|_| Refusal::WrongKey)
    }
}
