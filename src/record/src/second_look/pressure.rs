//! Pressure that is high, or very unequal. A mean is that of one device at one time: devices disagree.

use ::words::record::second_look as say;
use optics::format::plain;

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::sections::{Device, SectionKind, Taken, Urgency};

pub(super) const PRESSURE_HIGH: About = About {
    slug: "pressure-high",
    name: say::pressure_high,
    reason: say::pressure_high_reason,
    source: say::pressure_high_source,
    section: SectionKind::Pressure,
    speaks_of: &[SectionKind::Pressure, SectionKind::Decision],
};

pub(super) const PRESSURE_UNEQUAL: About = About {
    slug: "pressure-unequal",
    name: say::pressure_unequal,
    reason: say::pressure_unequal_reason,
    source: say::pressure_unequal_source,
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
        (say::ask_today(), very_high.source())
    } else if mean >= high.value() && sent.is_none() {
        (say::ask_again_or_refer(), high.source())
    } else {
        return None;
    };
    let sentence = say::ask_pressure(&eye.said(), &plain(mean, 1), &by(&taken.device), &question);
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
        let sentence =
            say::ask_pressure_unequal(&plain(right, 1), &plain(left, 1), &by(&taken.device));
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
        Device::Applanation => say::by_applanation(),
        Device::Rebound => say::by_rebound(),
        Device::NonContact => say::by_puff(),
        Device::Other(kind) => kind,
    }
}
