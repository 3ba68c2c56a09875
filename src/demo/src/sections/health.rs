//! Pressure, drops, the front and the back of the eye, fields.

use chrono::{Days, NaiveTime, TimeDelta};
use record::{
    Amount, Angle, Anterior, AnteriorEye, Device, DiscSize, Drops, Drug, Eye, Eyes, Fields,
    Finding, Given, Looks, Part, Posterior, PosteriorEye, Pressure, Readings, Section, Taken, View,
    Viewed, WhichEyes,
};

use super::Today;
use crate::chance::Chance;
use crate::course::Course;
use crate::eye::TrueEye;
use crate::somebody::Somebody;

/// Three readings of a rebound tonometer; now and then one of a puff of air beside it, which reads a little higher.
pub fn pressure(somebody: &Somebody, today: &Today, found: &mut Chance) -> Section {
    let at = (today.at + TimeDelta::minutes(18)).time();
    let mut taken = vec![taken(somebody, Device::Rebound, at, 0.0, found)];
    if found.one_in(6) {
        taken.push(self::taken(somebody, Device::NonContact, at, 0.8, found));
    }
    Pressure { taken }.into_section()
}

fn taken(
    somebody: &Somebody,
    device: Device,
    at: NaiveTime,
    higher: f64,
    found: &mut Chance,
) -> Taken {
    let readings = |eye: &TrueEye, found: &mut Chance| {
        let mmhg = (0..3).map(|_| found.about(eye.pressure + higher, 0.9).round().max(6.0));
        Finding::Done(Readings {
            mmhg: mmhg.collect(),
        })
    };
    Taken {
        device,
        at,
        after_dilating: false,
        eyes: Eyes {
            right: readings(&somebody.eyes.right, found),
            left: readings(&somebody.eyes.left, found),
        },
        note: String::new(),
    }
}

pub fn drops(today: &Today) -> Section {
    Drops {
        given: Finding::Done(vec![Given {
            drug: Drug::Tropicamide,
            strength_percent: Some(0.5),
            batch: "made-up 17".into(),
            expires: today.at.date().checked_add_days(Days::new(300)),
            at: Some((today.at + TimeDelta::minutes(20)).time()),
            into: WhichEyes::Both,
            by: String::new(),
        }]),
        allergies_asked: true,
        angle_judged: true,
        told_person: "blurred and dazzled until the evening".into(),
        told_staff: "walks with help today; pain or haloes: ring at once".into(),
        ..Drops::default()
    }
    .into_section()
}

pub fn anterior() -> Section {
    let eye = AnteriorEye {
        angle: Finding::Done(Angle::VanHerick(3)),
        ..AnteriorEye::normal()
    };
    Anterior {
        looked_with: "hand-held slit lamp".into(),
        eyes: Eyes {
            right: eye.clone(),
            left: eye,
        },
    }
    .into_section()
}

pub fn posterior(somebody: &Somebody, found: &mut Chance) -> Section {
    let mut posterior = Posterior::default();
    for eye in Eye::BOTH {
        let is = somebody.eyes.of(eye);
        let cup = found.about(is.cup, 0.02).clamp(0.0, 1.0);
        *posterior.eyes.of_mut(eye) = PosteriorEye {
            viewed: Some(Viewed::Direct),
            view: Finding::Done(match is.amount() {
                Amount::Clear | Amount::Mild => View::Clear,
                Amount::Moderate => View::Hazy,
                Amount::Dense => View::Poor,
            }),
            cup_to_disc: Finding::Done((cup * 20.0).round() / 20.0),
            disc_size: Some(DiscSize::Medium),
            macula: Finding::Done(macula(somebody.course)),
            ..PosteriorEye::normal()
        };
    }
    posterior.into_section()
}

fn macula(course: Course) -> Looks {
    match course {
        Course::LowVision => Looks::Other("wide atrophy, known for years".into()),
        _ => Looks::Normal,
    }
}

pub fn fields() -> Section {
    Fields::normal().into_section()
}
