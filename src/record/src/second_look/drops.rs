//! Drops: the angle before a pupil is widened, and the bottle that they came from.

use super::Raised;
use super::case::Case;
use super::rule::{About, PRACTICE, Rule};
use crate::finding::Eye;
use crate::sections::{Angle, Drops, Given, SectionKind};

pub(super) const DROPS_ANGLE: About = About {
    slug: "drops-angle",
    name: "pupil widened with a narrow angle, or one that nobody looked at",
    reason: "widening the pupil can close a narrow angle, within hours and painfully",
    source: "summary of product characteristics of tropicamide, UK: judge the depth of the angle first, in the elderly above all",
    section: SectionKind::Drops,
    speaks_of: &[SectionKind::Drops, SectionKind::Anterior],
};

pub(super) const DROPS_BOTTLE: About = About {
    slug: "drops-bottle",
    name: "drops without batch number or date",
    reason: "a bad batch is called back by its number, and a bottle past its date is not used",
    source: PRACTICE,
    section: SectionKind::Drops,
    speaks_of: &[SectionKind::Drops],
};

pub(super) const DROPS_EXPIRED: About = About {
    slug: "drops-expired",
    name: "drops past their date",
    reason: "past its date nobody answers for what is in the bottle",
    source: PRACTICE,
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
        let sentence = format!("{} eye: {question}", eye.word());
        Some(Rule::DropsAngle.asks(Some(eye), sentence))
    })
    .collect()
}

fn about_angle(drops: &Drops, angle: Option<Angle>) -> Option<&'static str> {
    match angle {
        Some(angle) if angle.may_close() => Some(
            "the pupil was widened and the angle may close: who watches for pain, redness and haloes, and whom do they call?",
        ),
        None if !drops.angle_judged => {
            Some("the pupil was widened: was the depth of the angle judged before?")
        }
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
        (true, true) => "batch number and date are",
        (true, false) => "batch number is",
        (false, true) => "date is",
        (false, false) => return None,
    };
    let name = drop.drug.name();
    let sentence = format!("{name}: the {missing} not written down: what stands on the bottle?");
    Some(Rule::DropsBottle.asks(None, sentence))
}

fn expired(case: &Case<'_>, drop: &Given) -> Option<Raised> {
    let last = drop.expires.filter(|last| *last < case.today)?;
    let sentence = format!(
        "{}: the bottle was to be used until {}: was the date misread, or what became of the bottle?",
        drop.drug.name(),
        last.format("%-d %B %Y")
    );
    Some(Rule::DropsExpired.asks(None, sentence))
}
