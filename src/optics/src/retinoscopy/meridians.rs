//! From what was found in single meridians to the whole lens, when the streak did not stand exactly on the principal
//! ones.
//!
//! ```text
//! F(t) = M + J0 cos 2t + J45 sin 2t        weight of each finding = 1 / sd²
//! covariance = (AᵀWA)⁻¹                    chi-square = Σ (residual / sd)²
//! ```
//!
//! F in dioptres along the meridian t, which is [`SphereCyl::power_along`] written in the parts of a [`PowerVector`].
//! Three or more meridians give the parts by weighted least squares. Where all that was found lies within
//! [`CROSS_WITHIN`] degrees of one cross, the part at 45 degrees to the cross was not measured. It is then taken to be
//! 0, which is what everybody does who calls two meridians the principal ones, and it counts as one more finding with a
//! standard deviation of
//!
//! ```text
//! √(0.08² + (C sin 2.5°)²)
//! ```
//!
//! C being the cylinder: 0.08 D is how far retinoscopy and subjective refraction scatter apart in J45 (Jorge and others
//! 2005, Optom Vis Sci 82:64-68), 2.5 degrees how closely an axis is found (common practice, no source). Findings of
//! ±55 D with standard deviations of 0.01 to 10 D. Least squares and its covariance stand in every text on statistics;
//! that of meridians is in `tests/published` against numpy.
//!
//! ```
//! use optics::retinoscopy::{Measured, meridian_fit};
//!
//! // Three meridians of +2.00 / −1.00 × 30, each found to about a quarter.
//! let found = [(30.0, 2.00), (90.0, 1.25), (150.0, 1.25)];
//! let found = found.map(|(meridian, power)| Measured::new(meridian, power, 0.25).unwrap());
//! let fit = meridian_fit(&found)?;
//! assert_eq!(fit.lens.to_string(), "+2.00 / −1.00 × 30");
//! assert!((fit.mean_sphere_half_width() - 0.2374).abs() < 5e-5);
//! assert_eq!(fit.in_words(), "nine times in ten the mean sphere lies within 0.24 D of this");
//! assert_eq!((fit.residual, fit.disagree), (None, false));
//! # Ok::<(), optics::retinoscopy::FitError>(())
//! ```

use super::least_squares::{Row, inverse, normal, solve};
use crate::chi_square::{two_parts, upper_95};
use crate::exact;
use crate::spread::Covariance;
use crate::{Meridian, MeridianPower, OpticsError, PowerVector, SphereCyl, contact, limits};
use ::words::optics::retinoscopy as say;
use thiserror::Error;

/// How many degrees off one cross findings may lie and still be taken as two principal meridians (common practice, no
/// source).
pub const CROSS_WITHIN: f64 = 5.0;

/// What the part at 45 degrees to the cross scatters by in dioptres, whatever the cylinder.
pub const CROSS_SCATTER: f64 = 0.08;

/// How closely an axis is found, in degrees.
pub const AXIS_WITHIN: f64 = 2.5;

/// How many times larger than that of one finding the standard deviation of a part may grow before the meridians are too
/// close together to say anything: a quarter dioptre would be 2.50 D.
const WORST_GROWTH: f64 = 10.0;

/// Why no lens could be made of findings. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum FitError {
    /// One meridian alone, or none.
    #[error("{}", say::too_few_meridians(.given))]
    TooFew {
        /// How many there are.
        given: usize,
    },
    /// Two meridians, and they do not stand across one another.
    #[error("{}", not_across(*apart))]
    NotAcross {
        /// The angle between them in degrees, 0 to 90.
        apart: f64,
    },
    /// Three meridians or more that lie so close together that they say nothing of the rest of the eye.
    #[error("{}", say::meridians_too_close())]
    TooClose,
    /// A lens came out that is no lens.
    #[error(transparent)]
    Optics(#[from] OpticsError),
}

fn not_across(apart: f64) -> String {
    let [apart, within] = [apart, CROSS_WITHIN].map(|degrees| format!("{degrees:.0}"));
    say::meridians_not_across(&apart, &within)
}

/// What was found in one meridian, and how surely.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    found: MeridianPower,
    sd: f64,
}

impl Measured {
    /// A power (±55 D) in a meridian (0 to 180 degrees) with its standard deviation (0.01 to 10 D).
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for any of them.
    pub fn new(meridian_deg: f64, power: f64, sd: f64) -> Result<Self, OpticsError> {
        let meridian = Meridian::new(meridian_deg)?;
        Self::of(MeridianPower { meridian, power }, sd)
    }

    /// The same from a power that has its meridian already.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for the power or the standard deviation.
    pub fn of(found: MeridianPower, sd: f64) -> Result<Self, OpticsError> {
        limits::meridian_power(found.power)?;
        let sd = limits::meridian_sd(sd)?;
        Ok(Self { found, sd })
    }

    fn row(&self) -> Row {
        let (sine, cosine) = exact::sin_cos(twice(self.found.meridian.degrees()));
        Row {
            parts: [1.0, cosine, sine],
            power: self.found.power,
            sd: self.sd,
        }
    }
}

/// The lens that fits findings best.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// The lens in minus form.
    pub lens: SphereCyl,
    /// The same as it adds.
    pub vector: PowerVector,
    /// How surely its parts are known, in square dioptres.
    pub covariance: Covariance,
    /// How far the findings lie from the lens, root mean square in dioptres; none where there were just enough to fit
    /// exactly.
    pub residual: Option<f64>,
    /// Whether the findings contradict one another: their chi-square is one that chance gives less than 5 times in 100.
    pub disagree: bool,
    /// Whether the meridians were taken to be the principal ones, because nothing was found between them.
    pub principal_assumed: bool,
}

