//! A lens from what was found in single meridians.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{meridians, number};
use super::shared::{nearest, size};
use crate::format::plain;
use crate::retinoscopy::{Fit, Measured, meridian_fit};
use crate::{Line, limits};

const FOUND: Ask = Ask::new(
    "found",
    "powers found, a semicolon between them",
    "+2.00 @ 30; +1.25 @ 90; +1.25 @ 150",
    Kind::Meridians,
);
const SURE: Ask = Ask::new(
    "sure",
    "standard deviation of one finding",
    "0.25 D",
    Kind::Number(limits::MERIDIAN_SD),
)
.or("0.25 D is taken");

/// How surely a meridian is found where nobody says: a step of the trial case (common practice, no source).
const USUAL_SD: f64 = 0.25;

/// The share of times that the ellipse holds.
const HELD: f64 = 0.90;

/// A lens from single meridians.
pub(super) const FITTED: Sum = Sum {
    slug: "meridians",
    name: "A lens from single meridians",
    about: "The lens that fits powers found in two meridians across one another, or in three and more, and how sure it is.",
    asks: &[FOUND, SURE],
    answer: fitted,
};

fn fitted(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let sd = asked.find(&SURE, number)?.unwrap_or(USUAL_SD);
    let found = asked.need(&FOUND, meridians)?;
    let measured: Result<Vec<_>, _> = found.into_iter().map(|one| Measured::of(one, sd)).collect();
    let fit = meridian_fit(&measured?)?;
    let mut lines = vec![Line::new("the lens", fit.lens)];
    lines.extend(nearest(&fit.lens));
    lines.extend(how_sure(&fit)?);
    Ok(lines)
}

fn how_sure(fit: &Fit) -> Result<Vec<Line>, SumError> {
    let ellipse = fit.ellipse(HELD)?;
    let mut lines = vec![
        Line::new(
            "mean sphere, 90 times in 100",
            format!("give or take {} D", size(fit.mean_sphere_half_width())),
        ),
        Line::new(
            "J0 and J45, 90 times in 100",
            format!(
                "within {} by {} D, the longer way at {} degrees",
                size(ellipse.major),
                size(ellipse.minor),
                plain(ellipse.angle_degrees, 0)
            ),
        ),
    ];
    if let Some(residual) = fit.residual {
        let off = format!("{} D", size(residual));
        lines.push(Line::new("the findings lie off it by", off));
    }
    if fit.principal_assumed {
        let taken = "nothing was found between them, so they are taken to be the principal ones";
        lines.push(Line::new("mind", taken));
    }
    if fit.disagree {
        lines.push(Line::new(
            "mind",
            "the findings contradict one another: sweep again",
        ));
    }
    Ok(lines)
}
