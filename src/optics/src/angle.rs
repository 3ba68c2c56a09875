//! Axes and meridians: two ways to name a direction across the eye, 90 degrees apart in what they say of a cylinder.
//!
//! Both are counted anticlockwise from the right-hand side of a person who faces the patient, the same for both eyes
//! (ISO 8429:1986), in degrees over half a turn. They are kept in (0, 180]; what the mathematics calls 0 is written 180.
//!
//! An **axis** is where a cylinder has no power; a **meridian** is where a power acts. So a lens that neutralises the
//! meridian 90 alone is a cylinder with its axis at 180. A streak is a line of light standing at an angle and sweeping
//! across itself, so it tests the meridian 90 degrees from where it stands.

use crate::{OpticsError, limits};
use ::words::optics::lens as say;
use serde::{Deserialize, Serialize};

/// Brings any angle in degrees into (0, 180].
fn half_turn(degrees: f64) -> f64 {
    let within = degrees.rem_euclid(180.0);
    if within == 0.0 { 180.0 } else { within }
}

/// The axis of a cylinder, in degrees in (0, 180].
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Axis(f64);

impl Axis {
    /// Takes an axis as entered, 0 to 180 degrees, fractions allowed; 0 becomes 180.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside 0 to 180 or for what is not a number.
    pub fn new(degrees: f64) -> Result<Self, OpticsError> {
        Ok(Self(half_turn(limits::axis(degrees)?)))
    }

    /// Any finite angle brought into half a turn; for results of arithmetic.
    pub(crate) fn wrapped(degrees: f64) -> Self {
        Self(half_turn(degrees))
    }

    /// Degrees in (0, 180].
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The axis 90 degrees away.
    #[must_use]
    pub fn crossed(self) -> Self {
        self.turned(90.0)
    }

    /// The axis turned by so many degrees (anticlockwise positive), going round at 180. An endless turn is no turn.
    #[must_use]
    pub fn turned(self, by_degrees: f64) -> Self {
        if by_degrees.is_finite() {
            Self(half_turn(self.0 + by_degrees))
        } else {
            self
        }
    }

    /// The meridian in which a cylinder with this axis has its whole power.
    pub fn power_meridian(self) -> Meridian {
        Meridian(self.crossed().0)
    }
}

impl TryFrom<f64> for Axis {
    type Error = OpticsError;
    fn try_from(degrees: f64) -> Result<Self, OpticsError> {
        Self::new(degrees)
    }
}

impl From<Axis> for f64 {
    fn from(axis: Axis) -> Self {
        axis.0
    }
}

/// A meridian in which power acts, in degrees in (0, 180].
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Meridian(f64);

impl Meridian {
    /// 180 degrees.
    pub const HORIZONTAL: Self = Self(180.0);

    /// Whether it is nearer to lying than to standing.
    pub fn lies(self) -> bool {
        self.0 <= 45.0 || self.0 > 135.0
    }

    /// Takes a meridian as entered, 0 to 180 degrees, fractions allowed; 0 becomes 180.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside 0 to 180 or for what is not a number.
    pub fn new(degrees: f64) -> Result<Self, OpticsError> {
        Ok(Self(half_turn(limits::meridian(degrees)?)))
    }

    /// The meridian that a streak standing at this angle tests: 90 degrees from it.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside 0 to 180 or for what is not a number.
    pub fn tested_by_streak(streak_degrees: f64) -> Result<Self, OpticsError> {
        Ok(Self::new(streak_degrees)?.crossed())
    }

    /// Where a streak stands that tests this meridian, in degrees in (0, 180].
    pub fn streak_degrees(self) -> f64 {
        self.crossed().0
    }

    /// Degrees in (0, 180].
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The meridian 90 degrees away.
    #[must_use]
    pub fn crossed(self) -> Self {
        Self(half_turn(self.0 + 90.0))
    }

    /// The meridian as it is called: "the vertical", "the horizontal", "the meridian 35".
    pub fn name(self) -> String {
        match self.0 {
            90.0 => say::vertical().to_owned(),
            180.0 => say::horizontal().to_owned(),
            degrees => say::meridian_at(&crate::format::plain(degrees, 1)),
        }
    }

    /// How far another meridian lies from this one, in degrees, 0 to 90.
    pub fn apart(self, other: Self) -> f64 {
        let turn = (self.0 - other.0).rem_euclid(180.0);
        turn.min(180.0 - turn)
    }

    /// The axis lying along this meridian: of a cylinder that leaves this meridian alone.
    pub fn as_axis(self) -> Axis {
        Axis(self.0)
    }
}

impl TryFrom<f64> for Meridian {
    type Error = OpticsError;
    fn try_from(degrees: f64) -> Result<Self, OpticsError> {
        Self::new(degrees)
    }
}

impl From<Meridian> for f64 {
    fn from(meridian: Meridian) -> Self {
        meridian.0
    }
}

#[cfg(test)]
#[expect(
    clippy::float_cmp,
    reason = "whole degrees and eighths are exact in binary"
)]
mod tests {
    use super::*;

    // Zero is written 180: common practice, no source.
    #[test]
    fn zero_is_one_hundred_and_eighty() {
        assert_eq!(Axis::new(0.0).unwrap(), Axis::new(180.0).unwrap());
        assert_eq!(Axis::new(0.0).unwrap().degrees(), 180.0);
        assert_eq!(Meridian::new(0.0).unwrap().degrees(), 180.0);
    }

    #[test]
    fn outside_half_a_turn_is_refused() {
        for degrees in [-1.0, 180.5, 200.0, f64::NAN, f64::INFINITY] {
            assert!(Axis::new(degrees).is_err(), "{degrees}");
            assert!(Meridian::new(degrees).is_err(), "{degrees}");
        }
    }

    #[test]
    fn turning_goes_round() {
        let axis = Axis::new(175.0).unwrap();
        assert_eq!(axis.turned(10.0).degrees(), 5.0);
        assert_eq!(axis.turned(-175.0).degrees(), 180.0);
        assert_eq!(axis.turned(f64::NAN), axis);
    }

    // A streak at an angle tests the meridian 90 degrees from it: common practice, no source.
    #[test]
    fn a_standing_streak_tests_the_lying_meridian() {
        let tested = Meridian::tested_by_streak(90.0).unwrap();
        assert_eq!(tested.degrees(), 180.0);
        assert_eq!(tested.streak_degrees(), 90.0);
        assert_eq!(Meridian::tested_by_streak(30.0).unwrap().degrees(), 120.0);
    }

    // A cylinder has no power along its axis and its whole power 90 degrees from it: the definition of a cylinder.
    #[test]
    fn power_in_the_ninety_is_axis_one_eighty() {
        let axis = Axis::new(180.0).unwrap();
        assert_eq!(axis.power_meridian().degrees(), 90.0);
    }
}
