//! The lines of an even chart, 0.1 logMAR apart, and the labels printed beside them.
//!
//! A label is a preferred number, not the exact one: the line at 0.2 logMAR is 6/9.51 and printed 6/9.5, that at 0.5 is
//! 6/18.97 and printed 6/19. The labels stand in DICOM PS3.17, annex on visual acuity notation (−0.3 to 1.5), and repeat
//! with every tenfold letter. Tables differ in a few: 4/12.5 is also printed 4/12.6, and 20/32 and 20/63 on a traditional
//! chart are 20/30 and 20/60.

use super::LogMar;
use crate::OpticsError;
use crate::exact;
use crate::format::plain;

/// What stands over the stroke of a label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// 6, in metres.
    SixMetres,
    /// 4, in metres.
    FourMetres,
    /// 20, in feet.
    TwentyFeet,
}

impl Over {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::SixMetres, Self::FourMetres, Self::TwentyFeet];

    /// The number itself.
    pub const fn number(self) -> f64 {
        match self {
            Self::SixMetres => 6.0,
            Self::FourMetres => 4.0,
            Self::TwentyFeet => 20.0,
        }
    }

    /// The preferred numbers of ten lines from 0.0 logMAR on.
    const fn decade(self) -> [f64; 10] {
        match self {
            Self::SixMetres => [6.0, 7.5, 9.5, 12.0, 15.0, 19.0, 24.0, 30.0, 38.0, 48.0],
            Self::FourMetres => [4.0, 5.0, 6.3, 8.0, 10.0, 12.5, 16.0, 20.0, 25.0, 32.0],
            Self::TwentyFeet => [
                20.0, 25.0, 32.0, 40.0, 50.0, 63.0, 80.0, 100.0, 125.0, 160.0,
            ],
        }
    }
}

/// The decimal labels of ten lines from 0.0 logMAR on.
const DECIMALS: [f64; 10] = [1.0, 0.8, 0.63, 0.5, 0.4, 0.32, 0.25, 0.2, 0.16, 0.125];

/// A line of an even chart, by its tenths of logMAR.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct EvenLine(i8);

impl EvenLine {
    /// The tenths of logMAR of the smallest and of the largest letters.
    pub const TENTHS: std::ops::RangeInclusive<i8> = -3..=20;

    /// Every line, smallest letters first.
    pub fn all() -> impl Iterator<Item = Self> {
        Self::TENTHS.map(Self)
    }

    /// The line nearest to an acuity.
    ///
    /// ```
    /// use optics::acuity::{EvenLine, LogMar, Over};
    /// let line = EvenLine::nearest(LogMar::new(0.48)?)?;
    /// assert_eq!(line.label(Over::SixMetres), "6/19");
    /// assert_eq!(line.label(Over::TwentyFeet), "20/63");
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// [`OpticsError::NoLineNear`] beyond the lines at −0.3 and 2.0 logMAR by more than half a line.
    pub fn nearest(acuity: LogMar) -> Result<Self, OpticsError> {
        let tenths = (acuity.value() * 10.0).round() as i8;
        if Self::TENTHS.contains(&tenths) {
            Ok(Self(tenths))
        } else {
            Err(OpticsError::NoLineNear {
                logmar: acuity.value(),
            })
        }
    }

    /// The exact acuity of the line.
    pub fn acuity(self) -> LogMar {
        LogMar(f64::from(self.0) / 10.0)
    }

    /// The number printed under the stroke.
    pub fn nominal(self, over: Over) -> f64 {
        let (at, tenfold) = self.place();
        over.decade()[at] * tenfold
    }

    /// The decimal acuity as it is printed.
    pub fn decimal(self) -> f64 {
        let (at, tenfold) = self.place();
        DECIMALS[at] / tenfold
    }

    /// The label: `6/9.5`.
    pub fn label(self, over: Over) -> String {
        format!(
            "{}/{}",
            plain(over.number(), 0),
            plain(self.nominal(over), 2)
        )
    }

    /// Which of the ten labels, and what multiplies it.
    fn place(self) -> (usize, f64) {
        let at = usize::from(self.0.rem_euclid(10).unsigned_abs());
        (at, exact::ten_to(f64::from(self.0.div_euclid(10))))
    }
}
