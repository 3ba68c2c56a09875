//! Letters missed of a line, and letters read of the next: `6/9 −2 +1`.
//!
//! Each counts 0.02 logMAR on an even chart of five letters to a line. On a traditional chart such a suffix has no defined
//! value (DICOM PS3.17, annex on visual acuity notation), so it is kept as it was written and counted only when asked.

use super::LETTER;
use crate::limits;
use crate::limits::OutOfRange;
use std::fmt;

/// Letters missed of the line and letters read beyond it; none of either for a whole line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash)]
pub struct PartialLine {
    missed: u8,
    gained: u8,
}

impl PartialLine {
    /// The whole line and no more.
    pub const WHOLE: Self = Self {
        missed: 0,
        gained: 0,
    };

    /// So many letters missed, so many gained, 0 to 7 of each: a traditional line has up to eight letters (a comparison of
    /// charts in Br J Ophthalmol), and all of them are another line.
    ///
    /// ```
    /// let read = optics::acuity::PartialLine::new(2, 1)?;
    /// assert_eq!(read.to_string(), " −2 +1");
    /// assert!((read.logmar() - 0.02).abs() < 1e-12);
    /// # Ok::<(), optics::OutOfRange>(())
    /// ```
    ///
    /// # Errors
    /// [`OutOfRange`] for more than 7.
    pub fn new(missed: u8, gained: u8) -> Result<Self, OutOfRange> {
        limits::letters_of_a_line(f64::from(missed))?;
        limits::letters_of_a_line(f64::from(gained))?;
        Ok(Self { missed, gained })
    }

    /// Letters missed of the line.
    pub const fn missed(self) -> u8 {
        self.missed
    }

    /// Letters read of the next line.
    pub const fn gained(self) -> u8 {
        self.gained
    }

    /// What the letters add to the line's logMAR: missed ones are worse, which is more.
    pub fn logmar(self) -> f64 {
        LETTER * (f64::from(self.missed) - f64::from(self.gained))
    }
}

impl fmt::Display for PartialLine {
    /// ` −2 +1` with a space before each, or nothing for a whole line.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.missed > 0 {
            write!(f, " −{}", self.missed)?;
        }
        if self.gained > 0 {
            write!(f, " +{}", self.gained)?;
        }
        Ok(())
    }
}
