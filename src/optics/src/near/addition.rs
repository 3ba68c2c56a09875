//! The reading addition to begin with.
//!
//! ```text
//! addition = 1 / working distance (m) − share × amplitude
//! ```
//!
//! in dioptres, none below 0. The share is how much of the amplitude the person may use: two thirds for young presbyopes
//! (below about 52 years), one half for older ones, which leaves the rest in reserve. By age alone: 45 to 50 years +1.00 to
//! +1.25, 50 to 55 +1.50 to +1.75, 55 to 60 +2.00 to +2.25, older +2.50 to +3.00, to be adjusted for the working distance.
//! Both from Millodot, Dictionary of Optometry and Visual Science, entry on the near addition. Other tables differ: one
//! teaching page begins at 40 and gives about 0.25 to 0.50 D more at each age.
//!
//! After 60 the addition still rises, because print is brought closer and not because of accommodation: a mean working
//! distance of 2.75 D at a mean age of 73 years in one study.

use crate::limits::OutOfRange;
use crate::{OpticsError, limits};

/// How much of the amplitude a person is to use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Share {
    /// Half, with half in reserve.
    Half,
    /// Two thirds, with a third in reserve.
    TwoThirds,
}

/// From this age in years half is the usual share.
const HALF_FROM: f64 = 52.0;

impl Share {
    /// The share that suits an age in years.
    ///
    /// # Errors
    /// [`OutOfRange`] outside 0 to 120 years.
    pub fn for_age(age: f64) -> Result<Self, OutOfRange> {
        Ok(if limits::age(age)? < HALF_FROM {
            Self::TwoThirds
        } else {
            Self::Half
        })
    }

    /// As a number between 0 and 1.
    pub const fn fraction(self) -> f64 {
        match self {
            Self::Half => 0.5,
            Self::TwoThirds => 2.0 / 3.0,
        }
    }
}

/// An addition to try first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tentative(f64);

impl Tentative {
    /// Dioptres, unrounded; 0 where the eye needs none.
    pub const fn dioptres(self) -> f64 {
        self.0
    }

    /// Whether the eye reaches the distance by itself.
    pub fn none_needed(self) -> bool {
        self.0 == 0.0
    }
}

/// The addition for a working distance in centimetres and an amplitude in dioptres.
///
/// ```
/// use optics::near::{Share, tentative};
/// assert!((tentative(40.0, 2.0, Share::TwoThirds)?.dioptres() - 1.167).abs() < 0.001);
/// assert!(tentative(40.0, 8.0, Share::Half)?.none_needed());
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// [`OpticsError::OutOfRange`] for the distance or the amplitude.
pub fn tentative(working_cm: f64, amplitude: f64, share: Share) -> Result<Tentative, OpticsError> {
    let demand = 100.0 / limits::near_cm(working_cm)?;
    let used = share.fraction() * limits::amplitude(amplitude)?;
    Ok(Tentative((demand - used).max(0.0)))
}

/// What an addition leaves in reserve at a working distance, in dioptres: the amplitude less what the eye must still do
/// itself. Negative where the eye does not reach; more than the amplitude where the addition is stronger than the distance.
///
/// # Errors
/// [`OpticsError::OutOfRange`] for the distance, the addition or the amplitude.
pub fn in_reserve(working_cm: f64, add: f64, amplitude: f64) -> Result<f64, OpticsError> {
    let demand = 100.0 / limits::near_cm(working_cm)?;
    let own_part = demand - limits::add_or_none(add)?;
    Ok(limits::amplitude(amplitude)? - own_part)
}

/// The weaker and the stronger end of a usual addition, in dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AddRange {
    /// The weaker end.
    pub least: f64,
    /// The stronger end.
    pub most: f64,
}

/// From this age in years on, these additions.
const BY_AGE: [(f64, AddRange); 4] = [
    (60.0, add_range(2.50, 3.00)),
    (55.0, add_range(2.00, 2.25)),
    (50.0, add_range(1.50, 1.75)),
    (45.0, add_range(1.00, 1.25)),
];

const fn add_range(least: f64, most: f64) -> AddRange {
    AddRange { least, most }
}

/// The usual addition at an age in years; nothing below 45, where the source has none. The ages at which two of its ranges
/// meet are taken with the older.
///
/// ```
/// let usual = optics::near::by_age(57.0)?.unwrap();
/// assert_eq!((usual.least, usual.most), (2.00, 2.25));
/// # Ok::<(), optics::OutOfRange>(())
/// ```
///
/// # Errors
/// [`OutOfRange`] outside 0 to 120 years.
pub fn by_age(age: f64) -> Result<Option<AddRange>, OutOfRange> {
    let age = limits::age(age)?;
    let found = BY_AGE.iter().find(|(from, _)| age >= *from);
    Ok(found.map(|(_, add)| *add))
}
