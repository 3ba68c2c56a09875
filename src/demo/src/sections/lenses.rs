//! The lenses that the person chose, and what helps near by.

use optics::vertex;
use record::{
    Eye, Eyes, Finding, Magnified, Near, NearAdd, Part, PrintRead, PrintSize, Section, Subjective,
    SubjectiveEye,
};

use super::Today;
use super::sight::seen;
use crate::chance::Chance;
use crate::course::Course;
use crate::somebody::Somebody;

pub fn subjective(somebody: &Somebody, today: &Today, found: &mut Chance) -> Section {
    let (chart, chosen) = (somebody.chart, &today.chosen);
    let strong = vertex::matters(&chosen.right) || vertex::matters(&chosen.left);
    let eye = |eye: Eye, found: &mut Chance| {
        Finding::Done(SubjectiveEye {
            lens: *chosen.of(eye),
            acuity: Some(seen(&chart, found.about(somebody.eyes.of(eye).best, 0.03))),
        })
    };
    Subjective {
        chart,
        for_the_room: chart.used_at_m < 6.0,
        vertex_mm: strong.then_some(12.0),
        add: Some(NearAdd {
            power: today.add,
            at_cm: today.near_cm,
        }),
        eyes: Eyes {
            right: eye(Eye::Right, found),
            left: eye(Eye::Left, found),
        },
        ..Subjective::default()
    }
    .into_section()
}

pub fn near(somebody: &Somebody, today: &Today) -> Section {
    let task = somebody.details.looks_at.last();
    let low = somebody.course == Course::LowVision;
    let magnified = Magnified {
        times: 3.0,
        by: "a stand with its own light".into(),
    };
    Near {
        task: task.map(|task| task.what.clone()).unwrap_or_default(),
        distance_cm: Finding::Done(today.near_cm),
        accepted_d: Eyes {
            right: Finding::Done(today.add),
            left: Finding::Done(today.add),
        },
        read: Finding::Done(PrintRead {
            print: PrintSize::N(if low { 24.0 } else { 6.0 }),
            at_cm: today.near_cm,
        }),
        magnified: if low {
            Finding::Done(magnified)
        } else {
            Finding::Blank
        },
        ..Near::default()
    }
    .into_section()
}
