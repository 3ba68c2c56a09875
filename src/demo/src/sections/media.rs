//! Pupils, and how clear the way of the light is.

use record::{Amount, Eyes, Finding, Grade, LensState, Opacity, Part, PupilEye, Pupils, Section};

use crate::chance::Chance;
use crate::course::Course;
use crate::eye::TrueEye;
use crate::somebody::Somebody;

pub fn pupils(somebody: &Somebody, found: &mut Chance) -> Section {
    let normal = Pupils::normal();
    let eye = |is: &TrueEye, found: &mut Chance| {
        let half_mm = |mm: f64| (mm * 2.0).round() / 2.0;
        let light = half_mm(found.about(is.pupil_mm, 0.15)).max(1.0);
        PupilEye {
            light_mm: Finding::Done(light),
            dark_mm: Finding::Done(light + 0.5),
            lens: Finding::Done(lens(somebody.course, is)),
            ..normal.eyes.right.clone()
        }
    };
    Pupils {
        eyes: Eyes {
            right: eye(&somebody.eyes.right, found),
            left: eye(&somebody.eyes.left, found),
        },
        afferent: normal.afferent,
    }
    .into_section()
}

fn lens(course: Course, eye: &TrueEye) -> LensState {
    if course == Course::Implants {
        return LensState::Implant {
            capsule: Some(Amount::Clear),
        };
    }
    LensState::Own(Opacity {
        nuclear: Some(Grade::Plain(eye.amount())),
        ..Opacity::default()
    })
}
