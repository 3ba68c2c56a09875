//! Exams of invented people with something in every section, for tests of what is made from them.

use chrono::{NaiveDate, NaiveTime};
use optics::SphereCyl;
use optics::acuity::ChartLine;
use optics::prism::Prism;
use optics::retinoscopy::Neutral;
use record::{
    Acuity, Anterior, Born, Chart, Complaint, Decision, Device, DeviceId, Drops, Drug, Entry,
    EntryId, Exam, ExamId, EyeAcuity, Eyes, Finding, Fitted, Fitting, Given, Glasses, History,
    LensForm, Looks, MadeLens, Name, NearAdd, Order, OrderedLens, OrderedPair, Person,
    PersonDetails, PersonId, Planned, Posterior, Pressure, Readings, Recall, Referral, Retinoscopy,
    Section, SectionKind, Seen, Stamp, Story, Subjective, SubjectiveEye, Symptom, Taken, Urgency,
    UsedFor, WhichEyes,
};
use uuid::Uuid;

/// 4 March 2026, 08:00 in universal time.
const MORNING_MS: u64 = 1_772_611_200_000;

/// Somebody who writes entries.
#[derive(Clone, Default)]
pub struct Desk {
    /// What was written so far.
    pub story: Story,
    /// The same, entry by entry.
    pub entries: Vec<Entry>,
}

/// The one person of a desk.
pub const PERSON: PersonId = PersonId::from_uuid(Uuid::from_u128(0xAA));
/// Their exam.
pub const EXAM: ExamId = ExamId::from_uuid(Uuid::from_u128(0xE1));

/// A day.
///
/// # Panics
/// For one that is in no calendar.
pub fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).expect("a day of the calendar")
}

/// A lens as it is written.
///
/// # Panics
/// For what is no lens.
pub fn lens(written: &str) -> SphereCyl {
    SphereCyl::parse(written).expect("a lens as it is written")
}

fn at(hour: u32, minute: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, minute, 0).expect("a time of the day")
}

fn line(denominator: u8, letters: i8) -> Seen {
    let line = ChartLine::new(denominator).expect("a line of the chart");
    Seen::Line { line, letters }
}

/// Orla Pennyquick, born 31 January 1940.
pub fn orla() -> PersonDetails {
    PersonDetails {
        name: Name {
            given: "Orla".into(),
            family: "Pennyquick".into(),
        },
        born: Some(Born::Date(day(1940, 1, 31))),
        place: "Saltmarsh Court".into(),
        room: "12".into(),
        ..PersonDetails::default()
    }
}

impl Desk {
    /// One person with an exam that was opened on 4 March 2026.
    pub fn with_exam(details: PersonDetails) -> Self {
        let mut desk = Self::default();
        desk.write(desk.story.put_person(PERSON, details));
        desk.open(EXAM, PERSON, "Saltmarsh Court", day(2026, 3, 4));
        desk
    }

    /// Opens an exam.
    ///
    /// # Panics
    /// Of somebody who is not on record.
    pub fn open(&mut self, exam: ExamId, person: PersonId, place: &str, on: NaiveDate) {
        let planned = self.story.open_exam(exam, person, place.into(), on);
        self.write(planned.expect("the person is on record"));
    }

    /// Writes a section of the exam.
    ///
    /// # Panics
    /// Where the exam is signed.
    pub fn put(&mut self, section: Section) {
        let planned = self.story.put_section(&EXAM, section, None);
        self.write(planned.expect("the exam is open"));
    }

    /// Changes a section of the signed exam.
    ///
    /// # Panics
    /// Where it can't be.
    pub fn amend(&mut self, section: Section, reason: &str) {
        let planned = self.story.put_section(&EXAM, section, Some(reason.into()));
        self.write(planned.expect("the exam is there"));
    }

    /// Signs the exam.
    ///
    /// # Panics
    /// Where it can't be.
    pub fn sign(&mut self) {
        let planned = self.story.sign(&EXAM, "M. Farrow, optometrist".into());
        self.write(planned.expect("the exam can be signed"));
    }

