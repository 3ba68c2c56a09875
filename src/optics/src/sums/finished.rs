//! Finished glasses against their order.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{self, lens, number, read_to};
use crate::limits::{ADD, SEGMENT_MM};
use crate::tolerance::{
    ANSI_Z80_1_2015, ANSI_Z80_1_2015_PROGRESSIVE, Finished, ISO_21987_2017, Measured, Ordered,
    Report, Standard, Verdict,
};
use crate::{Eye, Eyes, Line};

/// The asks of one lens, as ordered or as measured.
struct OneLens {
    eye: Eye,
    power: Ask,
    add: Ask,
    prism: Ask,
    segment: Ask,
}

const NONE: &str = "there is none";

macro_rules! one_lens {
    ($eye:ident, $slug:literal, $name:literal, $power:literal, $add:literal, $prism:literal, $segment:literal) => {
        OneLens {
            eye: Eye::$eye,
            power: Ask::new($slug, concat!($name, " lens"), $power, Kind::Lens),
            add: Ask::new(
                concat!($slug, "-addition"),
                concat!($name, " addition"),
                $add,
                Kind::Number(ADD),
            )
            .or(NONE),
            prism: Ask::new(
                concat!($slug, "-prism"),
                concat!($name, " prism"),
                $prism,
                Kind::Prism,
            )
            .or(NONE),
            segment: Ask::new(
                concat!($slug, "-segment"),
                concat!($name, " segment height"),
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
    "right ordered",
    "−2.00 / −1.00 × 90",
    "+2.25",
    "1.00 in",
    "18 mm"
);
const RIGHT_MEASURED: OneLens = one_lens!(
    Right,
    "right-measured",
    "right measured",
    "−2.12 / −1.00 × 92",
    "+2.25",
    "1.25 in",
    "18.5 mm"
);
const LEFT_ORDERED: OneLens = one_lens!(
    Left,
    "left-ordered",
    "left ordered",
    "−1.50",
    "+2.25",
    "1.00 in",
    "18 mm"
);
const LEFT_MEASURED: OneLens = one_lens!(
    Left,
    "left-measured",
    "left measured",
    "−1.50",
    "+2.37",
    "1.00 in",
    "18 mm"
);
const READ_TO: Ask =
    Ask::new("read-to", "step of the focimeter", "0.06", Kind::ReadTo).or("0.06 D is taken");

/// Finished glasses.
pub(super) const AGAINST_ORDER: Sum = Sum {
    slug: "finished",
    name: "Finished glasses against the order",
    about: "Each power, axis, prism and height beside what two standards allow, with what is left to the limit.",
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
        Line::new(format!("for {} lenses", standard.lenses), report.sentence()),
        Line::new("its limits were seen in", standard.source),
    ];
    let verdict = |one: &Verdict| Line::new(format!("margin {}", one.margin()), one.sentence());
    lines.extend(report.verdicts.iter().map(verdict));
    let left = report.unjudged.iter();
    lines.extend(left.map(|one| Line::new("not judged", one.sentence())));
    lines
}
