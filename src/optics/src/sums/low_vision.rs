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

const FAR: Ask = Ask::new("acuity", "acuity for far", "6/60", Kind::Line);
const TARGET: Ask =
    Ask::new("print", "print to be read", "2 M", Kind::Print).or("1 M is taken, near N8");

/// A starting addition.
pub(super) const START: Sum = Sum {
    slug: "low-vision",
    name: "A starting addition for low vision",
    about: "An addition to begin with from the acuity for far, and where print must then be held; often too weak.",
    asks: &[FAR, TARGET],
    answer: start,
};

fn start(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let acuity = asked.need(&FAR, line)?;
    let mut lines = vec![Line::new("for 1 M print", dioptres(kestenbaum(acuity)))];
    let add = match asked.find(&TARGET, print)? {
        None => kestenbaum(acuity),
        Some(target) => {
            let add = kestenbaum_for(acuity, target);
            lines.push(Line::new(format!("for {target}"), dioptres(add)));
            add
        }
    };
    lines.extend(through(add)?);
    Ok(lines)
}

/// Where print is held under a lens, and how much larger it is.
fn through(power: f64) -> Result<Vec<Line>, SumError> {
    let times = |value: f64| format!("{} times", plain(value, 2));
    Ok(vec![
        Line::new("print held at", length(reading_distance_cm(power)?, "cm")),
        Line::new("larger than at 25 cm by", times(magnification(power)?)),
        Line::new(
            "or, with the image at 25 cm, by",
            times(magnification_at_near_point(power)?),
        ),
    ])
}

const POWER: Ask = Ask::new(
    "power",
    "power of the magnifier",
    "+12.00",
    Kind::Number(limits::MAGNIFIER),
);

/// What a magnifier does.
pub(super) const MAGNIFIER: Sum = Sum {
    slug: "magnifier",
    name: "A magnifier",
    about: "Where print is held under a magnifier, and how much larger it is.",
    asks: &[POWER],
    answer: magnifier,
};

fn magnifier(asked: &Asked) -> Result<Vec<Line>, SumError> {
    through(asked.need(&POWER, number)?)
}

const SMALLEST: Ask = Ask::new("smallest", "smallest print read", "N12", Kind::Print);
const WANTED: Ask = Ask::new("wanted", "print to be read", "N8", Kind::Print);
const RESERVE: Ask = Ask::new(
    "reserve",
    "acuity reserve",
    "2",
    Kind::Number(limits::ACUITY_RESERVE),
)
.or("twice the smallest print is taken");

/// How much larger print must be.
pub(super) const LARGER: Sum = Sum {
    slug: "larger",
    name: "How much larger print must be",
    about: "The acuity reserve that print leaves, and the magnification that gives enough of it.",
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
            "the print wanted is",
            format!(
                "{} times the smallest",
                plain(acuity_reserve(wanted, smallest), 2)
            ),
        ),
        Line::new(
            format!("for a reserve of {}", plain(reserve, 2)),
            if enough {
                "large enough as it is".to_owned()
            } else {
                format!("{} times larger", plain(needed, 2))
            },
        ),
    ])
}
