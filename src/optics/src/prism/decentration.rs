//! Prism from a lens that is not looked through at its centre.
//!
//! ```text
//! P = F d      F the power matrix in dioptres (see [`PowerMatrix`])
//!              d in centimetres, x to the right of a person facing the patient, y up
//!              P the base vector in Δ, in the same directions
//! ```
//!
//! For a sphere this is Prentice's rule `P = c F`: the base of a plus lens goes where its centre goes, that of a minus
//! lens the other way. A cylinder also turns a ray across the way that the lens was moved, which the power along that
//! way alone would miss. Source: Long 1976, Am J Optom Physiol Opt 53:27-33 (its abstract seen; checked
//! by ray trace).
//!
//! Millimetres here, ±40, for a slip between millimetres and centimetres is tenfold. The rule is for rays near the axis
//! (Faria-e-Sousa 2022, Ophthalmic Physiol Opt 42:410-413): an exact ray trace of a +6.00 lens 15 mm off centre gives
//! 9.4 Δ where the rule says 9.0, and of a −6.00 lens 20 mm off centre 14.8 where the rule says 12.0 (heights at the back vertex plane).

use super::Prism;
use crate::exact;
use crate::sphere_cyl::finite;
use crate::{Eye, OpticsError, PowerMatrix, SphereCyl, limits};
use ::words::optics::limits as say;
use std::ops::Neg;

/// A principal power weaker than this many dioptres is none.
const NO_POWER: f64 = 1e-9;

/// A prism smaller than this many Δ along a meridian is none.
const NO_PRISM: f64 = 1e-9;

/// How far the optical centre of a lens stands from the point that the eye looks through.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Decentration {
    right_mm: f64,
    up_mm: f64,
}

impl Decentration {
    /// To the right of a person who faces the patient, and up; the other way where negative. In millimetres.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside ±40 mm.
    pub fn new(right_mm: f64, up_mm: f64) -> Result<Self, OpticsError> {
        Ok(Self {
            right_mm: limits::decentration_mm(right_mm)?,
            up_mm: limits::decentration_mm(up_mm)?,
        })
    }

    /// Toward the nose of this eye, and up, in millimetres.
    ///
    /// # Errors
    /// As [`Self::new`].
    pub fn inward(eye: Eye, in_mm: f64, up_mm: f64) -> Result<Self, OpticsError> {
        Self::new(eye.noseward() * in_mm, up_mm)
    }

    /// Where the centre stands seen from an eye that looks so far toward the nose and below it, in millimetres.
    ///
    /// # Errors
    /// As [`Self::new`].
    pub fn of_gaze(eye: Eye, in_mm: f64, down_mm: f64) -> Result<Self, OpticsError> {
        Self::inward(eye, -in_mm, down_mm)
    }

    /// Where a centre stands seen from the pupil, both measured from the middle of the bridge in millimetres.
    ///
    /// ```
    /// use optics::{Eye, SphereCyl, prism::{Decentration, Prism}};
    /// // The right lens is centred at 34 mm before a pupil at 31 mm: 3 mm too far out.
    /// let off = Decentration::of_centre(Eye::Right, 34.0, 31.0)?;
    /// let prism = Prism::of_decentred(&SphereCyl::sphere(-5.0), off)?;
    /// assert_eq!(prism.written(Eye::Right), "1.50 in");
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a distance that no face or frame has.
    pub fn of_centre(eye: Eye, centre_mm: f64, pupil_mm: f64) -> Result<Self, OpticsError> {
        let centre = limits::half_distance_mm(centre_mm)?;
        Self::inward(eye, limits::half_distance_mm(pupil_mm)? - centre, 0.0)
    }

