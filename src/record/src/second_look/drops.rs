//! Drops: the angle before a pupil is widened, and the bottle that they came from.

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::manner::Manner;
use crate::sections::{Angle, Drops, Given, SectionKind};
use ::words::record::second_look as say;

pub(super) const DROPS_ANGLE: About = About {
    slug: "drops-angle",
    name: say::drops_angle,
    reason: say::drops_angle_reason,
    source: say::drops_angle_source,
    section: SectionKind::Drops,
    speaks_of: &[SectionKind::Drops, SectionKind::Anterior],
};

pub(super) const DROPS_BOTTLE: About = About {
    slug: "drops-bottle",
    name: say::drops_bottle,
    reason: say::drops_bottle_reason,
    source: say::practice,
    section: SectionKind::Drops,
    speaks_of: &[SectionKind::Drops],
};

pub(super) const DROPS_EXPIRED: About = About {
    slug: "drops-expired",
    name: say::drops_expired,
    reason: say::drops_expired_reason,
    source: say::practice,
    section: SectionKind::Drops,
    speaks_of: &[SectionKind::Drops],
};

/// Asks of each eye that was widened where its angle may close, or where nobody says how wide it is.
pub(super) fn angle(case: &Case<'_>) -> Vec<Raised> {
    let Some(drops) = case.drops else {
        return Vec::new();
    };
    let widened = |eye: &Eye| drops.each().any(|drop| drop.widens(*eye));
    let eyes = Eye::BOTH.into_iter().filter(widened);
    eyes.filter_map(|eye| {
        let question = about_angle(drops, angle_of(case, eye))?;
        let sentence = say::ask_of_eye(&eye.said(), &question);
        Some(Rule::DropsAngle.asks(Some(eye), sentence))
    })
    .collect()
}

fn about_angle(drops: &Drops, angle: Option<Angle>) -> Option<&'static str> {
    match angle {
        Some(angle) if angle.may_close() => Some(say::ask_angle_narrow()),
        None if !drops.angle_judged => Some(say::ask_angle_judged()),
        _ => None,
    }
}

fn angle_of(case: &Case<'_>, eye: Eye) -> Option<Angle> {
    case.anterior?.eyes.of(eye).angle.done().copied()
}

impl Given {
    fn widens(&self, eye: Eye) -> bool {
        self.drug.dilates() && self.into.includes(eye)
    }
}

/// Asks for what stands on the bottle, and whether its date has passed.
pub(super) fn bottles(case: &Case<'_>) -> Vec<Raised> {
    let drops = case.drops.into_iter().flat_map(Drops::each);
    drops
        .flat_map(|drop| [unnamed(drop), expired(case, drop)])
        .flatten()
        .collect()
}

fn unnamed(drop: &Given) -> Option<Raised> {
    let missing = match (drop.batch.trim().is_empty(), drop.expires.is_none()) {
        (true, true) => say::batch_and_date_are(),
        (true, false) => say::batch_is(),
        (false, true) => say::date_is(),
        (false, false) => return None,
    };
    let name = drop.drug.name();
    let sentence = say::ask_bottle(&name, &missing);
    Some(Rule::DropsBottle.asks(None, sentence))
}

fn expired(case: &Case<'_>, drop: &Given) -> Option<Raised> {
    let last = drop.expires.filter(|last| *last < case.today)?;
    let sentence = say::ask_expired(&drop.drug.name(), &Manner::default().date(last));
    Some(Rule::DropsExpired.asks(None, sentence))
}
