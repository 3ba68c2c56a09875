//! Acuity that fell: through the pinhole, or since last time.

use ::words::record::second_look as say;
use optics::acuity::Acuity as Read;

use super::Raised;
use super::case::Case;
use super::rule::{About, Rule};
use crate::finding::Eye;
use crate::sections::{Acuity, Chart, EyeAcuity, SectionKind, Seen, Subjective};

pub(super) const WORSE_THROUGH_PINHOLE: About = About {
    slug: "worse-through-pinhole",
    name: say::worse_through_pinhole,
    reason: say::worse_through_pinhole_reason,
    source: say::practice,
    section: SectionKind::Acuity,
    speaks_of: &[SectionKind::Acuity],
};

pub(super) const MUCH_WORSE: About = About {
    slug: "acuity-much-worse",
    name: say::much_worse,
    reason: say::much_worse_reason,
    source: say::practice,
    section: SectionKind::Acuity,
    speaks_of: &[SectionKind::Acuity, SectionKind::Subjective],
};

/// A letter is 0.02 logMAR; sums of letters are not exact in binary.
const DUST: f64 = 1e-9;

/// One reading, with the chart that it was read from.
#[derive(Clone, Copy)]
struct Reading<'a> {
    chart: &'a Chart,
    seen: &'a Seen,
}

impl Reading<'_> {
    fn read(&self) -> Option<Read> {
        self.chart.read(*self.seen)
    }

    fn words(&self) -> String {
        self.chart.in_words(self.seen)
    }

    /// Whether it is worse than another by so many logMAR, or in a lower category.
    fn is_worse(&self, other: &Self, by: f64) -> bool {
        match (self.read(), other.read()) {
            (Some(Read::Measured(now)), Some(Read::Measured(then))) => {
                now.value() - then.value() >= by - DUST
            }
            (Some(now), Some(then)) => now < then,
            _ => false,
        }
    }
}

/// Asks of each eye that read less through the pinhole than without it.
pub(super) fn worse_through_pinhole(case: &Case<'_>) -> Vec<Raised> {
    let by = &case.thresholds.pinhole_worse;
    let asked = |eye: Eye| {
        let acuity = case.acuity?;
        let of = |part| reading(acuity, eye, part);
        let through = of(|read| read.pinhole.done())?;
        let without = [
            of(|read| read.unaided.done()),
            of(|read| read.with_glasses.done()),
        ]
        .into_iter()
        .flatten()
        .max_by_key(Reading::read)?;
        through.is_worse(&without, by.value()).then(|| {
            let sentence = say::ask_pinhole(&eye.said(), &through.words(), &without.words());
            Rule::WorseThroughPinhole
                .asks(Some(eye), sentence)
                .on_word_of(by.source())
        })
    };
    Eye::BOTH.into_iter().filter_map(asked).collect()
}

/// Asks of each eye that reads much less than last time, like compared with like: with the lens that was chosen where both
/// times one was, else with glasses, else without.
pub(super) fn much_worse(case: &Case<'_>) -> Vec<Raised> {
    let by = &case.thresholds.acuity_worse;
    let asked = |eye: Eye| {
        let (now, then, how) = alike(case, eye)?;
        now.is_worse(&then, by.value()).then(|| {
            let sentence = say::ask_much_worse(&eye.said(), &how, &now.words(), &then.words());
            Rule::AcuityMuchWorse
                .asks(Some(eye), sentence)
                .on_word_of(by.source())
        })
    };
    Eye::BOTH.into_iter().filter_map(asked).collect()
}

fn alike<'a>(case: &Case<'a>, eye: Eye) -> Option<(Reading<'a>, Reading<'a>, &'static str)> {
    let chosen = |subjective: Option<&'a Subjective>| {
        let subjective = subjective?;
        let seen = subjective.eyes.of(eye).done()?.acuity.as_ref()?;
        let chart = &subjective.chart;
        Some(Reading { chart, seen })
    };
    let read = |acuity: Option<&'a Acuity>, part| reading(acuity?, eye, part);
    let pairs = [
        (
            chosen(case.subjective),
            chosen(case.last.subjective),
            say::with_its_lens(),
        ),
        (
            read(case.acuity, |read| read.with_glasses.done()),
            read(case.last.acuity, |read| read.with_glasses.done()),
            say::with_glasses(),
        ),
        (
            read(case.acuity, |read| read.unaided.done()),
            read(case.last.acuity, |read| read.unaided.done()),
            say::without_glasses(),
        ),
    ];
    let mut both = pairs
        .into_iter()
        .filter_map(|(now, then, how)| Some((now?, then?, how)));
    both.next()
}

fn reading(
    acuity: &Acuity,
    eye: Eye,
    part: fn(&EyeAcuity) -> Option<&Seen>,
) -> Option<Reading<'_>> {
    let seen = part(acuity.eyes.of(eye))?;
    let chart = &acuity.chart;
    Some(Reading { chart, seen })
}
