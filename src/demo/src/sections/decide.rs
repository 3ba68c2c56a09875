//! What is done about it, and the glasses that are to be made.

use chrono::NaiveDateTime;
use record::{
    Decision, Glasses, Order, OrderedLens, OrderedPair, Part, Recall, Referral, Section, Urgency,
    UsedFor,
};

use super::Today;
use crate::course::Course;
use crate::somebody::Somebody;

pub fn decision(somebody: &Somebody, today: &Today) -> Section {
    let refer = today.refers.then(|| Referral {
        urgency: Urgency::Routine,
        to: "the islands\u{2019} eye clinic, for the clouded lenses".into(),
    });
    let advice = match somebody.course {
        Course::LowVision => "light from behind the good side; the stand magnifier on the tray",
        Course::Clouding => "a brim against glare; a light for reading",
        _ if today.prescribes => "the new pair from the first morning on, in the house first",
        _ => "the present glasses are right: clean them daily",
    };
    Decision {
        glasses: Some(if today.prescribes {
            Glasses::Prescribe
        } else {
            Glasses::LeaveAlone
        }),
        refer,
        advice: advice.into(),
        recall: Some(Recall {
            months: 12,
            reason: "yearly visit to the home".into(),
        }),
        note: String::new(),
    }
    .into_section()
}

pub fn order(today: &Today, somebody: &Somebody, at: NaiveDateTime) -> Section {
    let lens = |half_mm: f64| {
        move |lens: &optics::SphereCyl| {
            Some(OrderedLens {
                centre_mm: Some(half_mm),
                ..OrderedLens::new(*lens)
            })
        }
    };
    let pair = OrderedPair {
        used_for: UsedFor::Far,
        lenses: today.chosen.map(lens(31.0)),
        vertex_mm: Some(12.0),
        frame: "the one that is worn".into(),
        engraved: Some(somebody.details.name.to_string()),
        ..OrderedPair::default()
    };
    Order {
        pairs: vec![pair],
        made_by: "the workshop at Port Lunnock".into(),
        sent_on: Some(at.date()),
    }
    .into_section()
}
