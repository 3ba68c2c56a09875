//! The lines of a traditional chart. They are not evenly spaced: 6/60 is 1.000 logMAR, 6/36 0.778, 6/24 0.602, 6/18 0.477.

use ::words::optics::acuity as say;
use serde::{Deserialize, Serialize};
use std::fmt;

/// A line of a traditional chart, by the number under the 6 of its label.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct ChartLine(u8);

impl ChartLine {
    /// Every line, largest letters first.
    pub const ALL: [Self; 9] = [
        Self(60),
        Self(36),
        Self(24),
        Self(18),
        Self(12),
        Self(9),
        Self(6),
        Self(5),
        Self(4),
    ];

    /// The line of this label, one of 60, 36, 24, 18, 12, 9, 6, 5, 4.
    ///
    /// ```
    /// use optics::acuity::ChartLine;
    /// assert_eq!(ChartLine::new(18).map(|line| line.to_string()), Ok("6/18".to_owned()));
    /// assert!(ChartLine::new(19).is_err()); // a line of an even chart
    /// ```
    ///
    /// # Errors
    /// [`NoSuchLine`] for any other number.
    pub fn new(denominator: u8) -> Result<Self, NoSuchLine> {
        let line = Self(denominator);
        if Self::ALL.contains(&line) {
            Ok(line)
        } else {
            Err(NoSuchLine(denominator))
        }
    }

    /// The number under the 6.
    pub fn denominator(self) -> f64 {
        f64::from(self.0)
    }
}

impl fmt::Display for ChartLine {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "6/{}", self.0)
    }
}

/// A label that stands on no line of the chart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("{}", say::no_such_line(.0))]
pub struct NoSuchLine(pub u8);

impl TryFrom<u8> for ChartLine {
    type Error = NoSuchLine;
    fn try_from(denominator: u8) -> Result<Self, NoSuchLine> {
        Self::new(denominator)
    }
}

impl From<ChartLine> for u8 {
    fn from(line: ChartLine) -> Self {
        line.0
    }
}
