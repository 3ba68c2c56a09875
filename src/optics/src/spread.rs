//! Repeated readings of one eye: their mean, how far they scatter, and what that says of a single reading.
//!
//! ```text
//! mean = Σ v / n          covariance = Σ (v − mean)(v − mean)ᵀ / (n − 1)
//! 95 % limits of a single reading = mean ± t s √(1 + 1/n)
//! ```
//!
//! v is the [`PowerVector`] of a reading, n how many there are, s a standard deviation, t Student's for n − 1 degrees of
//! freedom ([`crate::student`]). Dioptres and square dioptres; one reading has a mean, two or more have a spread. All readings
//! refer to one plane. For many readings the limits are the mean ± 1.96 s of Bland and Altman 1986, Lancet i:307-310 (from
//! memory); for few they are as wide as so few readings deserve, which 1.96 is not: the prediction interval of any text on
//! statistics. Covariance of power vectors: Thibos, Wheeler and Horner 1997, Optom Vis Sci 74:367-375, and for matrices
//! Harris 1988, Am J Optom Physiol Opt 65:794-802 (abstracts seen).
//!
//! ```
//! use optics::{SphereCyl, spread, Spread};
//!
//! let readings = ["−1.00 / −0.50 × 175", "−1.25 / −0.75 × 5", "−1.50 / −0.50 × 10"];
//! let readings = readings.map(|text| SphereCyl::parse(text).unwrap());
//! // The mean of the axes as plain numbers would be 63.
//! assert_eq!(spread::mean(&readings)?.to_string(), "−1.26 / −0.57 × 3.6");
//!
//! let spread = Spread::of(&readings)?;
//! assert_eq!(spread.count(), 3);
//! assert!((spread.deviations().m - 0.2602).abs() < 5e-5);
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::sphere_cyl::finite;
use crate::{OpticsError, PowerVector, SphereCyl, contact, student};
use ::words::optics::limits as say;

/// The mean of readings, in minus form: of their vectors, never of sphere, cylinder and axis each for itself.
///
/// # Errors
/// [`OpticsError::TooFewReadings`] for none; [`OpticsError::NotANumber`] for an endless power.
pub fn mean(readings: &[SphereCyl]) -> Result<SphereCyl, OpticsError> {
    contact::lens_of(mean_vector(readings, 1)?)
}

fn mean_vector(readings: &[SphereCyl], needed: usize) -> Result<PowerVector, OpticsError> {
    let given = readings.len();
    if given < needed {
        return Err(OpticsError::TooFewReadings { needed, given });
    }
    let sum: PowerVector = readings.iter().map(SphereCyl::vector).sum();
    finite(say::power(), sum.blur_strength())?;
    Ok(sum * (1.0 / given as f64))
}

/// How the three powers of a vector vary together: a symmetric 3 × 3 matrix in square dioptres, in the order M, J0, J45.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Covariance(pub [[f64; 3]; 3]);

impl Covariance {
    /// The sample covariance of vectors about their mean, divided by one less than their number.
    fn about(mean: PowerVector, readings: &[SphereCyl]) -> Self {
        let mut sums = [[0.0; 3]; 3];
        for reading in readings {
            let off = parts(reading.vector() - mean);
            for (row, one) in sums.iter_mut().zip(off) {
                for (cell, other) in row.iter_mut().zip(off) {
                    *cell += one * other;
                }
            }
        }
        let degrees = readings.len() as f64 - 1.0;
        Self(sums.map(|row| row.map(|sum| sum / degrees)))
    }

    /// The variances of M, J0 and J45, in square dioptres.
    pub const fn variances(&self) -> [f64; 3] {
        let Self([[m, ..], [_, j0, _], [.., j45]]) = *self;
        [m, j0, j45]
    }
}

const fn parts(vector: PowerVector) -> [f64; 3] {
    [vector.m, vector.j0, vector.j45]
}

const fn vector([m, j0, j45]: [f64; 3]) -> PowerVector {
    PowerVector { m, j0, j45 }
}

/// Two or more readings, summed up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    count: usize,
    mean: PowerVector,
    covariance: Covariance,
}

impl Spread {
    /// Sums up readings.
    ///
    /// # Errors
    /// [`OpticsError::TooFewReadings`] for fewer than two; [`OpticsError::NotANumber`] for an endless power, or powers so
    /// large that their squares are endless.
    pub fn of(readings: &[SphereCyl]) -> Result<Self, OpticsError> {
        let mean = mean_vector(readings, 2)?;
        let covariance = Covariance::about(mean, readings);
        for row in covariance.0 {
            for cell in row {
                finite(say::spread(), cell)?;
            }
        }
        Ok(Self {
            count: readings.len(),
            mean,
            covariance,
        })
    }

    /// How many readings there are, two or more.
    pub const fn count(&self) -> usize {
        self.count
    }

    /// The mean reading.
    pub const fn mean(&self) -> PowerVector {
        self.mean
    }

    /// How the three powers vary together.
    pub const fn covariance(&self) -> Covariance {
        self.covariance
    }

    /// The standard deviations of M, J0 and J45 in dioptres.
    pub fn deviations(&self) -> PowerVector {
        vector(self.covariance.variances().map(f64::sqrt))
    }

    /// Between which values one further reading would lie 95 times in 100: the low and the high end of M, J0 and J45.
    pub fn limits_of_one(&self) -> [PowerVector; 2] {
        let count = self.count as f64;
        let half = self.deviations()
            * (student::two_sided_95(self.count - 1) * (1.0 + 1.0 / count).sqrt());
        [self.mean - half, self.mean + half]
    }
}
