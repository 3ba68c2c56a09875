//! What is written down at one visit, section by section.
//!
//! How far what is found lies from what is there, one standard deviation:
//! - two refractions of one person differ in mean sphere within ±0.49 D 19 times in 20 (Sheedy, Schanz and Bullimore 2004,
//!   Optom Vis Sci 81:334-340), so one is within 0.177 D of the eye; crossed cylinders by 0.085 D (`MacKenzie` 2008,
//!   Ophthalmic Physiol Opt 28:143-150);
//! - retinoscopy less what is chosen is ±0.33 D in mean sphere, ±0.10 and ±0.08 D in the cylinder (Jorge et al. 2005, Optom
//!   Vis Sci 82:64-68);
//! - the rest is from memory, or this project's own choice.

mod decide;
mod health;
mod lenses;
mod media;
mod retinoscopy;
mod sight;
mod talk;

pub use decide::order;

use chrono::NaiveDateTime;
use optics::{SphereCyl, Step};
use record::{Eyes, Section};

use crate::chance::Chance;
use crate::course::Course;
use crate::somebody::Somebody;

/// What is found and decided today, and stands in more than one section.
pub struct Today {
    pub at: NaiveDateTime,
    /// What retinoscopy finds.
    pub net: Eyes<SphereCyl>,
    /// What the person chooses at their chart.
    pub chosen: Eyes<SphereCyl>,
    /// Where print is held, in centimetres.
    pub near_cm: f64,
    pub add: f64,
    pub prescribes: bool,
    pub refers: bool,
}

/// A change of this much blur is worth new lenses, in dioptres. Own choice.
const WORTH_IT: f64 = 0.55;

/// A clouded lens is sent on once the better lens reads no more than this, in logMAR: 6/15. Own choice.
const SENT_ON_FROM: f64 = 0.4;

impl Today {
    pub fn of(somebody: &Somebody, at: NaiveDateTime, found: &mut Chance) -> Self {
        let allowance = allowance(somebody);
        let net = somebody
            .eyes
            .map(|eye| eye.found([0.33, 0.10, 0.08], found));
        let chosen = somebody.eyes.map(|eye| {
            let chosen = eye.found([0.177, 0.085, 0.085], found);
            let at_chart = chosen.with_sphere_changed(allowance);
            at_chart.rounded(Step::Quarter).value
        });
        let near = somebody.details.looks_at.last();
        let near_cm = near.and_then(|near| near.at_cm).map_or(40.0, f64::from);
        let worth_it = |(chosen, worn): (&SphereCyl, &SphereCyl)| {
            chosen.vector().distance(&worn.vector()) >= WORTH_IT
        };
        let either = [
            (&chosen.right, &somebody.worn.right),
            (&chosen.left, &somebody.worn.left),
        ];
        let clouding = somebody.course == Course::Clouding;
        let refers = clouding
            && somebody
                .eyes
                .each()
                .iter()
                .any(|(_, eye)| eye.best >= SENT_ON_FROM);
        let prescribes =
            somebody.course != Course::LowVision && !refers && either.into_iter().any(worth_it);
        Self {
            at,
            net,
            chosen,
            near_cm,
            add: ((100.0 / near_cm) * 4.0).floor() / 4.0,
            prescribes,
            refers,
        }
    }
}

/// What the chart's distance leaves in the lens, in dioptres: a chart nearer than six metres is in a room that its person
/// seldom leaves, and the lens is for that.
fn allowance(somebody: &Somebody) -> f64 {
    if somebody.chart.used_at_m < 6.0 {
        1.0 / somebody.chart.used_at_m
    } else {
        0.0
    }
}

/// Every section of an ordinary visit, in the order in which an exam goes.
pub fn all(somebody: &Somebody, today: &Today, found: &mut Chance) -> Vec<Section> {
    let mut all = vec![
        talk::history(somebody, found),
        talk::consent(somebody),
        sight::worn_glasses(somebody, today),
        sight::acuity(somebody, found),
        media::pupils(somebody, found),
        retinoscopy::retinoscopy(somebody, today, found),
        lenses::subjective(somebody, today, found),
        lenses::near(somebody, today),
        health::pressure(somebody, today, found),
    ];
    if found.one_in(8) {
        all.push(health::drops(today));
    }
    all.push(health::anterior());
    all.push(health::posterior(somebody, found));
    if found.one_in(4) && somebody.course != Course::LowVision {
        all.push(health::fields());
    }
    all.push(decide::decision(somebody, today));
    all
}
