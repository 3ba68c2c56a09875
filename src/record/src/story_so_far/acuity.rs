//! The best that an eye read for far, and with what before it.

use ::words::record::story as say;
use optics::acuity::Acuity as Seeing;

use super::{Measure, Noted, Stands, settled};
use crate::exam::Exam;
use crate::finding::{Eye, Finding};
use crate::sections::{Acuity, Chart, EyeAcuity, Seen, Subjective};

/// One reading: with which correction, from which chart, what.
struct Read {
    with: &'static str,
    chart: Chart,
    seen: Seen,
}

/// The best of what was read. Where two are as good, the chosen lens goes before the glasses, those before the bare eye,
/// and the pinhole, which is no correction to live with, comes last.
pub(super) fn best(exam: &Exam, eye: Eye) -> Noted {
    let (acuity, subjective) = match (settled(&exam.acuity()), settled(&exam.subjective())) {
        (Ok(acuity), Ok(subjective)) => (acuity, subjective),
        (Err(why), _) | (_, Err(why)) => return Noted::missing(Some(why)),
    };
    let chosen = subjective.and_then(|section| chosen(section, eye));
    let read = acuity.into_iter().flat_map(|section| read(section, eye));
    let judged = chosen.into_iter().chain(read);
    let judged = judged.filter_map(|read| Some((read.chart.read(read.seen)?, read)));
    // Of equals the first stands.
    let best = judged.reduce(|best, next| if next.0 > best.0 { next } else { best });
    match best {
        Some((seeing, read)) => point(seeing, &read),
        None => Noted::missing(acuity.and_then(|section| why_not(section.eyes.of(eye)))),
    }
}

fn chosen(section: &Subjective, eye: Eye) -> Option<Read> {
    let seen = section.eyes.of(eye).done()?.acuity?;
    Some(Read {
        with: say::with_chosen_lens(),
        chart: section.chart,
        seen,
    })
}

fn read(section: &Acuity, eye: Eye) -> impl Iterator<Item = Read> {
    let EyeAcuity {
        unaided,
        with_glasses,
        pinhole,
    } = section.eyes.of(eye);
    let chart = section.chart;
    let each = [
        (say::with_worn_glasses(), with_glasses),
        (say::without_glasses(), unaided),
        (say::through_pinhole(), pinhole),
    ];
    each.into_iter().filter_map(move |(with, finding)| {
        let seen = *finding.done()?;
        Some(Read { with, chart, seen })
    })
}

fn why_not(eye: &EyeAcuity) -> Option<String> {
    let each = [&eye.with_glasses, &eye.unaided];
    each.into_iter().find_map(Finding::why_not)
}

fn point(seeing: Seeing, read: &Read) -> Noted {
    let how = read.with.to_owned();
    match seeing {
        Seeing::Measured(logmar) => {
            let figure = Measure::Acuity.written(logmar.value());
            let words = format!("logMAR {figure}, {}", read.chart.in_words(&read.seen));
            Noted::found(logmar.value(), words, how)
        }
        Seeing::Category(category) => Noted {
            stands: Stands::Beyond,
            words: category.to_string(),
            how,
        },
    }
}
