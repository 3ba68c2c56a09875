//! Sums of the reading addition.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::number;
use super::shared::{dioptres, length, size};
use crate::near::{
    Expected, Share, anderson, by_age, clear_range, donders, hofstetter, in_reserve, tentative,
};
use crate::{Line, limits, vergence};

const AGE: Ask = Ask::new("age", "age", "48", Kind::Number(limits::AGE));
const AT: Ask = Ask::new(
    "distance",
    "distance of the task",
    "40 cm",
    Kind::Number(limits::NEAR_CM),
);
const MEASURED: Ask = Ask::new(
    "amplitude",
    "amplitude that was measured",
    "3.50 D",
    Kind::Number(limits::AMPLITUDE),
)
.or("the mean of the age is taken");

/// The addition to begin with.
pub(super) const ADDITION: Sum = Sum {
    slug: "addition",
    name: "A reading addition to begin with",
    about: "What accommodation an age leaves to be expected, and the addition to try first at a distance.",
    asks: &[AGE, AT, MEASURED],
    answer: addition,
};

fn addition(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (age, at) = (asked.need(&AGE, number)?, asked.need(&AT, number)?);
    let expected = hofstetter(age)?;
    let amplitude = asked.find(&MEASURED, number)?.unwrap_or(expected.mean);
    let share = Share::for_age(age)?;
    let add = tentative(at, amplitude, share)?;
    let mut lines = amplitudes(age, &expected);
    lines.extend([
        Line::new("the distance asks for", format!("{} D", size(demand(at)))),
        Line::new(
            format!(
                "of an amplitude of {} D, {} may be used",
                size(amplitude),
                words(share)
            ),
            format!("{} D", size(share.fraction() * amplitude)),
        ),
        Line::new(
            "addition to try first",
            if add.none_needed() {
                "none".to_owned()
            } else {
                dioptres(add.dioptres())
            },
        ),
        Line::new("usual at this age", usual(age)?),
    ]);
    lines.extend(clear(add.dioptres(), amplitude)?);
    Ok(lines)
}

/// What a distance in centimetres asks of an eye, in dioptres.
const fn demand(cm: f64) -> f64 {
    vergence::reciprocal(cm / 100.0)
}

fn amplitudes(age: f64, expected: &Expected) -> Vec<Line> {
    let Expected {
        least, mean, most, ..
    } = *expected;
    let mut lines = vec![Line::new(
        "amplitude by Hofstetter: least, mean, most",
        format!("{}, {}, {} D", size(least), size(mean), size(most)),
    )];
    if expected.beyond_survey {
        lines.push(Line::new("mind", "his survey ends at 8 and at 60 years"));
    }
    // Both hold for some ages only.
    let others = [("Donders", donders(age)), ("Anderson", anderson(age))];
    for (name, mean) in others {
        if let Ok(mean) = mean {
            lines.push(Line::new(
                format!("mean by {name}"),
                format!("{} D", size(mean)),
            ));
        }
    }
    lines
}

const fn words(share: Share) -> &'static str {
    match share {
        Share::Half => "half",
        Share::TwoThirds => "two thirds",
    }
}

fn usual(age: f64) -> Result<String, SumError> {
    Ok(by_age(age)?.map_or_else(
        || "none below 45".to_owned(),
        |add| format!("{} to {}", dioptres(add.least), dioptres(add.most)),
    ))
}

fn clear(add: f64, amplitude: f64) -> Result<Vec<Line>, SumError> {
    let range = clear_range(add, amplitude)?;
    let away = |cm: Option<f64>| cm.map_or_else(|| "far away".to_owned(), |cm| length(cm, "cm"));
    Ok(vec![Line::new(
        "clear from, to",
        format!(
            "{}, {}",
            away(range.nearest_cm()),
            away(range.farthest_cm())
        ),
    )])
}

const ADD: Ask = Ask::new(
    "addition",
    "addition",
    "+2.00",
    Kind::Number(limits::ADD_OR_NONE),
);
const AMPLITUDE: Ask = Ask::new(
    "amplitude",
    "amplitude of accommodation",
    "1.00 D",
    Kind::Number(limits::AMPLITUDE),
);
const TASK: Ask = Ask::new(
    "distance",
    "distance of a task",
    "40 cm",
    Kind::Number(limits::NEAR_CM),
)
.or("no task is judged");

/// Where it is clear.
pub(super) const CLEAR: Sum = Sum {
    slug: "clear",
    name: "The clear range of an addition",
    about: "Between what distances an eye sees clearly through an addition, the far correction on.",
    asks: &[ADD, AMPLITUDE, TASK],
    answer: clear_through,
};

fn clear_through(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (add, amplitude) = (asked.need(&ADD, number)?, asked.need(&AMPLITUDE, number)?);
    let mut lines = clear(add, amplitude)?;
    if let Some(cm) = asked.find(&TASK, number)? {
        let inside = clear_range(add, amplitude)?.contains(cm);
        let said = if inside { "clear" } else { "not clear" };
        lines.push(Line::new(format!("at {}", length(cm, "cm")), said));
    }
    Ok(lines)
}

/// What an addition leaves in reserve.
pub(super) const RESERVE: Sum = Sum {
    slug: "in-reserve",
    name: "What an addition leaves in reserve",
    about: "How much of the amplitude is left at a distance once the eye has done its own part.",
    asks: &[ADD, AMPLITUDE, AT],
    answer: left,
};

fn left(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (add, amplitude) = (asked.need(&ADD, number)?, asked.need(&AMPLITUDE, number)?);
    let at = asked.need(&AT, number)?;
    let reserve = in_reserve(at, add, amplitude)?;
    let mut lines = vec![
        Line::new("the distance asks for", format!("{} D", size(demand(at)))),
        Line::new("the eye’s own part", dioptres(demand(at) - add)),
        Line::new("left in reserve", dioptres(reserve)),
    ];
    if reserve < 0.0 {
        lines.push(Line::new("mind", "the eye does not reach the distance"));
    }
    Ok(lines)
}