/// An ellipse about the J0 and J45 of a fit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ellipse {
    /// The longer half axis in dioptres.
    pub major: f64,
    /// The shorter half axis in dioptres.
    pub minor: f64,
    /// Where the longer one lies, in degrees anticlockwise from the J0 axis, 0 up to 180.
    pub angle_degrees: f64,
}

/// The lens from findings in two meridians across one another, or in three and more.
///
/// # Errors
/// [`FitError`], by what the findings lack.
pub fn meridian_fit(found: &[Measured]) -> Result<Fit, FitError> {
    let mut rows: Vec<Row> = found.iter().map(Measured::row).collect();
    let principal_assumed = match cross(found)? {
        Some(assumed) => {
            rows.push(assumed);
            true
        }
        None => false,
    };
    let evenly = inverse(normal(&rows, |_| 1.0)).ok_or(FitError::TooClose)?;
    if Covariance(evenly)
        .variances()
        .into_iter()
        .any(|grown| grown > exact::squared(WORST_GROWTH))
    {
        return Err(FitError::TooClose);
    }
    let covariance = inverse(normal(&rows, Row::weight)).ok_or(FitError::TooClose)?;
    let vector = solve(covariance, &rows);
    let freedom = rows.len() - 3;
    let offs: Vec<f64> = rows.iter().map(|row| row.off(vector)).collect();
    let chi_square: f64 = offs
        .iter()
        .zip(&rows)
        .map(|(off, row)| off * off * row.weight())
        .sum();
    let of_found = offs
        .iter()
        .take(found.len())
        .map(|off| off * off)
        .sum::<f64>();
    Ok(Fit {
        lens: contact::lens_of(vector)?,
        vector,
        covariance: Covariance(covariance),
        residual: (freedom > 0).then(|| (of_found / found.len() as f64).sqrt()),
        disagree: freedom > 0 && chi_square > upper_95(freedom),
        principal_assumed,
    })
}

fn twice(degrees: f64) -> f64 {
    (2.0 * degrees).to_radians()
}

/// The assumption that nothing acts at 45 degrees to the cross, where all findings lie on one.
fn cross(found: &[Measured]) -> Result<Option<Row>, FitError> {
    let (Some(first), Some(_)) = (found.first(), found.get(1)) else {
        return Err(FitError::TooFew { given: found.len() });
    };
    let from = first.found.meridian.degrees();
    // Off the cross by −45 to 45 degrees; the second arm counts as the first.
    let off = |one: &Measured| (one.found.meridian.degrees() - from + 45.0).rem_euclid(90.0) - 45.0;
    let on_second = |one: &&Measured| one.found.meridian.apart(first.found.meridian) > 45.0;
    let (least, most) = found
        .iter()
        .map(off)
        .fold((0.0_f64, 0.0_f64), |(low, high), off| {
            (low.min(off), high.max(off))
        });
    let Some(second) = found
        .iter()
        .find(on_second)
        .filter(|_| most - least <= CROSS_WITHIN)
    else {
        return match found {
            [one, other] => Err(FitError::NotAcross {
                apart: one.found.meridian.apart(other.found.meridian),
            }),
            _ => Ok(None),
        };
    };
    let (sine, cosine) = exact::sin_cos(twice(from + f64::midpoint(least, most)));
    let cylinder = first.found.power - second.found.power;
    Ok(Some(Row {
        parts: [0.0, -sine, cosine],
        power: 0.0,
        sd: exact::hypot(
            CROSS_SCATTER,
            cylinder * exact::sin(AXIS_WITHIN.to_radians()),
        ),
    }))
}

impl Fit {
    /// How surely it is known, in plain words: "nine times in ten the mean sphere lies within 0.24 D of this".
    pub fn in_words(&self) -> String {
        say::mean_sphere_within(&format_args!("{:.2}", self.mean_sphere_half_width()))
    }

    /// Half the stretch in dioptres about the mean sphere that holds it 90 times in 100.
    pub fn mean_sphere_half_width(&self) -> f64 {
        /// The normal deviate that holds 90 %.
        const Z: f64 = 1.644_853_627;
        let [m, ..] = self.covariance.variances();
        Z * m.sqrt()
    }

    /// The ellipse about J0 and J45 that holds them with this probability, above 0 and below 1: at 0.90 its half axes are
    /// √4.605 standard deviations. It has the standard deviations for known, as they were given.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a probability below 0.0001 or above 0.9999.
    pub fn ellipse(&self, probability: f64) -> Result<Ellipse, OpticsError> {
        let scale = two_parts(probability)?;
        let Covariance([_, [_, j0, cross], [.., j45]]) = self.covariance;
        let (middle, half) = (
            f64::midpoint(j0, j45),
            exact::hypot((j0 - j45) / 2.0, cross),
        );
        let angle = exact::atan2(cross, (j0 - j45) / 2.0).to_degrees() / 2.0;
        Ok(Ellipse {
            major: (scale * (middle + half)).sqrt(),
            minor: (scale * (middle - half).max(0.0)).sqrt(),
            angle_degrees: angle.rem_euclid(180.0),
        })
    }
}
