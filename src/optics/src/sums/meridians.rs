//! A lens from what was found in single meridians.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{meridians, number};
use super::shared::{mind, nearest, size, sized};
use crate::format::plain;
use crate::retinoscopy::{Fit, Measured, meridian_fit};
use crate::{Line, limits};
use ::words::optics::sums_retinoscopy as say;

const FOUND: Ask = Ask::new(
    "found",
    say::ask_powers_found,
    "+2.00 @ 30; +1.25 @ 90; +1.25 @ 150",
    Kind::Meridians,
);
const SURE: Ask = Ask::new(
    "sure",
    say::ask_deviation,
    "0.25 D",
    Kind::Number(limits::MERIDIAN_SD),
)
.or(say::or_quarter);

/// How surely a meridian is found where nobody says: a step of the trial case (common practice, no source).
const USUAL_SD: f64 = 0.25;

/// The share of times that the ellipse holds.
const HELD: f64 = 0.90;

/// A lens from single meridians.
pub(super) const FITTED: Sum = Sum {
    slug: "meridians",
    name: say::title_meridians,
    about: say::about_meridians,
    asks: &[FOUND, SURE],
    answer: fitted,
};

fn fitted(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let sd = asked.find(&SURE, number)?.unwrap_or(USUAL_SD);
    let found = asked.need(&FOUND, meridians)?;
    let measured: Result<Vec<_>, _> = found.into_iter().map(|one| Measured::of(one, sd)).collect();
    let fit = meridian_fit(&measured?)?;
    let mut lines = vec![Line::new(say::the_lens(), fit.lens)];
    lines.extend(nearest(&fit.lens));
    lines.extend(how_sure(&fit)?);
    Ok(lines)
}

fn how_sure(fit: &Fit) -> Result<Vec<Line>, SumError> {
    let ellipse = fit.ellipse(HELD)?;
    let mut lines = vec![
        Line::new(
            say::mean_sphere_ninety(),
            say::within(&sized(fit.mean_sphere_half_width())),
        ),
        Line::new(
            say::j_ninety(),
            say::ellipse(
                &size(ellipse.major),
                &size(ellipse.minor),
                &plain(ellipse.angle_degrees, 0),
            ),
        ),
    ];
    if let Some(residual) = fit.residual {
        lines.push(Line::new(say::lie_off(), sized(residual)));
    }
    if fit.principal_assumed {
        lines.push(mind(say::taken_principal()));
    }
    if fit.disagree {
        lines.push(mind(say::contradict()));
    }
    Ok(lines)
}
