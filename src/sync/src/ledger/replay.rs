//! Reading a whole vault: every device's log from its first frame on.

use super::people::People;
use super::{LedgerError, Read, Refusal};
use crate::damage::{Damage, Fault};
use crate::log::{Admitted, DeviceLog};
use crate::storage::{Storage, StoredFrame};
use std::collections::BTreeMap;
use vault::{DeviceId, Frame, Head, KeyFile, Keys, OpenError, Proven, Purpose, Under};

/// Frames read at a time.
const PAGE: usize = 500;

/// Everything that came of reading.
pub struct Replayed {
    pub entries: Vec<Read>,
    pub damage: Vec<Damage>,
    pub unread: usize,
    pub people: People,
    pub proven: Result<Proven, Refusal>,
}

/// Reads everything that is kept.
pub async fn replay<S: Storage>(storage: &S, keys: &Keys) -> Result<Replayed, LedgerError> {
    check_vault(storage, keys).await?;
    let mut reader = Reader::new(keys);
    for (device, head) in storage.vector().await? {
        reader.read_log(storage, device, head).await?;
    }
    Ok(reader.finish())
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
    entries: Vec<Read>,
    damage: Vec<Damage>,
    unread: usize,
    people: People,
    /// Entries whose person's key may stand in a log that is read later.
    waiting: Vec<Frame>,
    names: BTreeMap<DeviceId, String>,
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
    fn new(keys: &'a Keys) -> Self {
        Self {
            keys,
            entries: Vec::new(),
            damage: Vec::new(),
            unread: 0,
            people: People::default(),
            waiting: Vec::new(),
            names: BTreeMap::new(),
            own: Own::default(),
        }
    }

    async fn read_log<S: Storage>(
        &mut self,
        storage: &S,
        device: DeviceId,
        head: Head,
    ) -> Result<(), LedgerError> {
        let own = (device == self.keys.device()).then(|| self.keys.public());
        let mut log = DeviceLog::new(self.keys.vault(), device, own);
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
        if own.is_some() {
            self.own.any = true;
            self.own.newest = newest.filter(|_| log.ends_with(head));
        }
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
                self.names.insert(frame.device(), introduction.name);
            }),
            Purpose::PersonKey => self
                .keys
                .open_person_key(frame)
                .map(|key| self.people.add(key)),
            Purpose::Entry if self.keys.is_epoch(frame) => self
                .keys
                .open(frame, Under::Epoch)
                .map(|payload| self.keep(frame, None, payload.to_vec())),
            Purpose::Entry if self.people.by_id(frame.header().key).is_none() => {
                self.waiting.push(frame.clone());
                return;
            }
            Purpose::Entry => return self.take_personal(frame),
            Purpose::Later(_) => {
                self.unread += 1;
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
        let opened = match self.people.by_id(frame.header().key) {
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

    fn finish(mut self) -> Replayed {
        for frame in std::mem::take(&mut self.waiting) {
            self.take_personal(&frame);
        }
        self.entries
            .sort_by_key(|entry| (entry.device, entry.sequence));
        self.damage
            .sort_by_key(|damage| (damage.device, damage.sequence));
        for damage in &mut self.damage {
            damage.device_name = self.names.get(&damage.device).cloned();
        }
        let proven = self.own.prove(self.keys);
        Replayed {
            entries: self.entries,
            damage: self.damage,
            unread: self.unread,
            people: self.people,
            proven,
        }
    }

    fn keep(&mut self, frame: &Frame, subject: Option<vault::Subject>, payload: Vec<u8>) {
        self.entries.push(Read {
            device: frame.device(),
            sequence: frame.sequence(),
            subject,
            payload,
        });
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
        self.damage.push(Damage {
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