    /// Writes what was planned.
    ///
    /// # Panics
    /// Where another entry has its number.
    pub fn write(&mut self, planned: Planned) -> Entry {
        let number = self.entries.len() as u64 + 1;
        let stamp = Stamp {
            wall_ms: MORNING_MS + number,
            counter: 0,
        };
        let id = EntryId::from_uuid(Uuid::from_u128(number.into()));
        let entry = planned.into_entry(id, "M. Farrow".into(), DeviceId([1; 16]), stamp);
        let admitted = self.story.admit(entry.clone());
        admitted.expect("no two entries have one number");
        self.entries.push(entry.clone());
        entry
    }

    /// The person.
    ///
    /// # Panics
    /// Where there is none.
    pub fn person(&self) -> &Person {
        self.story.person(&PERSON).expect("the person is on record")
    }

    /// The exam.
    ///
    /// # Panics
    /// Where there is none.
    pub fn exam(&self) -> &Exam {
        self.story.exam(&EXAM).expect("the exam is on record")
    }

    /// A visit with something in every section, signed, its glasses ordered and come.
    pub fn full() -> Self {
        Self::full_of(orla())
    }

    /// The same of somebody else.
    pub fn full_of(details: PersonDetails) -> Self {
        let mut desk = Self::unsigned(details);
        desk.sign();
        desk.put(Section::Order(order()));
        desk.put(Section::Fitting(fitting()));
        desk
    }

    /// The same before it is signed.
    pub fn unsigned(details: PersonDetails) -> Self {
        let mut desk = Self::with_exam(details);
        desk.put(Section::History(history()));
        desk.put(Section::Acuity(acuity()));
        desk.put(usual(SectionKind::Pupils));
        desk.put(Section::Retinoscopy(retinoscopy()));
        desk.put(Section::Subjective(subjective()));
        desk.put(Section::Pressure(pressure()));
        desk.put(Section::Drops(drops()));
        desk.put(Section::Anterior(anterior()));
        desk.put(Section::Posterior(posterior()));
        desk.put(usual(SectionKind::Fields));
        desk.put(Section::Decision(decision()));
        desk
    }
}

/// A section with nothing out of the ordinary.
fn usual(kind: SectionKind) -> Section {
    let normal = Section::empty(kind).normal_where_blank();
    normal.expect("the section has something that is normal")
}

/// Blurred near, allergic to nothing.
pub fn history() -> History {
    History {
        reason: "cannot read the paper any more".into(),
        cannot_travel: "does not leave the house".into(),
        complaints: Finding::Done(vec![Complaint {
            what: Symptom::BlurredNear,
            eye: None,
            words: "since the winter".into(),
        }]),
        medicines: "amlodipine".into(),
        allergies: Finding::Done("none known".into()),
        ..History::default()
    }
}

/// A 6 m chart at 3 m.
pub fn acuity() -> Acuity {
    let eye = |unaided, with_glasses| EyeAcuity {
        unaided: Finding::Done(unaided),
        with_glasses: Finding::Done(with_glasses),
        pinhole: Finding::Blank,
    };
    Acuity {
        chart: Chart {
            made_for_m: 6.0,
            used_at_m: 3.0,
        },
        eyes: Eyes {
            right: eye(line(36, 0), line(12, -1)),
            left: eye(Seen::Fingers { at_cm: 30 }, line(18, 0)),
        },
    }
}

/// Neutral at 67 cm without a working lens.
pub fn retinoscopy() -> Retinoscopy {
    let eye = |written| Finding::Done(Neutral::InFrame(lens(written)));
    Retinoscopy {
        eyes: Eyes {
            right: eye("+5.75 / −1.50 × 90"),
            left: eye("+0.75 / −0.50 × 5"),
        },
        ..Retinoscopy::default()
    }
}

/// Strong enough a lens for its distance from the eye to matter.
pub fn subjective() -> Subjective {
    let eye = |written, acuity| {
        Finding::Done(SubjectiveEye {
            lens: lens(written),
            acuity: Some(acuity),
        })
    };
    Subjective {
        chart: acuity().chart,
        vertex_mm: Some(12.0),
        add: Some(NearAdd {
            power: 2.5,
            at_cm: 40.0,
        }),
        eyes: Eyes {
            right: eye("+4.25 / −1.50 × 90", line(9, 0)),
            left: eye("−0.75 / −0.50 × 5", line(12, 0)),
        },
        ..Subjective::default()
    }
}

