//! What an eye makes out that reads no chart: categories, never numbers.
//!
//! Counting fingers, hand movements, perception of light and no perception are ordered and nothing more. Each is worse
//! than any line read on a chart (common practice, no source). How far away the fingers were belongs to the category.
//!
//! For statistics, and for nothing else, papers have put a number beside some of them ([`Category::stand_in`]). It is of a
//! type of its own that cannot be printed, so that it never comes back as a measured acuity.

use super::LogMar;
use crate::exact;
use crate::{OpticsError, limits};
use ::words::optics::acuity as say;
use std::cmp::Ordering;
use std::fmt;

/// How far away fingers were counted, 1 to 600 cm; farther is better.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FingersAt(u16);

impl FingersAt {
    /// At so many whole centimetres.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside 1 to 600 cm.
    pub fn from_cm(cm: u16) -> Result<Self, OpticsError> {
        limits::fingers_cm(f64::from(cm))?;
        Ok(Self(cm))
    }

    /// Centimetres.
    pub const fn cm(self) -> u16 {
        self.0
    }
}

/// What an eye makes out that reads no chart; the greater is the better.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Category {
    /// Sees no light.
    NoPerception,
    /// Sees light.
    PerceptionOfLight,
    /// Sees a hand move.
    HandMovements,
    /// Counts fingers.
    CountingFingers(FingersAt),
}

impl fmt::Display for Category {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::CountingFingers(at) => f.write_str(&say::counts_fingers(&at.cm())),
            Self::HandMovements => f.write_str(say::hand_movements()),
            Self::PerceptionOfLight => f.write_str(say::sees_light()),
            Self::NoPerception => f.write_str(say::no_light()),
        }
    }
}

/// Who put a number beside a category.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StandInSource {
    /// Schulze-Bonsel et al. 2006, Invest Ophthalmol Vis Sci 47:1236-1240: fingers at 30 cm decimal 0.014 (6 eyes), hand
    /// movements 0.005 (12 eyes), light not to be quantified.
    SchulzeBonsel2006,
    /// Lange et al. 2009, Graefes Arch Clin Exp Ophthalmol 247:137-142: fingers 1.98 logMAR (15 eyes, whatever the
    /// distance), hand movements 2.28 (15 eyes), light at the floor of the test.
    Lange2009,
}

/// A number for statistics, in logMAR. Not an acuity: nobody measured it, and it has no printed form.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct StandIn(f64);

impl StandIn {
    /// The number.
    pub const fn for_statistics(self) -> f64 {
        self.0
    }
}

impl Category {
    /// The number that a paper puts beside the category, for statistics alone. Nothing where the paper has none.
    ///
    /// ```
    /// use optics::acuity::{Category, StandInSource};
    /// let hand = Category::HandMovements.stand_in(StandInSource::Lange2009);
    /// assert_eq!(hand.map(|number| number.for_statistics()), Some(2.28));
    /// assert_eq!(Category::PerceptionOfLight.stand_in(StandInSource::Lange2009), None);
    /// ```
    pub fn stand_in(self, source: StandInSource) -> Option<StandIn> {
        let logmar = match (source, self) {
            (StandInSource::SchulzeBonsel2006, Self::CountingFingers(FingersAt(30))) => {
                -exact::log10(0.014)
            }
            (StandInSource::SchulzeBonsel2006, Self::HandMovements) => -exact::log10(0.005),
            (StandInSource::Lange2009, Self::CountingFingers(_)) => 1.98,
            (StandInSource::Lange2009, Self::HandMovements) => 2.28,
            _ => return None,
        };
        Some(StandIn(logmar))
    }
}

/// How well an eye sees: measured on a chart, or in a category. The greater is the better.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Acuity {
    /// In a category.
    Category(Category),
    /// Measured on a chart.
    Measured(LogMar),
}

impl Ord for Acuity {
    fn cmp(&self, other: &Self) -> Ordering {
        match (self, other) {
            (Self::Measured(one), Self::Measured(two)) => two.value().total_cmp(&one.value()),
            (Self::Measured(_), Self::Category(_)) => Ordering::Greater,
            (Self::Category(_), Self::Measured(_)) => Ordering::Less,
            (Self::Category(one), Self::Category(two)) => one.cmp(two),
        }
    }
}

impl PartialOrd for Acuity {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
