//! Pressure that is high, or very unequal. A mean is that of one device at one time: devices disagree.

use optics::format::plain;

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::sections::{Device, SectionKind, Taken, Urgency};

pub(super) const PRESSURE_HIGH: About = About {
    slug: "pressure-high",
    name: "high pressure",
    reason: "a high pressure is taken again or sent on, and a very high one today; a person sent on by one device alone may be sent in vain",
    source: "NICE NG81: refer from 24 mmHg by Goldmann's kind, and not on a puff of air alone; elsewhere local rules differ",
    section: SectionKind::Pressure,
    speaks_of: &[SectionKind::Pressure, SectionKind::Decision],
};

pub(super) const PRESSURE_UNEQUAL: About = About {
    slug: "pressure-unequal",
    name: "very unequal pressure",
    reason: "one eye that differs from its fellow may be the one that is ill, though both lie in the ordinary range",
    source: "a training summary of the guidance of NICE and SIGN: a difference above 4 mmHg",
    section: SectionKind::Pressure,
    speaks_of: &[SectionKind::Pressure, SectionKind::Decision],
};

/// Asks of each eye with a high mean and no referral, or a very high one and no urgent referral.
pub(super) fn pressure_high(case: &Case<'_>) -> Vec<Raised> {
    Eye::BOTH
        .into_iter()
        .filter_map(|eye| high(case, eye))
        .collect()
}

fn high(case: &Case<'_>, eye: Eye) -> Option<Raised> {
    let means = taken(case).filter_map(|taken| Some((taken.mean_mmhg(eye)?, taken)));
    let (mean, taken) = means.max_by(|one, other| one.0.total_cmp(&other.0))?;
    let (high, very_high) = (
        &case.thresholds.pressure_high_mmhg,
        &case.thresholds.pressure_very_high_mmhg,
    );
    let sent = case.referral();
    let (question, source) = if mean >= very_high.value() && sent < Some(Urgency::Urgent) {
        ("is this for today by your local rules?", very_high.source())
    } else if mean >= high.value() && sent.is_none() {
        ("is it to be taken again, or referred?", high.source())
    } else {
        return None;
    };
    let sentence = format!(
        "{} eye: {} mmHg by {}: {question}",
        eye.word(),
        plain(mean, 1),
        by(&taken.device)
    );
    Some(
        Rule::PressureHigh
            .asks(Some(eye), sentence)
            .on_word_of(source),
    )
}

/// Asks where one device found the eyes far apart and nobody is referred.
pub(super) fn pressure_unequal(case: &Case<'_>) -> Vec<Raised> {
    let above = &case.thresholds.pressure_apart_mmhg;
    if case.referral().is_some() {
        return Vec::new();
    }
    let apart = taken(case).find_map(|taken| {
        let right = taken.mean_mmhg(Eye::Right)?;
        let left = taken.mean_mmhg(Eye::Left)?;
        ((right - left).abs() > above.value()).then_some((right, left, taken))
    });
    let asked = apart.map(|(right, left, taken)| {
        let sentence = format!(
            "right {} and left {} mmHg by {}: is the difference known, or to be taken again?",
            plain(right, 1),
            plain(left, 1),
            by(&taken.device)
        );
        Rule::PressureUnequal
            .asks(None, sentence)
            .on_word_of(above.source())
    });
    asked.into_iter().collect()
}

fn taken<'a>(case: &Case<'a>) -> impl Iterator<Item = &'a Taken> + use<'a> {
    case.pressure
        .into_iter()
        .flat_map(|pressure| &pressure.taken)
}

fn by(device: &Device) -> &str {
    match device {
        Device::Applanation => "applanation",
        Device::Rebound => "rebound",
        Device::NonContact => "a puff of air",
        Device::Other(kind) => kind,
    }
}
