//! Reading a vault: every device's log from its first frame on, and later what has come to the others' logs since.

use super::held::{Held, HeldFor};
use super::people::People;
use super::{LedgerError, Read, Refusal};
use crate::damage::{Damage, Fault};
use crate::log::{Admitted, DeviceLog};
use crate::storage::{Storage, StoredFrame};
use std::collections::BTreeMap;
use vault::{
    DeviceId, Frame, Head, KeyFile, Keys, OpenError, PersonKey, Proven, Purpose, Roll, Under,
};

/// Frames read at a time.
const PAGE: usize = 500;

/// Everything that came of reading.
pub struct Replayed {
    pub found: Found,
    pub reading: Reading,
    pub proven: Result<Proven, Refusal>,
}

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
}

/// An entry whose person's key is not here.
struct Waiting {
    frame: Frame,
    /// Whether that was reported.
    told: bool,
}

/// What a log has that was not read yet.
pub struct Rest {
    device: DeviceId,
    head: Head,
    frames: Vec<StoredFrame>,
}

/// Reads everything that is kept.
pub async fn replay<S: Storage>(
    storage: &S,
    keys: &Keys,
    roll: Option<Roll>,
) -> Result<Replayed, LedgerError> {
    check_vault(storage, keys).await?;
    let mut reading = Reading::going_by(roll);
    let mut reader = Reader::new(keys, &mut reading);
    for (device, head) in storage.vector().await? {
        reader.read_log(storage, device, head).await?;
    }
    let (found, own) = reader.finish();
    Ok(Replayed {
        proven: own.prove(keys),
        found,
        reading,
    })
}

/// Fetches what has come to the other devices' logs since they were read.
pub async fn rest<S: Storage>(
    storage: &S,
    keys: &Keys,
    reading: &Reading,
) -> Result<Vec<Rest>, LedgerError> {
    let mut rest = Vec::new();
    for (device, head) in storage.vector().await? {
        let read = reading.logs.get(&device).map_or(1, DeviceLog::next);
        if device == keys.device() || read > head.sequence {
            continue;
        }
        let (mut frames, mut next) = (Vec::new(), Some(read));
        while let Some(from) = next {
            let page = storage.page(device, from, PAGE).await?;
            next = page.last().and_then(|last| last.sequence.checked_add(1));
            frames.extend(page);
        }
        rest.push(Rest {
            device,
            head,
            frames,
        });
    }
    Ok(rest)
}

/// Reads on. Nothing here waits or fails, so that whatever is read is also told.
pub fn read_on(keys: &Keys, reading: &mut Reading, rest: Vec<Rest>) -> Found {
    let mut reader = Reader::new(keys, reading);
    for Rest {
        device,
        head,
        frames,
    } in rest
    {
        let mut log = reader.log_of(device);
        for kept in frames {
            reader.read_frame(&mut log, kept);
        }
        reader.miss(device, log.skip_to(head.sequence.saturating_add(1)));
        reader.reading.logs.insert(device, log);
    }
    reader.finish().0
}

/// Judges anew what is held back.
pub fn judge_anew(keys: &Keys, reading: &mut Reading, roll: Roll) -> Found {
    reading.roll = Some(roll);
    let held = std::mem::take(&mut reading.held);
    let mut reader = Reader::new(keys, reading);
    for frame in held {
        reader.take(&frame);
    }
    reader.finish().0
}

/// Reads frames beside the logs. Their signatures were checked.
pub fn look_at(keys: &Keys, reading: &Reading, frames: &[Frame]) -> Found {
    // What is met on the way is forgotten with this copy.
    let mut aside = Reading {
        people: reading.people.clone(),
        names: reading.names.clone(),
        ..Reading::going_by(reading.roll.clone())
    };
    let mut reader = Reader::new(keys, &mut aside);
    for frame in frames {
        reader.take(frame);
    }
    reader.finish().0
}

/// Keys of another vault would find nothing but damage: better said at once.
async fn check_vault<S: Storage>(storage: &S, keys: &Keys) -> Result<(), LedgerError> {
    let kept = storage
        .key_file()
        .await?
        .and_then(|bytes| KeyFile::from_bytes(&bytes).ok());
    match kept {
        Some(file) if file.vault() != keys.vault() || file.device() != keys.device() => {
            Err(LedgerError::OtherVault)
        }
        _ => Ok(()),
    }
}

struct Reader<'a> {
    keys: &'a Keys,
    reading: &'a mut Reading,
    found: Found,
    own: Own,
}

/// What is learnt about this device's own log on the way.
#[derive(Default)]
struct Own {
    /// Whether there are frames at all.
    any: bool,
    /// The newest frame under the current epoch's key that opened.
    witness: Option<Frame>,
    /// The newest frame, if the log ends soundly with it.
    newest: Option<Frame>,
}

impl<'a> Reader<'a> {
    fn new(keys: &'a Keys, reading: &'a mut Reading) -> Self {
        Self {
            keys,
            reading,
            found: Found::default(),
            own: Own::default(),
        }
    }

    /// Where reading a device's log stands.
    fn log_of(&mut self, device: DeviceId) -> DeviceLog {
        let own = (device == self.keys.device()).then(|| self.keys.public());
        let read = self.reading.logs.remove(&device);
        read.unwrap_or_else(|| DeviceLog::new(self.keys.vault(), device, own))
    }

    async fn read_log<S: Storage>(
        &mut self,
        storage: &S,
        device: DeviceId,
        head: Head,
    ) -> Result<(), LedgerError> {
        let mut log = self.log_of(device);
        let mut newest = None;
        let mut next = Some(1);
        while let Some(from) = next {
            let page = storage.page(device, from, PAGE).await?;
            next = page.last().and_then(|last| last.sequence.checked_add(1));
            for kept in page {
                newest = self.read_frame(&mut log, kept);
            }
        }
        self.miss(device, log.skip_to(head.sequence.saturating_add(1)));
        if device == self.keys.device() {
            self.own.any = true;
            self.own.newest = newest.filter(|_| log.ends_with(head));
        }
        self.reading.logs.insert(device, log);
        Ok(())
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
    fn finish(mut self) -> (Found, Own) {
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
    fn prove(&self, keys: &Keys) -> Result<Proven, Refusal> {
        if !self.any {
            return Err(Refusal::NoLog);
        }
        let newest = self.newest.as_ref().ok_or(Refusal::DamagedEnd)?;
        let witness = self.witness.as_ref().ok_or(Refusal::WrongKey)?;
        keys.prove(witness, newest).map_err(|_| Refusal::WrongKey)
    }
}
