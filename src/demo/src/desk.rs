//! The tablets at which it is written: a story of one person, clocks, and names for what is written.

use chrono::{NaiveDateTime, TimeDelta};
use record::{
    Clock, DeviceId, Entry, EntryId, ExamId, PersonId, Planned, RecordError, Section, Story,
};
use uuid::{Builder, Uuid};

use crate::EXAMINER;
use crate::chance::Chance;
use crate::somebody::Somebody;

/// Which of two tablets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tablet {
    #[default]
    Bedside,
    Second,
}

impl Tablet {
    /// No tablet's real id is one byte over and over.
    const fn device(self) -> DeviceId {
        DeviceId(match self {
            Self::Bedside => [0xD1; 16],
            Self::Second => [0xD2; 16],
        })
    }
}

pub struct Desk {
    pub story: Story,
    pub written: Vec<Entry>,
    pub tablet: Tablet,
    clock: Clock,
    now_ms: u64,
    ids: Chance,
}

impl Desk {
    pub fn new(ids: Chance) -> Self {
        Self {
            story: Story::default(),
            written: Vec::new(),
            tablet: Tablet::Bedside,
            clock: Clock::default(),
            now_ms: 0,
            ids,
        }
    }

    /// Goes on at this time, by universal time.
    pub fn at(&mut self, time: NaiveDateTime) {
        self.now_ms = u64::try_from(time.and_utc().timestamp_millis()).unwrap_or_default();
    }

    /// Puts the person down, an hour before the first visit.
    pub fn put_down(&mut self, somebody: &Somebody, first: NaiveDateTime) -> PersonId {
        self.at(first - TimeDelta::hours(1));
        let person = PersonId::from_uuid(self.id());
        let planned = self.story.put_person(person, somebody.details.clone());
        self.write(Ok(planned));
        person
    }

    pub fn open(&mut self, person: PersonId, somebody: &Somebody, at: NaiveDateTime) -> ExamId {
        self.at(at);
        let exam = ExamId::from_uuid(self.id());
        let place = somebody.details.place.clone();
        let planned = self.story.open_exam(exam, person, place, at.date());
        self.write(planned);
        exam
    }

    pub fn put(&mut self, exam: ExamId, section: Section) {
        let planned = self.story.put_section(&exam, section, None);
        self.write(planned);
    }

    /// Writes what was planned, two minutes after what was written last. A refusal writes nothing; tests see to it that
    /// none comes.
    pub fn write(&mut self, planned: Result<Planned, RecordError>) {
        let Ok(planned) = planned else { return };
        self.now_ms += 120_000;
        let id = EntryId::from_uuid(self.id());
        let stamp = self.clock.tick(self.now_ms);
        let entry = planned.into_entry(id, EXAMINER.into(), self.tablet.device(), stamp);
        // Every id is drawn anew, so nothing clashes.
        if self.story.admit(entry.clone()).is_ok() {
            self.written.push(entry);
        }
    }

    fn id(&mut self) -> Uuid {
        let mut random = [0; 10];
        random[..8].copy_from_slice(&self.ids.next().to_be_bytes());
        random[8..].copy_from_slice(&self.ids.next().to_be_bytes()[..2]);
        Builder::from_unix_timestamp_millis(self.now_ms, &random).into_uuid()
    }
}
