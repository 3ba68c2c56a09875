//! Finished glasses against their order.

use super::Sum;
use super::asked::{Ask, Asked, Kind, Words};
use super::error::SumError;
use super::read::{self, lens, number, read_to};
use crate::limits::{ADD, SEGMENT_MM};
use crate::tolerance::{
    ANSI_Z80_1_2015, ANSI_Z80_1_2015_PROGRESSIVE, Finished, ISO_21987_2017, Measured, Ordered,
    Report, Standard, Verdict,
};
use crate::{Eye, Eyes, Line};
use ::words::optics::sums_glasses as say;

/// The asks of one lens, as ordered or as measured.
struct OneLens {
    eye: Eye,
    power: Ask,
    add: Ask,
    prism: Ask,
    segment: Ask,
}

const NONE: Words = say::there_is_none;

macro_rules! one_lens {
    ($eye:ident, $slug:literal, $names:expr, $power:literal, $add:literal, $prism:literal, $segment:literal) => {
        OneLens {
            eye: Eye::$eye,
            power: Ask::new($slug, $names[0], $power, Kind::Lens),
            add: Ask::new(
                concat!($slug, "-addition"),
                $names[1],
                $add,
                Kind::Number(ADD),
            )
            .or(NONE),
            prism: Ask::new(concat!($slug, "-prism"), $names[2], $prism, Kind::Prism).or(NONE),
            segment: Ask::new(
                concat!($slug, "-segment"),
                $names[3],
                $segment,
                Kind::Number(SEGMENT_MM),
            )
            .or(NONE),
        }
    };
}

const RIGHT_ORDERED: OneLens = one_lens!(
    Right,
    "right-ordered",
    [
        say::ask_right_ordered_lens,
        say::ask_right_ordered_addition,
        say::ask_right_ordered_prism,
        say::ask_right_ordered_segment
    ],
    "−2.00 / −1.00 × 90",
    "+2.25",
    "1.00 in",
    "18 mm"
);
const RIGHT_MEASURED: OneLens = one_lens!(
    Right,
    "right-measured",
    [
        say::ask_right_measured_lens,
        say::ask_right_measured_addition,
        say::ask_right_measured_prism,
        say::ask_right_measured_segment
    ],
    "−2.12 / −1.00 × 92",
    "+2.25",
    "1.25 in",
    "18.5 mm"
);
const LEFT_ORDERED: OneLens = one_lens!(
    Left,
    "left-ordered",
    [
        say::ask_left_ordered_lens,
        say::ask_left_ordered_addition,
        say::ask_left_ordered_prism,
        say::ask_left_ordered_segment
    ],
    "−1.50",
    "+2.25",
    "1.00 in",
    "18 mm"
);
const LEFT_MEASURED: OneLens = one_lens!(
    Left,
    "left-measured",
    [
        say::ask_left_measured_lens,
        say::ask_left_measured_addition,
        say::ask_left_measured_prism,
        say::ask_left_measured_segment
    ],
    "−1.50",
    "+2.37",
    "1.00 in",
    "18 mm"
);
const READ_TO: Ask = Ask::new(
    "read-to",
    say::ask_step_of_the_focimeter,
    "0.06",
    Kind::ReadTo,
)
.or(say::or_sixteenth);

/// Finished glasses.
pub(super) const AGAINST_ORDER: Sum = Sum {
    slug: "finished",
    name: say::title_finished,
    about: say::about_finished,
    asks: &[
        RIGHT_ORDERED.power,
        RIGHT_MEASURED.power,
        LEFT_ORDERED.power,
        LEFT_MEASURED.power,
        READ_TO,
        RIGHT_ORDERED.add,
        RIGHT_MEASURED.add,
        LEFT_ORDERED.add,
        LEFT_MEASURED.add,
        RIGHT_ORDERED.prism,
        RIGHT_MEASURED.prism,
        LEFT_ORDERED.prism,
        LEFT_MEASURED.prism,
        RIGHT_ORDERED.segment,
        RIGHT_MEASURED.segment,
        LEFT_ORDERED.segment,
        LEFT_MEASURED.segment,
    ],
    answer: against_order,
};

fn against_order(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let ordered = Ordered(Eyes {
        right: finished(asked, &RIGHT_ORDERED)?,
        left: finished(asked, &LEFT_ORDERED)?,
    });
    let measured = Measured {
        lenses: Eyes {
            right: finished(asked, &RIGHT_MEASURED)?,
            left: finished(asked, &LEFT_MEASURED)?,
        },
        read_to: asked.find(&READ_TO, read_to)?.unwrap_or_default(),
    };
    let with_addition = ordered
        .0
        .each()
        .iter()
        .any(|(_, lens)| lens.add().is_some());
    let tables = [
        Some(ISO_21987_2017),
        Some(ANSI_Z80_1_2015),
        with_addition.then_some(ANSI_Z80_1_2015_PROGRESSIVE),
    ];
    let judged = tables.into_iter().flatten().flat_map(|standard| {
        let report = standard.judge(&ordered, &measured);
        told(&report, &standard)
    });
    Ok(judged.collect())
}

fn finished(asked: &Asked, asks: &'static OneLens) -> Result<Finished, SumError> {
    let mut lens = Finished::new(asked.need(&asks.power, lens)?)?;
    if let Some(add) = asked.find(&asks.add, number)? {
        lens = lens.with_add(add)?;
    }
    if let Some(prism) = asked.find_by(&asks.prism, |text| read::prism(text, asks.eye))? {
        lens = lens.with_prism(prism)?;
    }
    if let Some(height) = asked.find(&asks.segment, number)? {
        lens = lens.with_segment(height)?;
    }
    Ok(lens)
}

/// One table's report: the whole first, then each comparison with its margin, then what was left out.
fn told(report: &Report, standard: &Standard) -> Vec<Line> {
    let mut lines = vec![
        Line::new(say::for_lenses(&(standard.lenses)()), report.sentence()),
        Line::new(say::limits_seen(), (standard.source)()),
    ];
    let verdict = |one: &Verdict| Line::new(say::margin(&one.margin()), one.sentence());
    lines.extend(report.verdicts.iter().map(verdict));
    let left = report.unjudged.iter();
    lines.extend(left.map(|one| Line::new(say::not_judged(), one.sentence())));
    lines
}
