//! Reading frame by frame: is it sound, does it open, does it count?

use super::held::{Held, HeldFor};
use super::reading::{Reading, Waiting};
use super::{Erased, Read, Refusal};
use crate::damage::{Damage, Fault};
use crate::log::{Admitted, DeviceLog};
use crate::storage::StoredFrame;
use std::collections::BTreeMap;
use vault::{DeviceId, Frame, Head, KeyId, Keys, OpenError, PersonKey, Proven, Purpose, Under};

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
    /// Who was erased, by device and number of the erasure. What was read of them before is to be dropped.
    pub erased: Vec<Erased>,
}

/// What a checkpoint holds, for the reader to go on from.
pub struct Resumption {
    pub entries: Vec<Read>,
    pub anew: Vec<Frame>,
    pub witness: Option<Frame>,
}

/// A device's log while it is read.
pub struct Part {
    log: DeviceLog,
    /// Its newest frame, if that is sound.
    newest: Option<Frame>,
    /// Whether nothing of it was read yet, this time.
    untouched: bool,
}

impl Part {
    /// The number that comes next.
    pub fn next(&self) -> u64 {
        self.log.next()
    }

    /// Takes the newest frame as it is kept, where it is what the head says.
    pub fn newest_is(&mut self, kept: Option<StoredFrame>, head: Head) {
        let frame = kept.and_then(|kept| Frame::parse(kept.bytes).ok());
        self.newest = frame.filter(|frame| frame.head() == head);
    }
}

/// Reads frames into what is known of a vault.
pub struct Reader<'a> {
    keys: &'a Keys,
    reading: &'a mut Reading,
    found: Found,
    own: Own,
    /// Under which person's key each entry was.
    under: BTreeMap<(DeviceId, u64), KeyId>,
    /// Frames that were found emptied.
    emptied: Vec<Frame>,
}

/// What is learnt about this device's own log on the way.
#[derive(Default)]
pub struct Own {
    /// Whether there are frames at all.
    any: bool,
    /// The newest frame under an epoch's key that opened.
    witness: Option<Frame>,
    /// The newest frame, if the log ends soundly with it.
    newest: Option<Frame>,
    /// Frames of all logs that a checkpoint takes along as they are.
    pub anew: Vec<Frame>,
    /// Whether something was read that an erasure takes away.
    pub to_empty: bool,
}

impl<'a> Reader<'a> {
    pub fn new(keys: &'a Keys, reading: &'a mut Reading) -> Self {
        Self {
            keys,
            reading,
            found: Found::default(),
            own: Own::default(),
            under: BTreeMap::new(),
            emptied: Vec::new(),
        }
    }

    /// Goes on in a device's log.
    pub fn begin(&mut self, device: DeviceId) -> Part {
        let own = (device == self.keys.device()).then(|| self.keys.public());
        let known = own.or_else(|| self.reading.key_on_roll(device));
        let read = self.reading.logs.remove(&device);
        let mut log = read.unwrap_or_else(|| DeviceLog::new(self.keys.vault(), device, known));
        log.learn_key(known);
        Part {
            log,
            newest: None,
            untouched: true,
        }
    }

    /// Whether a log that begins with this frame can be read now: a device that came in a later epoch introduces itself
    /// under a key that may stand in a log that was not read yet.
    pub fn can_begin(&self, device: DeviceId, first: Option<&StoredFrame>) -> bool {
        let known = device == self.keys.device()
            || self.reading.logs.contains_key(&device)
            || self.reading.key_on_roll(device).is_some();
        let frame = first.and_then(|first| Frame::parse(first.bytes.clone()).ok());
        known || frame.is_none_or(|frame| self.keys.is_epoch(&frame))
    }

    /// Takes up what a checkpoint holds.
    pub fn resume(&mut self, resumption: Resumption) {
        self.own.witness = resumption.witness;
        self.found.entries = resumption.entries;
        for frame in &resumption.anew {
            self.take(frame);
        }
    }

