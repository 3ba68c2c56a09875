//! The bands of distance vision impairment of the World Health Organization.
//!
//! Cuts at 6/12, 6/18, 6/60, 3/60 and 1/60, each "equal to or better"; then light, then no light. ICD-10 (2010 text, H54)
//! counts 0 to 5 and begins with 6/18; ICD-11 (9D90) adds the mild band and counts 0 to 6 (the codes of ICD-11 from
//! memory). Fingers counted at 1 m stand beside 1/60 in the ICD-10 table. Meant for both eyes together with the glasses
//! that are worn.
//!
//! The table prints 0.3 and 20/70 beside 6/18, and 0.02 and 5/300 beside 1/60, which are not the same: here the fraction of
//! 6 decides, so that 6/19 on an even chart is worse than 6/18.

use super::{Acuity, Category};
use crate::exact;

/// A band of impairment; the greater is the worse.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Band {
    /// 6/12 or better.
    None,
    /// Worse than 6/12, 6/18 or better.
    Mild,
    /// Worse than 6/18, 6/60 or better.
    Moderate,
    /// Worse than 6/60, 3/60 or better.
    Severe,
    /// Blindness: worse than 3/60, 1/60 or better.
    BelowThreeSixtieths,
    /// Blindness: worse than 1/60, light seen.
    BelowOneSixtieth,
    /// Blindness: no light seen.
    NoLight,
}

impl Band {
    /// The band of an acuity.
    ///
    /// ```
    /// use optics::acuity::{Acuity, Band, LogMar};
    /// let read = Acuity::Measured(LogMar::from_fraction(6.0, 24.0)?);
    /// assert_eq!(Band::of(&read), Band::Moderate);
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    pub fn of(acuity: &Acuity) -> Self {
        // How much larger than at 6/6 the letters are at the end of each band.
        const CUTS: [(f64, Band); 5] = [
            (2.0, Band::None),
            (3.0, Band::Mild),
            (10.0, Band::Moderate),
            (20.0, Band::Severe),
            (60.0, Band::BelowThreeSixtieths),
        ];
        match acuity {
            Acuity::Measured(read) => CUTS
                .into_iter()
                .find(|(times, _)| read.value() <= exact::log10(*times))
                .map_or(Self::BelowOneSixtieth, |(_, band)| band),
            Acuity::Category(Category::NoPerception) => Self::NoLight,
            Acuity::Category(Category::CountingFingers(at)) if at.cm() >= 100 => {
                Self::BelowThreeSixtieths
            }
            Acuity::Category(_) => Self::BelowOneSixtieth,
        }
    }

    /// Its number in ICD-10, 0 to 5.
    pub const fn icd_10(self) -> u8 {
        self.icd_11().saturating_sub(1)
    }

    /// Its number in ICD-11, 0 to 6.
    pub const fn icd_11(self) -> u8 {
        self as u8
    }
}
