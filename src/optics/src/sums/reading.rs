//! Sums of the reading addition.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::number;
use super::shared::{dioptres, length, mind, size, sized};
use crate::near::{
    Expected, Share, anderson, by_age, clear_range, donders, hofstetter, in_reserve, tentative,
};
use crate::{Line, limits, vergence};
use ::words::optics::sums_near as say;

const AGE: Ask = Ask::new("age", say::ask_age, "48", Kind::Number(limits::AGE));
const AT: Ask = Ask::new(
    "distance",
    say::ask_distance_of_the_task,
    "40 cm",
    Kind::Number(limits::NEAR_CM),
);
const MEASURED: Ask = Ask::new(
    "amplitude",
    say::ask_amplitude_that_was_measured,
    "3.50 D",
    Kind::Number(limits::AMPLITUDE),
)
.or(say::or_mean_of_age);

/// The addition to begin with.
pub(super) const ADDITION: Sum = Sum {
    slug: "addition",
    name: say::title_addition,
    about: say::about_addition,
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
        Line::new(say::asks_for(), sized(demand(at))),
        Line::new(
            say::may_be_used(&size(amplitude), &words(share)),
            sized(share.fraction() * amplitude),
        ),
        Line::new(
            say::try_first(),
            if add.none_needed() {
                say::no_addition().to_owned()
            } else {
                dioptres(add.dioptres())
            },
        ),
        Line::new(say::usual(), usual(age)?),
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
        say::hofstetter(),
        say::three_amplitudes(&size(least), &size(mean), &size(most)),
    )];
    if expected.beyond_survey {
        lines.push(mind(say::survey_ends()));
    }
    // Both hold for some ages only.
    let others = [("Donders", donders(age)), ("Anderson", anderson(age))];
    for (name, mean) in others {
        if let Ok(mean) = mean {
            lines.push(Line::new(say::mean_by(&name), sized(mean)));
        }
    }
    lines
}

fn words(share: Share) -> &'static str {
    match share {
        Share::Half => say::half(),
        Share::TwoThirds => say::two_thirds(),
    }
}

fn usual(age: f64) -> Result<String, SumError> {
    Ok(by_age(age)?.map_or_else(
        || say::none_below().to_owned(),
        |add| say::from_to(&dioptres(add.least), &dioptres(add.most)),
    ))
}

fn clear(add: f64, amplitude: f64) -> Result<Vec<Line>, SumError> {
    let range = clear_range(add, amplitude)?;
    let away =
        |cm: Option<f64>| cm.map_or_else(|| say::far_away().to_owned(), |cm| length(cm, "cm"));
    Ok(vec![Line::new(
        say::clear_from(),
        format!(
            "{}, {}",
            away(range.nearest_cm()),
            away(range.farthest_cm())
        ),
    )])
}

const ADD: Ask = Ask::new(
    "addition",
    say::ask_addition,
    "+2.00",
    Kind::Number(limits::ADD_OR_NONE),
);
const AMPLITUDE: Ask = Ask::new(
    "amplitude",
    say::ask_amplitude_of_accommodation,
    "1.00 D",
    Kind::Number(limits::AMPLITUDE),
);
const TASK: Ask = Ask::new(
    "distance",
    say::ask_distance_of_a_task,
    "40 cm",
    Kind::Number(limits::NEAR_CM),
)
.or(say::or_no_task);

/// Where it is clear.
pub(super) const CLEAR: Sum = Sum {
    slug: "clear",
    name: say::title_clear,
    about: say::about_clear,
    asks: &[ADD, AMPLITUDE, TASK],
    answer: clear_through,
};

fn clear_through(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (add, amplitude) = (asked.need(&ADD, number)?, asked.need(&AMPLITUDE, number)?);
    let mut lines = clear(add, amplitude)?;
    if let Some(cm) = asked.find(&TASK, number)? {
        let inside = clear_range(add, amplitude)?.contains(cm);
        let said = if inside {
            say::clear()
        } else {
            say::not_clear()
        };
        lines.push(Line::new(say::at(&length(cm, "cm")), said));
    }
    Ok(lines)
}

/// What an addition leaves in reserve.
pub(super) const RESERVE: Sum = Sum {
    slug: "in-reserve",
    name: say::title_in_reserve,
    about: say::about_in_reserve,
    asks: &[ADD, AMPLITUDE, AT],
    answer: left,
};

fn left(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (add, amplitude) = (asked.need(&ADD, number)?, asked.need(&AMPLITUDE, number)?);
    let at = asked.need(&AT, number)?;
    let reserve = in_reserve(at, add, amplitude)?;
    let mut lines = vec![
        Line::new(say::asks_for(), sized(demand(at))),
        Line::new(say::own_part(), dioptres(demand(at) - add)),
        Line::new(say::in_reserve(), dioptres(reserve)),
    ];
    if reserve < 0.0 {
        lines.push(mind(say::not_reached()));
    }
    Ok(lines)
}