    /// Whether this is the device's own log and a checkpoint covers all of it, so that its newest frame was not read.
    pub fn is_covered_to(&self, part: &Part, head: Head) -> bool {
        part.log.device() == self.keys.device() && part.untouched && part.log.ends_with(head)
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
        part.untouched = false;
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

    /// Reads what is in a genuine frame, or puts it by until its key is here.
    pub fn take(&mut self, frame: &Frame) {
        if frame.is_emptied() {
            self.emptied.push(frame.clone());
            return;
        }
        if !self.reading.can_open(self.keys, frame) {
            self.reading.waiting.push(Waiting {
                frame: frame.clone(),
                told: false,
            });
            return;
        }
        match self.open(frame) {
            Ok(is_witness) => {
                if is_witness && frame.device() == self.keys.device() {
                    self.own.witness = Some(frame.clone());
                }
            }
            Err(error) => self.unopened(frame, error),
        }
    }

    /// Reads what is in a frame; says whether an epoch's key has opened it.
    fn open(&mut self, frame: &Frame) -> Result<bool, OpenError> {
        match frame.header().purpose {
            Purpose::Introduction => {
                let introduction = self.keys.open_introduction(frame)?;
                self.reading.introduced.insert(frame.device(), introduction);
            }
            Purpose::PersonKey => {
                let key = self.keys.open_person_key(frame)?;
                self.meet(frame, key);
            }
            Purpose::Entry if self.keys.is_epoch(frame) => {
                let payload = self.keys.open(frame, Under::Epoch)?;
                self.keep(frame, None, payload.to_vec());
            }
            Purpose::Entry => {
                self.open_personal(frame)?;
                return Ok(false);
            }
            Purpose::Epoch => return self.learn_epoch(frame).map(|()| false),
            Purpose::Erasure => return self.learn_erasure(frame).map(|()| false),
            Purpose::Later(_) => {
                self.found.unread += 1;
                self.own.anew.push(frame.clone());
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// Reads an entry about a person.
    fn open_personal(&mut self, frame: &Frame) -> Result<(), OpenError> {
        let key = self.reading.people.by_id(frame.header().key);
        let key = key.ok_or(OpenError::UnknownKey)?;
        let payload = self.keys.open(frame, Under::Person(key))?;
        let subject = key.subject();
        self.under
            .insert((frame.device(), frame.sequence()), key.id());
        self.keep(frame, Some(subject), payload.to_vec());
        Ok(())
    }

    fn learn_epoch(&mut self, frame: &Frame) -> Result<(), OpenError> {
        self.own.anew.push(frame.clone());
        if self.held_for(frame).is_some() {
            self.reading.held.push(frame.clone());
        }
        self.unseal_epoch(frame)
    }

    /// Learns the keys of an epoch's frame, or puts it by until the key that carries them is here.
    fn unseal_epoch(&mut self, frame: &Frame) -> Result<(), OpenError> {
        let counts = self.held_for(frame).is_none();
        let notice = self.keys.learn_epoch(frame, counts)?;
        if !notice.ours {
            let place = (frame.device(), frame.sequence());
            self.reading.sealed.insert(place, frame.clone());
        }
        if counts {
            self.reading
                .spread(notice.key, notice.sealed_to, notice.carries);
        }
        Ok(())
    }

    fn learn_erasure(&mut self, frame: &Frame) -> Result<(), OpenError> {
        self.own.anew.push(frame.clone());
        if self.held_for(frame).is_some() {
            self.reading.held.push(frame.clone());
            return Ok(());
        }
        let erasure = self.keys.open_erasure(frame)?;
        self.found.erased.push(Erased {
            subject: erasure.subject,
            at: erasure.at,
            by: frame.device(),
            sequence: frame.sequence(),
        });
        self.reading.erasures.push(erasure);
        Ok(())
    }

    /// Why a frame is held back; none where it counts. What this device wrote itself, it always shows.
    fn held_for(&self, frame: &Frame) -> Option<HeldFor> {
        let roll = self.reading.roll.as_ref()?;
        let others = frame.device() != self.keys.device();
        others.then(|| HeldFor::going_by(roll, frame)).flatten()
    }

    fn meet(&mut self, frame: &Frame, key: PersonKey) {
        self.own.anew.push(frame.clone());
        let place = (frame.device(), frame.sequence());
        if self.held_for(frame).is_some() {
            self.reading.held.push(frame.clone());
            self.reading.people.add_for_reading(key, place);
        } else {
            self.reading.people.add(key, place);
        }
    }

    /// Takes up what waits, carries out what was erased, sorts everything and gives it back with what was learnt of this
    /// device's own log.
    pub fn finish(mut self) -> (Found, Own) {
        self.take_up();
        self.erase();
        for waiting in &mut self.reading.waiting {
            if !std::mem::replace(&mut waiting.told, true) {
                let (device, sequence) = (waiting.frame.device(), waiting.frame.sequence());
                self.found
                    .damage
                    .push(Damage::of(device, sequence, Fault::NoKey));
            }
        }
        let (introduced, mut found) = (&self.reading.introduced, self.found);
        found
            .entries
            .sort_by_key(|entry| (entry.device, entry.sequence));
        found
            .held
            .sort_by_key(|held| (held.read.device, held.read.sequence));
        found
            .damage
            .sort_by_key(|damage| (damage.device, damage.sequence));
        found
            .erased
            .sort_by_key(|erased| (erased.by, erased.sequence));
        let name = |device| introduced.get(&device).map(|one| one.name.clone());
        for damage in &mut found.damage {
            damage.device_name = name(damage.device);
        }
        for held in &mut found.held {
            held.device_name = name(held.read.device);
        }
        (found, self.own)
    }

    /// Reads what can be opened of what waits, as long as that brings other keys.
    fn take_up(&mut self) {
        loop {
            let learnt = self.learn_carried();
            let waiting = std::mem::take(&mut self.reading.waiting);
            let before = waiting.len();
            for waiting in waiting {
                if self.reading.can_open(self.keys, &waiting.frame) {
                    self.take(&waiting.frame);
                } else {
                    self.reading.waiting.push(waiting);
                }
            }
            if !learnt && self.reading.waiting.len() == before {
                return;
            }
        }
    }

    /// Learns what epochs' frames carry whose own keys have come meanwhile; says whether there was any.
    fn learn_carried(&mut self) -> bool {
        let keys = self.keys;
        let sealed = std::mem::take(&mut self.reading.sealed);
        let (here, sealed): (BTreeMap<_, _>, _) = sealed
            .into_iter()
            .partition(|(_, frame)| keys.is_epoch(frame));
        self.reading.sealed = sealed;
        for frame in here.values() {
            if let Err(error) = self.unseal_epoch(frame) {
                self.unopened(frame, error);
            }
        }
        !here.is_empty()
    }

    /// Drops what an erasure takes away, and reports what is empty without one.
    fn erase(&mut self) {
        let reading = &mut *self.reading;
        let erasures = &reading.erasures;
        let before = reading.waiting.len();
        reading
            .waiting
            .retain(|waiting| !erasures.iter().any(|one| one.covers(&waiting.frame)));
        let waited = reading.waiting.len() < before;
        let gone = |id| erasures.iter().any(|erasure| erasure.has(id));
        let had = erasures
            .iter()
            .flat_map(|erasure| &erasure.keys)
            .any(|key| reading.people.by_id(key.id).is_some());
        reading.people.forget(|id, _| gone(id));
        let under = &self.under;
        let erased = |read: &Read| {
            let key = under.get(&(read.device, read.sequence));
            key.is_some_and(|key| gone(*key))
        };
        self.found.entries.retain(|read| !erased(read));
        self.found.held.retain(|held| !erased(&held.read));
        self.own.to_empty = had || waited;
        for frame in std::mem::take(&mut self.emptied) {
            if !self.reading.is_erased(&frame) {
                self.report(frame.device(), frame.sequence(), Fault::Emptied);
            }
        }
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
            self.own.anew.push(frame.clone());
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
        self.found.damage.push(Damage::of(device, sequence, fault));
    }
}

impl Own {
    /// The number of the frame by which the keys can be proven; 0 for none.
    pub fn witness(&self) -> u64 {
        self.witness.as_ref().map_or(0, Frame::sequence)
    }

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
