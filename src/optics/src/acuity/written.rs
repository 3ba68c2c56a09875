//! An acuity as a person writes it, kept as it was written.
//!
//! | written | means |
//! | --- | --- |
//! | `6/9`, `3/24`, `2.5/36` | metres over metres, the distance really used |
//! | `20/40`, `10/40 ft` | feet over feet: a number over the stroke above 10, or `ft`, says so |
//! | `0.5` or `0,5` | a decimal acuity |
//! | `logMAR 0.3`, `0.3 logMAR` | logMAR, letters already counted |
//! | `6/9 -2`, `6/9−2 +1`, `20/40+1` | letters missed of the line, letters read of the next |
//! | `CF 50 cm`, `CF 1 m` | fingers counted, always with the distance |
//! | `HM`, `PL`, `LP`, `NPL`, `NLP` | hand movements, light, no light |
//!
//! Distances are those of [`crate::limits::chart_m`], the acuity that of [`LogMar`]. How the trade writes it: common
//! practice, no source. What is printed is read back as the same.

use super::{Acuity, Category, LogMar, PartialLine, WrittenError, reader};
use crate::far::FOOT_M;
use crate::{OpticsError, limits};
use std::fmt;
use std::str::FromStr;

/// A number over the stroke above this is feet: no chart stands farther away in metres.
pub(super) const FEET_ABOVE: f64 = limits::CHART_M.high;

/// The measure in which an acuity is written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// Metres over metres.
    Metres {
        /// The distance really used.
        distance: f64,
        /// The distance at which the letter subtends 5 minutes of arc.
        size: f64,
    },
    /// Feet over feet.
    Feet {
        /// The distance really used.
        distance: f64,
        /// The distance at which the letter subtends 5 minutes of arc.
        size: f64,
    },
    /// A decimal acuity.
    Decimal(f64),
    /// logMAR.
    LogMar(f64),
}

/// A line read on a chart, as it was written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WrittenLine {
    measure: Measure,
    partial: PartialLine,
    counted: LogMar,
}

impl WrittenLine {
    /// A line in its measure, with letters missed and gained.
    ///
    /// # Errors
    /// [`OpticsError`] for a distance that no chart is used at or an acuity that no eye has; also where letters go with a
    /// logMAR, which has them counted.
    pub fn new(measure: Measure, partial: PartialLine) -> Result<Self, OpticsError> {
        match measure {
            Measure::Metres { distance, .. } => limits::chart_m(distance)?,
            Measure::Feet { distance, .. } => limits::chart_m(distance * FOOT_M)?,
            Measure::LogMar(_) if partial != PartialLine::WHOLE => {
                return Err(OpticsError::LettersCountedTwice);
            }
            Measure::Decimal(_) | Measure::LogMar(_) => 0.0,
        };
        let counted = LogMar::new(line_of(measure)?.value() + partial.logmar())?;
        Ok(Self {
            measure,
            partial,
            counted,
        })
    }

    /// The measure as written.
    pub const fn measure(&self) -> Measure {
        self.measure
    }

    /// The letters missed and gained.
    pub const fn partial(&self) -> PartialLine {
        self.partial
    }

    /// The acuity with its letters counted, 0.02 logMAR each.
    ///
    /// ```
    /// use optics::acuity::{Measure, PartialLine, WrittenLine};
    /// let last_full = Measure::Decimal(0.5);
    /// let read = WrittenLine::new(last_full, PartialLine::new(0, 3)?)?;
    /// assert!((read.acuity().value() - 0.241).abs() < 0.001);
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    pub const fn acuity(&self) -> LogMar {
        self.counted
    }
}

/// The acuity of the line alone.
fn line_of(measure: Measure) -> Result<LogMar, OpticsError> {
    match measure {
        Measure::Metres { distance, size } | Measure::Feet { distance, size } => {
            LogMar::from_fraction(distance, size)
        }
        Measure::Decimal(decimal) => LogMar::from_decimal(decimal),
        Measure::LogMar(logmar) => LogMar::new(logmar),
    }
}

impl fmt::Display for WrittenLine {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letters = self.partial;
        match self.measure {
            Measure::Metres { distance, size } => write!(f, "{distance}/{size}{letters}"),
            Measure::Feet { distance, size } if distance > FEET_ABOVE => {
                write!(f, "{distance}/{size}{letters}")
            }
            Measure::Feet { distance, size } => write!(f, "{distance}/{size} ft{letters}"),
            Measure::Decimal(decimal) => write!(f, "{decimal}{letters}"),
            Measure::LogMar(logmar) if logmar < 0.0 => write!(f, "logMAR −{}", logmar.abs()),
            Measure::LogMar(logmar) => write!(f, "logMAR {}", logmar.abs()),
        }
    }
}

/// An acuity as it was written: a line, or a category.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Written {
    /// A line read on a chart.
    Line(WrittenLine),
    /// A category.
    Category(Category),
}

impl FromStr for Written {
    type Err = WrittenError;

    /// Reads an acuity. See the table above for what is taken.
    fn from_str(text: &str) -> Result<Self, WrittenError> {
        reader::read(text)
    }
}

impl fmt::Display for Written {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line(line) => line.fmt(f),
            Self::Category(category) => category.fmt(f),
        }
    }
}

impl From<Written> for Acuity {
    /// How well the eye sees, letters counted.
    fn from(written: Written) -> Self {
        match written {
            Written::Line(line) => Self::Measured(line.acuity()),
            Written::Category(category) => Self::Category(category),
        }
    }
}
