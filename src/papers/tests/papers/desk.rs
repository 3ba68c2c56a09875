//! An exam of an invented person, written entry by entry.

use chrono::NaiveDate;
use optics::SphereCyl;
use optics::acuity::ChartLine;
use optics::retinoscopy::Neutral;
use papers::{PaperError, Prescription};
use record::{
    Born, Decision, DeviceId, Entry, EntryId, Exam, ExamId, Eyes, Finding, Glasses, Name,
    PersonDetails, PersonId, Planned, Retinoscopy, Section, Seen, Stamp, Story, Subjective,
    SubjectiveEye,
};
use uuid::Uuid;

pub const PERSON: PersonId = PersonId::from_uuid(Uuid::from_u128(0xAA));
pub const EXAM: ExamId = ExamId::from_uuid(Uuid::from_u128(0xE1));

/// 4 March 2026, 08:00 in universal time.
const MORNING_MS: u64 = 1_772_611_200_000;

#[derive(Clone, Default)]
pub struct Desk {
    pub story: Story,
    written: u16,
}

pub fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

pub fn orla() -> PersonDetails {
    PersonDetails {
        name: Name {
            given: "Orla".into(),
            family: "Pennyquick".into(),
        },
        born: Some(Born::Date(day(1940, 1, 31))),
        ..PersonDetails::default()
    }
}

impl Desk {
    pub fn with_exam(details: PersonDetails) -> Self {
        let mut desk = Self::default();
        desk.write(desk.story.put_person(PERSON, details));
        let place = "Saltmarsh Court".into();
        let opened = desk.story.open_exam(EXAM, PERSON, place, day(2026, 3, 4));
        desk.write(opened.unwrap());
        desk
    }

    /// With lenses chosen, a decision to prescribe, and a signature.
    pub fn signed(subjective: Subjective) -> Self {
        let mut desk = Self::with_exam(orla());
        desk.put(Section::Subjective(subjective));
        desk.put(prescribe());
        desk.sign();
        desk
    }

    pub fn put(&mut self, section: Section) {
        let planned = self.story.put_section(&EXAM, section, None);
        self.write(planned.unwrap());
    }

    pub fn amend(&mut self, section: Section, reason: &str) {
        let planned = self.story.put_section(&EXAM, section, Some(reason.into()));
        self.write(planned.unwrap());
    }

    pub fn sign(&mut self) {
        let planned = self.story.sign(&EXAM, "M. Farrow, optometrist".into());
        self.write(planned.unwrap());
    }

    pub fn write(&mut self, planned: Planned) -> Entry {
        self.written += 1;
        let id = EntryId::from_uuid(Uuid::from_u128(self.written.into()));
        let stamp = Stamp {
            wall_ms: MORNING_MS + u64::from(self.written),
            counter: 0,
        };
        let entry = planned.into_entry(id, "M. Farrow".into(), DeviceId([1; 16]), stamp);
        self.story.admit(entry.clone()).unwrap();
        entry
    }

    pub fn exam(&self) -> &Exam {
        self.story.exam(&EXAM).unwrap()
    }

    pub fn prescription(&self) -> Result<Prescription, PaperError> {
        let person = self.story.person(&PERSON).unwrap();
        Prescription::from_exam(person, self.exam(), day(2026, 3, 5))
    }
}

pub fn prescribe() -> Section {
    Section::Decision(Decision {
        glasses: Some(Glasses::Prescribe),
        ..Decision::default()
    })
}

pub fn leave_alone() -> Section {
    Section::Decision(Decision {
        glasses: Some(Glasses::LeaveAlone),
        ..Decision::default()
    })
}

pub fn chosen(lens: &str, line: u8) -> Finding<SubjectiveEye> {
    Finding::Done(SubjectiveEye {
        lens: SphereCyl::parse(lens).unwrap(),
        acuity: Some(Seen::Line {
            line: ChartLine::new(line).unwrap(),
            letters: 0,
        }),
    })
}

pub fn lenses(right: &str, left: &str) -> Subjective {
    Subjective {
        eyes: Eyes {
            right: chosen(right, 9),
            left: chosen(left, 12),
        },
        ..Subjective::default()
    }
}

pub fn unable<T>(reason: &str) -> Finding<T> {
    Finding::Unable {
        reason: reason.into(),
    }
}

/// Neutral at 67 cm without a working lens.
pub fn neutral(right: &str, left: Finding<Neutral>) -> Section {
    let right = Finding::Done(Neutral::InFrame(SphereCyl::parse(right).unwrap()));
    Section::Retinoscopy(Retinoscopy {
        eyes: Eyes { right, left },
        ..Retinoscopy::default()
    })
}
