//! Print read near by.
//!
//! ```text
//! acuity = distance in metres / size in M units        1 M = 1.454 mm of x-height = 5′ at 1 m
//! ```
//!
//! (Colenbrander, reading acuity.) N is the printer's point of a Times type, standardised after Law 1951: its x-height is
//! about half the point, so N8 is close to 1 M and M is about N / 8 (from memory; a conversion sheet pairs 1 M with 8
//! points, and rounds 12 and 6 points to 1.6 M and 0.8 M). N1 to N200 and 0.1 to 25 M are accepted, at
//! [`crate::limits::near_cm`].
//!
//! Jaeger numbers are a printer's catalogue numbers: no size belongs to them and cards differ widely, so that they are
//! never converted. A size of print without its distance says nothing of the eye, so a [`NearAcuity`] has both.

use super::LogMar;
use crate::format::plain;
use crate::{OpticsError, limits};
use ::words::optics::acuity as say;
use std::fmt;
use std::str::FromStr;

/// Points to one M unit.
const POINTS_PER_M: f64 = 8.0;

/// A size of print.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Print {
    scale: Scale,
    size: f64,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Scale {
    N,
    M,
}

impl Print {
    /// Print of so many points: N8 is `n(8.0)`.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside N1 to N200.
    pub fn n(points: f64) -> Result<Self, OpticsError> {
        Ok(Self {
            scale: Scale::N,
            size: limits::print_points(points)?,
        })
    }

    /// Print of so many M units.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside 0.1 to 25 M.
    pub fn m(units: f64) -> Result<Self, OpticsError> {
        Ok(Self {
            scale: Scale::M,
            size: limits::print_m_units(units)?,
        })
    }

    /// Its size in M units, from points by the eighth.
    pub fn m_units(self) -> f64 {
        match self.scale {
            Scale::N => self.size / POINTS_PER_M,
            Scale::M => self.size,
        }
    }

    /// Its size in points, from M units by eight.
    pub fn points(self) -> f64 {
        self.m_units() * POINTS_PER_M
    }
}

impl fmt::Display for Print {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.scale {
            Scale::N => write!(f, "N{}", self.size),
            Scale::M => write!(f, "{} M", self.size),
        }
    }
}

impl FromStr for Print {
    type Err = OpticsError;

    /// Reads `N8`, `n 8`, `M1.6` or `0.8 M`.
    fn from_str(text: &str) -> Result<Self, OpticsError> {
        let lower: String = text
            .chars()
            .filter(|c| !c.is_whitespace())
            .map(|c| {
                if c == ',' {
                    '.'
                } else {
                    c.to_ascii_lowercase()
                }
            })
            .collect();
        let unreadable = || OpticsError::UnreadablePrint {
            text: text.trim().to_owned(),
        };
        let size = |digits: &str| {
            let is_number = digits.chars().all(|c| c.is_ascii_digit() || c == '.');
            let number = digits.parse().ok().filter(|_| is_number);
            number.ok_or_else(unreadable)
        };
        if lower.starts_with('j') {
            Err(OpticsError::Jaeger {
                text: text.trim().to_owned(),
            })
        } else if let Some(points) = lower.strip_prefix('n') {
            Self::n(size(points)?)
        } else if let Some(units) = lower.strip_prefix('m').or_else(|| lower.strip_suffix('m')) {
            Self::m(size(units)?)
        } else {
            Err(unreadable())
        }
    }
}

/// Print, and how far from the eye it was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NearAcuity {
    print: Print,
    distance_cm: f64,
}

impl NearAcuity {
    /// Print read at so many centimetres.
    ///
    /// ```
    /// use optics::acuity::{NearAcuity, Print};
    /// let read = NearAcuity::new("N8".parse()?, 40.0)?;
    /// assert_eq!(read.to_string(), "N8 at 40 cm");
    /// assert!((read.acuity()?.decimal() - 0.4).abs() < 1e-9);
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a distance at which nobody reads.
    pub fn new(print: Print, distance_cm: f64) -> Result<Self, OpticsError> {
        Ok(Self {
            print,
            distance_cm: limits::near_cm(distance_cm)?,
        })
    }

    /// The print.
    pub const fn print(self) -> Print {
        self.print
    }

    /// Centimetres from the eye.
    pub const fn distance_cm(self) -> f64 {
        self.distance_cm
    }

    /// The acuity, distance over size.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] where no eye could have read it.
    pub fn acuity(self) -> Result<LogMar, OpticsError> {
        LogMar::from_fraction(self.distance_cm / 100.0, self.print.m_units())
    }
}

impl fmt::Display for NearAcuity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&say::print_at(&self.print, &plain(self.distance_cm, 1)))
    }
}
