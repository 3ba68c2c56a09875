//! One sweep of the streak, as it was made and as it looked.
//!
//! The beam is normal where it is parallel or diverging, and reversed where it comes to a focus between the scope and the
//! eye; which end of the sleeve does which depends on the maker, so the end is never written down. With a normal beam *with*
//! means that more plus is needed and *against* less; reversed, the two change places. Speed and brightness are what the
//! examiner would say, and may be left out. Powers in dioptres in the meridian that the sweep tests.

use super::Setup;
use crate::sphere_cyl::finite;
use crate::{Meridian, OpticsError, limits};
use ::words::optics::retinoscopy as say;
use serde::{Deserialize, Serialize};

/// What the beam does on its way to the eye.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Beam {
    /// Parallel or diverging.
    #[default]
    Normal,
    /// Crossing between the scope and the eye.
    Reversed,
}

/// How the reflex moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Motion {
    /// With the streak.
    With,
    /// Against the streak.
    Against,
    /// The whole pupil lit at once.
    Neutral,
    /// It could not be told.
    CannotTell,
}

/// How fast the reflex ran.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Speed {
    /// Slower than the streak, or hardly faster: far from neutral.
    Slow,
    /// Much faster than the streak: near neutral.
    Fast,
}

/// How bright the reflex was. Written down, never reckoned with: it tells as much of the media as of the distance from
/// neutral.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Brightness {
    /// Bright.
    Bright,
    /// Dim.
    Dim,
}

/// One sweep.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "SweepFields")]
pub struct Sweep {
    /// The meridian that it tests: 90 degrees from the streak as it stands.
    pub meridian: Meridian,
    /// The lens in the frame in that meridian, **without** the working lens.
    pub lens: f64,
    /// Distance and working lens while it was made.
    pub setup: Setup,
    /// The beam.
    pub beam: Beam,
    /// The motion.
    pub seen: Motion,
    /// The speed, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub speed: Option<Speed>,
    /// The brightness, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub brightness: Option<Brightness>,
}

impl Sweep {
    /// A sweep with a normal beam of which only the motion was said.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a lens that no meridian needs.
    pub fn new(
        meridian: Meridian,
        lens: f64,
        setup: Setup,
        seen: Motion,
    ) -> Result<Self, OpticsError> {
        Ok(Self {
            meridian,
            lens: limits::meridian_power(lens)?,
            setup,
            beam: Beam::Normal,
            seen,
            speed: None,
            brightness: None,
        })
    }

    /// The power, in this meridian, of the eye that this sweep would be neutral for: everything in the light's path less the
    /// distance, in dioptres.
    pub fn neutral_for(&self) -> f64 {
        self.setup.refraction(self.lens)
    }
}

#[derive(Deserialize)]
struct SweepFields {
    meridian: Meridian,
    lens: f64,
    setup: Setup,
    beam: Beam,
    seen: Motion,
    #[serde(default)]
    speed: Option<Speed>,
    #[serde(default)]
    brightness: Option<Brightness>,
}

impl TryFrom<SweepFields> for Sweep {
    type Error = OpticsError;
    fn try_from(fields: SweepFields) -> Result<Self, OpticsError> {
        Ok(Self {
            meridian: fields.meridian,
            lens: finite(say::lens_of_sweep(), fields.lens)?,
            setup: fields.setup,
            beam: fields.beam,
            seen: fields.seen,
            speed: fields.speed,
            brightness: fields.brightness,
        })
    }
}