/// By a rebound tonometer before the drops.
pub fn pressure() -> Pressure {
    let readings = |each: &[f64]| {
        Finding::Done(Readings {
            mmhg: each.to_vec(),
        })
    };
    Pressure {
        taken: vec![Taken {
            device: Device::Rebound,
            at: at(13, 50),
            after_dilating: false,
            eyes: Eyes {
                right: readings(&[15.0, 16.0, 17.0]),
                left: readings(&[23.0]),
            },
            note: String::new(),
        }],
    }
}

/// Tropicamide into both eyes.
pub fn drops() -> Drops {
    Drops {
        given: Finding::Done(vec![Given {
            drug: Drug::Tropicamide,
            strength_percent: Some(0.5),
            batch: "K12".into(),
            expires: Some(day(2027, 3, 3)),
            at: Some(at(14, 5)),
            into: WhichEyes::Both,
            by: String::new(),
        }]),
        allergies_asked: true,
        angle_judged: true,
        told_person: "blur and glare until the evening".into(),
        told_staff: "Keep near when she walks this afternoon.".into(),
        reaction: String::new(),
    }
}

fn anterior() -> Anterior {
    let Section::Anterior(mut anterior) = usual(SectionKind::Anterior) else {
        return Anterior::default();
    };
    anterior.looked_with = "loupe and torch".into();
    anterior.eyes.right.lids = Finding::Done(Looks::Other("lower lid turns out".into()));
    anterior
}

/// A large cup in the left eye.
pub fn posterior() -> Posterior {
    let mut posterior = Posterior::normal();
    posterior.eyes.right.cup_to_disc = Finding::Done(0.4);
    posterior.eyes.left.cup_to_disc = Finding::Done(0.7);
    posterior.eyes.left.disc = Finding::Done(Looks::Other("rim thin below".into()));
    posterior
}

/// Glasses, and a referral.
pub fn decision() -> Decision {
    Decision {
        glasses: Some(Glasses::Prescribe),
        refer: Some(Referral {
            urgency: Urgency::Soon,
            to: "the eye clinic, Gull Harbour Hospital".into(),
        }),
        advice: "Wear the far pair when you walk.".into(),
        recall: Some(Recall {
            months: 12,
            reason: "pressure and disc".into(),
        }),
        note: String::new(),
    }
}

/// A pair for far with a prism, and one for near.
///
/// # Panics
/// Never.
pub fn order() -> Order {
    let prism = Prism::new(2.0, 1.5).expect("a prism of ordinary size");
    let lens_at = |written: &str, centre_mm| OrderedLens {
        centre_mm: Some(centre_mm),
        ..OrderedLens::new(lens(written))
    };
    let far = OrderedPair {
        used_for: UsedFor::Far,
        form: LensForm::SingleVision,
        lenses: Eyes {
            right: Some(OrderedLens {
                prism: Some(prism),
                ..lens_at("+4.25 / −1.50 × 90", 31.0)
            }),
            left: Some(lens_at("−0.75 / −0.50 × 5", 30.5)),
        },
        vertex_mm: Some(14.0),
        frame: "Skerry 48, brown".into(),
        lens_note: "index 1.6, no tint".into(),
        engraved: Some("Orla P.".into()),
    };
    let near = OrderedPair {
        used_for: UsedFor::Near,
        lenses: Eyes {
            right: Some(lens_at("+6.75 / −1.50 × 90", 29.5)),
            left: Some(lens_at("+1.75 / −0.50 × 5", 29.0)),
        },
        engraved: Some("Orla P.".into()),
        ..OrderedPair::default()
    };
    Order {
        pairs: vec![far, near],
        made_by: "Lantern Quay Lenses".into(),
        sent_on: Some(day(2026, 3, 6)),
    }
}

/// The near pair as it came, its left axis off.
pub fn fitting() -> Fitting {
    let made = |written| {
        Finding::Done(MadeLens {
            lens: lens(written),
            add_d: None,
            prism: None,
            height_mm: None,
        })
    };
    Fitting {
        pairs: vec![Fitted {
            pair: 1,
            received_on: Some(day(2026, 3, 18)),
            lenses: Eyes {
                right: made("+6.75 / −1.37 × 90"),
                left: made("+1.75 / −0.50 × 20"),
            },
            name_on_it: Some(true),
            fitted_on: Some(day(2026, 3, 20)),
            adjusted: "sides bent in".into(),
            reaction: Finding::Done("reads the paper".into()),
            ..Fitted::default()
        }],
    }
}
