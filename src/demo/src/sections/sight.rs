//! The glasses that are worn, and what each eye reads.

use optics::SphereCyl;
use optics::acuity::ChartLine;
use record::{
    Acuity, Chart, Eye, EyeAcuity, Eyes, Finding, HowMeasured, LensForm, Part, Section, Seen,
    UsedFor, WornGlasses, WornLens, WornPair,
};

use super::Today;
use crate::chance::Chance;
use crate::somebody::Somebody;

pub fn worn_glasses(somebody: &Somebody, today: &Today) -> Section {
    let pair = |used_for, change: f64, worn: &str| WornPair {
        used_for,
        form: LensForm::SingleVision,
        measured: Some(HowMeasured::Focimeter),
        lenses: somebody.worn.map(|lens| {
            Finding::Done(WornLens {
                lens: lens.with_sphere_changed(change),
                add_d: None,
                prism: None,
            })
        }),
        worn: worn.to_owned(),
        ..WornPair::default()
    };
    let near = (today.add * 4.0).round() / 4.0;
    let pairs = vec![
        pair(UsedFor::Far, 0.0, "all day"),
        pair(UsedFor::Near, near, "in the armchair"),
    ];
    WornGlasses {
        pairs: Finding::Done(pairs),
    }
    .into_section()
}

/// Blur costs about three lines a dioptre (from memory), up to what an eye without any lens still reads.
const LOGMAR_A_DIOPTRE: f64 = 0.35;

pub fn acuity(somebody: &Somebody, found: &mut Chance) -> Section {
    let chart = somebody.chart;
    let read = |eye: Eye, found: &mut Chance| {
        let is = somebody.eyes.of(eye);
        let blurred = |lens: SphereCyl| {
            let off = is.refraction.distance(&lens.vector());
            is.best + (LOGMAR_A_DIOPTRE * off).min(0.9)
        };
        let (bare, worn) = (SphereCyl::sphere(0.0), *somebody.worn.of(eye));
        let with_glasses = found.about(blurred(worn), 0.04);
        let pinhole = with_glasses > 0.3;
        EyeAcuity {
            unaided: Finding::Done(seen(&chart, found.about(blurred(bare), 0.05))),
            with_glasses: Finding::Done(seen(&chart, with_glasses)),
            pinhole: if pinhole {
                Finding::Done(seen(&chart, found.about(with_glasses - 0.08, 0.04)))
            } else {
                Finding::Blank
            },
        }
    };
    Acuity {
        chart,
        eyes: Eyes {
            right: read(Eye::Right, found),
            left: read(Eye::Left, found),
        },
    }
    .into_section()
}

/// The line and letters nearest to an acuity in logMAR, or the categories below the chart.
pub fn seen(chart: &Chart, logmar: f64) -> Seen {
    let whole = |line: ChartLine| Seen::Line { line, letters: 0 };
    let of = |line: ChartLine| chart.logmar(&whole(line)).unwrap_or_default();
    let lines = ChartLine::ALL.into_iter();
    let nearest = lines.min_by(|one, other| {
        let off = |line: ChartLine| (of(line) - logmar).abs();
        off(*one).total_cmp(&off(*other))
    });
    let Some(line) = nearest else {
        return Seen::HandMoves;
    };
    let letters = ((of(line) - logmar) / 0.02).round().clamp(-4.0, 4.0) as i8;
    Seen::Line { line, letters }
}
