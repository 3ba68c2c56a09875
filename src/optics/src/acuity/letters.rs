//! The letter count of a chart with five letters to a line and 0.1 logMAR between lines (ETDRS).
//!
//! ```text
//! letters = 85 − 50 logMAR        logMAR = 1.7 − 0.02 letters
//! ```
//!
//! rounded to the nearest letter: Gregori, Feng and Rosenfeld 2010, Retina 30:1046-1050 (formula seen in its abstract; the
//! pages from memory). The inverse: Beck et al. 2003, Am J Ophthalmol (from memory). 0 to 100 letters, which is 1.70 to
//! −0.30 logMAR. An equivalent of a traditional chart's line is approximate: 5 letters either way are the noise of it.
//!
//! Some tables call 20/20 100 letters: that is the visual acuity score, 100 − 50 logMAR, another scale.

use super::LogMar;
use crate::{OpticsError, limits};

/// The letters that count as read at 1 m where enough were read at 4 m.
const EASY_LETTERS: u8 = 30;

/// From this many letters at 4 m nobody is asked to read at 1 m.
const ENOUGH_AT_4_M: u8 = 20;

/// A letter count, 0 to 100; more is better.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LetterScore(u8);

impl LetterScore {
    /// A count as it was noted.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] above 100.
    pub fn new(letters: u8) -> Result<Self, OpticsError> {
        limits::letters(f64::from(letters))?;
        Ok(Self(letters))
    }

    /// The count nearest to an acuity.
    ///
    /// ```
    /// use optics::acuity::{LetterScore, LogMar};
    /// let score = LetterScore::nearest(LogMar::from_fraction(20.0, 40.0)?)?;
    /// assert_eq!(score.letters(), 70); // 69.9 before rounding
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for an acuity that no count reaches: better than −0.30 or worse than 1.70 logMAR.
    pub fn nearest(acuity: LogMar) -> Result<Self, OpticsError> {
        let letters = limits::letters((85.0 - 50.0 * acuity.value()).round())?;
        Ok(Self(letters as u8))
    }

    /// The count from the chart: letters read at 4 m with 30 added where they are 20 or more, else with those added that
    /// are read of the six largest lines at 1 m, which are looked at in that case alone (from memory).
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for more than 70 letters at 4 m or 30 at 1 m; [`OpticsError::LettersAtOneMetre`] where
    /// the letters at 1 m are wanted and missing.
    pub fn from_chart(at_4_m: u8, at_1_m: Option<u8>) -> Result<Self, OpticsError> {
        limits::letters_at_4_m(f64::from(at_4_m))?;
        if at_4_m >= ENOUGH_AT_4_M {
            return Ok(Self(at_4_m + EASY_LETTERS));
        }
        let at_1_m = at_1_m.ok_or(OpticsError::LettersAtOneMetre { at_4_m })?;
        limits::letters_at_1_m(f64::from(at_1_m))?;
        Ok(Self(at_4_m + at_1_m))
    }

    /// The letters, 0 to 100.
    pub const fn letters(self) -> u8 {
        self.0
    }

    /// The acuity that the count stands for.
    pub fn acuity(self) -> LogMar {
        LogMar(1.7 - 0.02 * f64::from(self.0))
    }
}
