//! One tablet at work: a story, a clock, and names that count up.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use record::{
    Clock, DeviceId, Entry, EntryId, ExamId, Name, PersonDetails, PersonId, Planned, Section, Story,
};
use uuid::Uuid;

#[derive(Clone)]
pub struct Desk {
    pub device: u8,
    pub clock: Clock,
    pub story: Story,
    pub written: Vec<Entry>,
    heard: BTreeMap<u8, usize>,
    now_ms: u64,
}

pub const PERSON: PersonId = PersonId::from_uuid(Uuid::from_u128(0xAA));
pub const EXAM: ExamId = ExamId::from_uuid(Uuid::from_u128(0xE1));

pub fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

pub fn details(given: &str, family: &str) -> PersonDetails {
    PersonDetails {
        name: Name {
            given: given.into(),
            family: family.into(),
        },
        ..PersonDetails::default()
    }
}

impl Desk {
    pub fn new(device: u8) -> Self {
        Self {
            device,
            clock: Clock::default(),
            story: Story::default(),
            written: Vec::new(),
            heard: BTreeMap::new(),
            now_ms: 1_772_611_200_000, // 4 March 2026, 08:00 in universal time
        }
    }

    /// A desk with one person and one exam begun.
    pub fn with_exam(device: u8) -> Self {
        let mut desk = Self::new(device);
        desk.write(desk.story.put_person(PERSON, details("Orla", "Pennyquick")));
        desk.open(EXAM, PERSON, day(2026, 3, 4));
        desk
    }

    pub fn open(&mut self, exam: ExamId, person: PersonId, on: NaiveDate) -> EntryId {
        let planned = self
            .story
            .open_exam(exam, person, "Saltmarsh Court".into(), on);
        self.write(planned.unwrap())
    }

    pub fn put(&mut self, section: Section, reason: Option<&str>) -> EntryId {
        let planned = self
            .story
            .put_section(&EXAM, section, reason.map(str::to_owned));
        self.write(planned.unwrap())
    }

    pub fn sign(&mut self) -> EntryId {
        let planned = self.story.sign(&EXAM, "M. Farrow".into());
        self.write(planned.unwrap())
    }

    pub fn write(&mut self, planned: Planned) -> EntryId {
        self.now_ms += 1000;
        let count = self.written.len() as u128 + 1;
        let id = EntryId::from_uuid(Uuid::from_u128(u128::from(self.device) << 64 | count));
        let author = format!("examiner {}", self.device);
        let stamp = self.clock.tick(self.now_ms);
        let entry = planned.into_entry(id, author, DeviceId([self.device; 16]), stamp);
        self.story.admit(entry.clone()).unwrap();
        self.written.push(entry);
        id
    }

    /// Takes everything that another desk has written since the last time, through its bytes.
    pub fn hear(&mut self, other: &Self) {
        let heard = self.heard.insert(other.device, other.written.len());
        for entry in &other.written[heard.unwrap_or(0)..] {
            self.clock.witness(entry.stamp);
            let read = Entry::from_cbor(&entry.to_cbor()).unwrap();
            self.story.admit(read).unwrap();
        }
    }
}
