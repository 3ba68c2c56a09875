//! Sums for an eye with low vision.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{line, number, print};
use super::shared::{dioptres, length};
use crate::acuity::Print;
use crate::format::plain;
use crate::near::{
    FIXED_RESERVE, acuity_reserve, kestenbaum, kestenbaum_for, magnification,
    magnification_at_near_point, magnification_needed, reading_distance_cm,
};
use crate::{Line, limits};
use ::words::optics::sums_near as say;

const FAR: Ask = Ask::new("acuity", say::ask_acuity_for_far, "6/60", Kind::Line);
const TARGET: Ask =
    Ask::new("print", say::ask_print_to_be_read, "2 M", Kind::Print).or(say::or_one_m);

/// A starting addition.
pub(super) const START: Sum = Sum {
    slug: "low-vision",
    name: say::title_low_vision,
    about: say::about_low_vision,
    asks: &[FAR, TARGET],
    answer: start,
};

fn start(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let acuity = asked.need(&FAR, line)?;
    let mut lines = vec![Line::new(say::for_one_m(), dioptres(kestenbaum(acuity)))];
    let add = match asked.find(&TARGET, print)? {
        None => kestenbaum(acuity),
        Some(target) => {
            let add = kestenbaum_for(acuity, target);
            lines.push(Line::new(say::for_print(&target), dioptres(add)));
            add
        }
    };
    lines.extend(through(add)?);
    Ok(lines)
}

/// Where print is held under a lens, and how much larger it is.
fn through(power: f64) -> Result<Vec<Line>, SumError> {
    let times = |value: f64| say::times(&plain(value, 2));
    Ok(vec![
        Line::new(say::held_at(), length(reading_distance_cm(power)?, "cm")),
        Line::new(say::larger_by(), times(magnification(power)?)),
        Line::new(
            say::image_near(),
            times(magnification_at_near_point(power)?),
        ),
    ])
}

const POWER: Ask = Ask::new(
    "power",
    say::ask_power_of_the_magnifier,
    "+12.00",
    Kind::Number(limits::MAGNIFIER),
);

/// What a magnifier does.
pub(super) const MAGNIFIER: Sum = Sum {
    slug: "magnifier",
    name: say::title_magnifier,
    about: say::about_magnifier,
    asks: &[POWER],
    answer: magnifier,
};

fn magnifier(asked: &Asked) -> Result<Vec<Line>, SumError> {
    through(asked.need(&POWER, number)?)
}

const SMALLEST: Ask = Ask::new("smallest", say::ask_smallest_print_read, "N12", Kind::Print);
const WANTED: Ask = Ask::new("wanted", say::ask_print_to_be_read, "N8", Kind::Print);
const RESERVE: Ask = Ask::new(
    "reserve",
    say::ask_acuity_reserve,
    "2",
    Kind::Number(limits::ACUITY_RESERVE),
)
.or(say::or_twice);

/// How much larger print must be.
pub(super) const LARGER: Sum = Sum {
    slug: "larger",
    name: say::title_larger,
    about: say::about_larger,
    asks: &[SMALLEST, WANTED, RESERVE],
    answer: larger,
};

fn larger(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let smallest: Print = asked.need(&SMALLEST, print)?;
    let wanted = asked.need(&WANTED, print)?;
    let reserve = asked.find(&RESERVE, number)?.unwrap_or(FIXED_RESERVE);
    let needed = magnification_needed(smallest, wanted, reserve)?;
    let enough = needed <= 1.0;
    Ok(vec![
        Line::new(
            say::print_wanted(),
            say::times_smallest(&plain(acuity_reserve(wanted, smallest), 2)),
        ),
        Line::new(
            say::for_reserve(&plain(reserve, 2)),
            if enough {
                say::large_enough().to_owned()
            } else {
                say::times_larger(&plain(needed, 2))
            },
        ),
    ])
}