    /// How far a lens is to be moved from the middle of the frame's eye so that its centre stands before the pupil, from
    /// the distance between the frame's two middles and the distance of this pupil from the middle of the bridge, in
    /// millimetres. Turned round it is what is left where nobody moves the lens.
    ///
    /// ```
    /// use optics::{Eye, SphereCyl, prism::{Decentration, Prism}};
    /// let to_move = Decentration::to_pupil(Eye::Left, 70.0, 31.0)?;
    /// assert_eq!(to_move.in_mm(Eye::Left), 4.0);
    /// let left_alone = Prism::of_decentred(&SphereCyl::sphere(-5.0), -to_move)?;
    /// assert_eq!(left_alone.written(Eye::Left), "2.00 in");
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// As [`Self::of_centre`].
    pub fn to_pupil(eye: Eye, frame_mm: f64, pupil_mm: f64) -> Result<Self, OpticsError> {
        let middle = limits::centre_distance_mm(frame_mm)? / 2.0;
        Self::inward(eye, middle - limits::half_distance_mm(pupil_mm)?, 0.0)
    }

    /// The movement that gives a wanted prism: `P = F d` solved for d along each principal meridian.
    ///
    /// ```
    /// use optics::{Eye, SphereCyl, prism::{Base, Decentration, Prism}};
    /// let out = Prism::toward(2.0, Base::Out, Eye::Right)?;
    /// let moved = Decentration::wanted(&SphereCyl::sphere(4.0), out)?;
    /// assert_eq!(moved.in_mm(Eye::Right), -5.0);
    /// assert!(Decentration::wanted(&SphereCyl::sphere(0.0), out).is_err());
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// [`OpticsError::NoPowerThere`] where the lens has no power along a meridian in which prism is wanted;
    /// [`OpticsError::OutOfRange`] where it would have to move by more than 40 mm; [`OpticsError::NotANumber`].
    pub fn wanted(lens: &SphereCyl, prism: Prism) -> Result<Self, OpticsError> {
        let (mut right_mm, mut up_mm) = (0.0, 0.0);
        for principal in lens.principal() {
            let power = finite(say::power(), principal.power)?;
            let (sine, cosine) = exact::sin_cos(principal.meridian.degrees().to_radians());
            let along = prism.h() * cosine + prism.v() * sine;
            if along.abs() < NO_PRISM {
                continue;
            }
            if power.abs() < NO_POWER {
                return Err(OpticsError::NoPowerThere {
                    meridian: principal.meridian,
                });
            }
            let by_mm = 10.0 * along / power;
            right_mm += by_mm * cosine;
            up_mm += by_mm * sine;
        }
        Self::new(right_mm, up_mm)
    }

    /// To the right of a person who faces the patient, in millimetres.
    pub const fn right_mm(self) -> f64 {
        self.right_mm
    }

    /// Up, in millimetres.
    pub const fn up_mm(self) -> f64 {
        self.up_mm
    }

    /// Toward the nose of this eye, in millimetres; toward the temple where negative.
    pub fn in_mm(self, eye: Eye) -> f64 {
        self.right_mm * eye.noseward()
    }
}

/// As far the other way.
impl Neg for Decentration {
    type Output = Self;
    fn neg(self) -> Self {
        Self {
            right_mm: -self.right_mm,
            up_mm: -self.up_mm,
        }
    }
}

impl Prism {
    /// What a decentred lens adds to its own prism.
    ///
    /// ```
    /// use optics::{Eye, SphereCyl, prism::{Decentration, Prism}};
    /// // The right eye looks 10 mm below the centre of an oblique cylinder.
    /// let lens = SphereCyl::new(-1.0, -2.0, 45.0)?;
    /// let below = Decentration::of_gaze(Eye::Right, 0.0, 10.0)?;
    /// let prism = Prism::of_decentred(&lens, below)?;
    /// assert_eq!(prism.written(Eye::Right), "2.00 down & 1.00 in");
    /// assert_eq!(prism.to_string(), "2.24 @ 296.6");
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for a lens of endless power.
    pub fn of_decentred(lens: &SphereCyl, by: Decentration) -> Result<Self, OpticsError> {
        let by_cm = [by.right_mm / 10.0, by.up_mm / 10.0];
        let [h, v] = PowerMatrix::from(*lens).times(by_cm);
        Self::new(h, v)
    }
}
