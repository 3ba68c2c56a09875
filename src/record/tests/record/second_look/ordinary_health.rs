//! The rest of an ordinary exam: history, pupils, near, pressure, drops, front, back and fields.
//!
//! How often old people fall (a third of those over 65 in a year), and how pressure (15.5 ± 2.5 mmHg) and cups (0.35 ± 0.1)
//! spread, is from memory; the two eyes of one person are much alike.

use chrono::NaiveTime;
use demo::Chance;
use record::{
    Afferent, Amount, Angle, Anterior, AnteriorEye, Capacity, Consent, Device, DiscSize, Drops,
    Drug, Eye, Eyes, Fields, Finding, Given, Grade, History, LensState, Mobility, Near, Opacity,
    Part, Posterior, PosteriorEye, Pressure, PupilEye, Pupils, Readings, Section, Taken, WhichEyes,
};

use crate::desk::day;

pub fn health(chance: &mut Chance) -> Vec<Section> {
    vec![
        history(chance),
        consent(),
        pupils(chance),
        near(chance),
        pressure(chance),
        drops(),
        anterior(),
        posterior(chance),
        Fields::normal().into_section(),
    ]
}

fn history(chance: &mut Chance) -> Section {
    let falls = u16::from(chance.one_in(3));
    History {
        falls_in_12_months: Finding::Done(falls),
        mobility: Some(if chance.one_in(4) {
            Mobility::Chair
        } else {
            Mobility::WithAid
        }),
        complaints: Finding::Done(Vec::new()),
        ..History::default()
    }
    .into_section()
}

fn consent() -> Section {
    Consent {
        capacity: Finding::Done(Capacity::Presumed),
        agreed: Finding::Done(record::Agreed::Spoken),
        ..Consent::default()
    }
    .into_section()
}

/// Half of the people have some nuclear opacity.
fn pupils(chance: &mut Chance) -> Section {
    let amount = if chance.one_in(2) {
        Amount::Mild
    } else {
        Amount::Clear
    };
    let eye = || PupilEye {
        lens: Finding::Done(LensState::Own(Opacity {
            nuclear: Some(Grade::Plain(amount)),
            ..Opacity::default()
        })),
        ..PupilEye::default()
    };
    Pupils {
        eyes: Eyes {
            right: eye(),
            left: eye(),
        },
        afferent: Finding::Done(Afferent::None),
    }
    .into_section()
}

fn near(chance: &mut Chance) -> Section {
    let add = Finding::Done(2.25 + 0.25 * (chance.share() * 3.0).floor());
    Near {
        distance_cm: Finding::Done((35.0 + chance.share() * 8.0).round()),
        accepted_d: Eyes {
            right: add.clone(),
            left: add,
        },
        ..Near::default()
    }
    .into_section()
}

fn pressure(chance: &mut Chance) -> Section {
    let of_both = chance.about(15.5, 2.5);
    let readings = |chance: &mut Chance| {
        let eye = chance.about(of_both, 1.0);
        let mmhg = (0..3).map(|_| chance.about(eye, 1.0).round().max(6.0));
        Finding::Done(Readings {
            mmhg: mmhg.collect(),
        })
    };
    Pressure {
        taken: vec![Taken {
            device: Device::Rebound,
            at: NaiveTime::MIN,
            after_dilating: false,
            eyes: Eyes {
                right: readings(chance),
                left: readings(chance),
            },
            note: String::new(),
        }],
    }
    .into_section()
}

fn drops() -> Section {
    Drops {
        given: Finding::Done(vec![Given {
            drug: Drug::Tropicamide,
            strength_percent: Some(0.5),
            batch: "T123".into(),
            expires: Some(day(2027, 1, 31)),
            at: Some(NaiveTime::MIN),
            into: WhichEyes::Both,
            by: String::new(),
        }]),
        allergies_asked: true,
        angle_judged: true,
        ..Drops::default()
    }
    .into_section()
}

fn anterior() -> Section {
    let eye = AnteriorEye {
        angle: Finding::Done(Angle::VanHerick(3)),
        ..AnteriorEye::normal()
    };
    Anterior {
        eyes: Eyes {
            right: eye.clone(),
            left: eye,
        },
        ..Anterior::default()
    }
    .into_section()
}

fn posterior(chance: &mut Chance) -> Section {
    let of_both = chance.about(0.35, 0.1).clamp(0.1, 0.7);
    let mut posterior = Posterior::default();
    for eye in Eye::BOTH {
        let cup = chance.about(of_both, 0.04).clamp(0.0, 1.0);
        *posterior.eyes.of_mut(eye) = PosteriorEye {
            cup_to_disc: Finding::Done((cup * 20.0).round() / 20.0),
            disc_size: Some(DiscSize::Medium),
            ..PosteriorEye::normal()
        };
    }
    posterior.into_section()
}
