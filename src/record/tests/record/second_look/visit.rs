//! Two visits to one person: last time and today.

use optics::SphereCyl;
use optics::retinoscopy::{Neutral, Setup, WorkingDistance};
use record::{
    Acuity, Born, Decision, ExamId, Eye, EyeAcuity, Eyes, Finding, Glasses, NearAdd, PersonDetails,
    Raised, Retinoscopy, Rule, Section, Seen, Subjective, SubjectiveEye, Thresholds, second_look,
};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day, details};

const LAST: ExamId = ExamId::from_uuid(Uuid::from_u128(0xE0));

/// 86 on the day of today’s exam.
pub const BORN: Born = Born::Stated {
    years: 86,
    in_year: 2026,
};

/// Somebody of so many years, seen before and seen today.
pub fn desk(born: Option<Born>, then: &[Section], now: &[Section]) -> Desk {
    let mut desk = Desk::new(1);
    let person = PersonDetails {
        born,
        ..details("Orla", "Pennyquick")
    };
    desk.write(desk.story.put_person(PERSON, person));
    desk.open(LAST, PERSON, day(2025, 3, 4));
    desk.open(EXAM, PERSON, day(2026, 3, 4));
    for (exam, sections) in [(LAST, then), (EXAM, now)] {
        for section in sections {
            let planned = desk.story.put_section(&exam, section.clone(), None);
            desk.write(planned.unwrap());
        }
    }
    desk
}

pub fn look(desk: &Desk) -> Vec<Raised> {
    second_look(&desk.story, &EXAM, &Thresholds::default(), day(2026, 3, 4))
}

pub fn raised(then: &[Section], now: &[Section]) -> Vec<Raised> {
    look(&desk(Some(BORN), then, now))
}

/// Of which eyes a rule asks, of somebody of 86.
pub fn asks(rule: Rule, then: &[Section], now: &[Section]) -> Vec<Option<Eye>> {
    asks_at(Some(86), rule, then, now)
}

pub fn asks_at(
    age: Option<u16>,
    rule: Rule,
    then: &[Section],
    now: &[Section],
) -> Vec<Option<Eye>> {
    let born = age.map(|years| Born::Stated {
        years,
        in_year: 2026,
    });
    let raised = look(&desk(born, then, now));
    let of_rule = raised.iter().filter(|asked| asked.rule == rule);
    of_rule.map(|asked| asked.eye).collect()
}

pub const NEITHER: [Option<Eye>; 0] = [];
pub const ONCE: [Option<Eye>; 1] = [None];
pub const RIGHT: [Option<Eye>; 1] = [Some(Eye::Right)];
pub const BOTH: [Option<Eye>; 2] = [Some(Eye::Right), Some(Eye::Left)];

pub fn lens(text: &str) -> SphereCyl {
    SphereCyl::parse(text).unwrap()
}

/// Chosen at a 6 m chart, with everything beside the lenses as it should be.
pub fn chosen(right: &str, left: &str) -> Subjective {
    let eye = |text| {
        Finding::Done(SubjectiveEye {
            lens: lens(text),
            acuity: None,
        })
    };
    Subjective {
        vertex_mm: Some(12.0),
        add: Some(NearAdd {
            power: 2.5,
            at_cm: 40.0,
        }),
        eyes: Eyes {
            right: eye(right),
            left: eye(left),
        },
        ..Subjective::default()
    }
}

pub fn subjective(right: &str, left: &str) -> Section {
    Section::Subjective(chosen(right, left))
}

/// Chosen with these lines read.
pub fn reading(right: Seen, left: Seen) -> Section {
    let mut chosen = chosen("+1.00 DS", "+1.00 DS");
    for (eye, seen) in [(Eye::Right, right), (Eye::Left, left)] {
        *chosen.eyes.of_mut(eye) = Finding::Done(SubjectiveEye {
            lens: lens("+1.00 DS"),
            acuity: Some(seen),
        });
    }
    Section::Subjective(chosen)
}

/// Neutral in the frame at this distance, without a working lens.
pub fn neutral_at(cm: f64, right: &str, left: &str) -> Retinoscopy {
    let neutral = |text| Finding::Done(Neutral::InFrame(lens(text)));
    Retinoscopy {
        setup: Setup::new(WorkingDistance::from_cm(cm).unwrap(), None),
        eyes: Eyes {
            right: neutral(right),
            left: neutral(left),
        },
        ..Retinoscopy::default()
    }
}

pub fn neutral(right: &str, left: &str) -> Section {
    Section::Retinoscopy(neutral_at(67.0, right, left))
}

pub fn unaided(right: Seen, left: Seen) -> Section {
    acuity(|read, eye| {
        read.unaided = Finding::Done(if eye == Eye::Right { right } else { left });
    })
}

pub fn acuity(change: impl Fn(&mut EyeAcuity, Eye)) -> Section {
    let mut acuity = Acuity::default();
    for eye in Eye::BOTH {
        change(acuity.eyes.of_mut(eye), eye);
    }
    Section::Acuity(acuity)
}

pub fn decided(glasses: Glasses) -> Section {
    Section::Decision(Decision {
        glasses: Some(glasses),
        ..Decision::default()
    })
}
