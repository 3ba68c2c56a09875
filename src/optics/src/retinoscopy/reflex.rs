//! How the reflex runs while the streak is swept, and how it looks in the pupil meanwhile.
//!
//! ```text
//! E = K + 1/w − F        speed = (1/w − 1/s) / E
//! ```
//!
//! K is the refraction along the meridian and F everything in the light's path, both in dioptres at the trial lens; w
//! is how far the retinoscope is from it and s how far the point that the beam seems to come from, in metres: endless
//! for a parallel beam, negative for one that goes toward a point behind the eye. The speed
//! is that of the reflex in the pupil relative to the patch of light on the face: above 0 *with*, below *against*,
//! endless at neutrality. It changes its sign where the beam crosses between retinoscope and eye (0 < s < w), not where
//! it would cross behind the eye (s < 0), and a beam that crosses at the retinoscope (s = w) shows no motion. The
//! formula is derived for thin lenses near the axis and checked in `tests/published` against rays through matrices;
//! Bennett and Rabbetts, Clinical Visual Optics, have the same shape (from memory). Refractions of ±55 D, any point but
//! the eye itself.
//!
//! **For drawing.** Derived, by the same rays: while the streak stands x mm from the pupil's middle, the point y mm
//! from it is lit where
//!
//! ```text
//! |y E − x (1/w − 1/s)| ≤ h
//! ```
//!
//! so the middle of the band is at x × speed, and its half width is h / |E|, cut off by the pupil. Chosen, not derived:
//! h ([`STREAK`]) is the same for every beam and eye, as though the streak were always sharp on the retina. Really the
//! retina has it blurred, over half the pupil times |E − (1/w − 1/s)| more: the middle stays where it is, but the band
//! is wider and its edges softer than drawn, most of all in an against. Chosen too are how wide the patch is on the face
//! ([`PATCH_HALF_MM`]) and how bright the band is ([`Run::brightness`]), for which no figures were found in print.
//!
//! ```
//! use optics::retinoscopy::reflex::{Light, Lit, Pace, run};
//! use optics::retinoscopy::{Motion, WorkingDistance};
//!
//! let distance = WorkingDistance::from_cm(50.0)?;
//! // An eye of −1.00 without a lens is 1.00 short of neutral at 50 cm: the reflex runs twice as fast as a parallel streak.
//! let runs = run(Light::PARALLEL, distance, -1.0, 0.0)?;
//! assert_eq!((runs.pace(), runs.motion()), (Pace::Times(2.0), Motion::With));
//! assert_eq!(runs.lit(0.5, 4.0)?, Lit::Band { from: 0.0, to: 1.0 });
//! // With +1.00 in place the whole pupil is lit at once.
//! let neutral = run(Light::PARALLEL, distance, -1.0, 1.0)?;
//! assert_eq!((neutral.pace(), neutral.lit(0.0, 4.0)?), (Pace::Endless, Lit::Whole));
//! # Ok::<(), optics::OpticsError>(())
//! ```

mod in_pupil;

use ::words::optics::retinoscopy as say;
pub use in_pupil::{Bench, Look, another_eye};

use super::{Beam, Brightness, Motion, WorkingDistance};
use crate::sphere_cyl::finite;
use crate::{OpticsError, limits, vergence};

/// Half the streak as the retina has it, in millimetres times dioptres: 1 D from neutral the band is 2 mm wide. A choice.
pub const STREAK: f64 = 1.0;

/// Half the patch of light on the face, across the streak, in millimetres: nothing is lit once the patch has left the
/// pupil. A choice.
pub const PATCH_HALF_MM: f64 = 4.0;

/// So many dioptres from neutral the reflex is half as bright as at neutral. A choice.
const HALF_AS_BRIGHT: f64 = 3.0;

/// How bright an against is beside a with at the same distance from neutral. It looks duller, say teaching pages; the
/// figure is a choice.
const AGAINST: f64 = 0.7;

/// The point that the beam seems to come from, or goes to, counted from the trial lens.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Light {
    /// 1/s in dioptres.
    vergence: f64,
}

impl Light {
    /// A parallel beam.
    pub const PARALLEL: Self = Self { vergence: 0.0 };

    /// A beam from a point so many centimetres before the eye, through which it goes where that is nearer than the
    /// retinoscope; negative for a point behind the eye that it goes toward.
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for an endless distance, and for a point at the eye itself.
    pub fn at_cm(cm: f64) -> Result<Self, OpticsError> {
        let vergence = vergence::of_distance(cm / 100.0)?;
        Ok(Self { vergence })
    }

    /// What the beam is called at a working distance; nothing where it crosses at the retinoscope.
    pub fn beam(self, distance: WorkingDistance) -> Option<Beam> {
        match self.sweep(distance) {
            0.0 => None,
            sweep if sweep > 0.0 => Some(Beam::Normal),
            _ => Some(Beam::Reversed),
        }
    }

    /// `1/w − 1/s`.
    fn sweep(self, distance: WorkingDistance) -> f64 {
        distance.dioptres() - self.vergence
    }
}

/// How fast the reflex is beside the patch of light.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pace {
    /// So many times as fast; below 0 the other way.
    Times(f64),
    /// The whole pupil is lit or dark at once: neutral.
    Endless,
    /// Not at all, because the beam crosses at the retinoscope.
    Still,
}

/// What of the pupil is lit, along the meridian of the sweep. Pupil radii from its middle, −1 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lit {
    /// Nothing.
    Dark,
    /// All of it.
    Whole,
    /// What lies between two edges.
    Band {
        /// The lower edge.
        from: f64,
        /// The higher edge.
        to: f64,
    },
}

/// How the reflex runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Run {
    from_neutral: f64,
    sweep: f64,
}

/// How the reflex runs in an eye of this refraction along the meridian, with this much in the light's path, in dioptres.
///
/// # Errors
/// [`OpticsError::OutOfRange`] for a refraction that no meridian has; [`OpticsError::NotANumber`] for an endless lens.
pub fn run(
    light: Light,
    distance: WorkingDistance,
    refraction: f64,
    in_path: f64,
) -> Result<Run, OpticsError> {
    let needed = limits::meridian_power(refraction)? + distance.dioptres();
    Ok(Run {
        from_neutral: finite(say::lens_in_path(), needed - in_path)?,
        sweep: light.sweep(distance),
    })
}

/// The one formula of the reflex's speed: what the beam sweeps with, over what is needed to be neutral, both in dioptres.
pub(super) fn speed(sweep: f64, from_neutral: f64) -> f64 {
    sweep / from_neutral
}

impl Run {
    /// How much more plus it takes to be neutral, in dioptres: E.
    pub const fn from_neutral(self) -> f64 {
        self.from_neutral
    }

    /// How fast the reflex is.
    pub fn pace(self) -> Pace {
        let times = speed(self.sweep, self.from_neutral);
        if self.sweep == 0.0 {
            Pace::Still
        } else if times.is_finite() {
            Pace::Times(times)
        } else {
            Pace::Endless
        }
    }

    /// What there is to be called; where nothing moves, nothing can be told.
    pub fn motion(self) -> Motion {
        match self.pace() {
            Pace::Times(times) if times > 0.0 => Motion::With,
            Pace::Times(_) => Motion::Against,
            Pace::Endless => Motion::Neutral,
            Pace::Still => Motion::CannotTell,
        }
    }

    /// Where the middle of the reflex is, in millimetres from the pupil's middle and maybe beyond its edge, while the
    /// streak stands so many millimetres from it; nothing at neutrality, where the reflex is everywhere or nowhere.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for the streak.
    pub fn middle_mm(self, streak_mm: f64) -> Result<Option<f64>, OpticsError> {
        let streak = limits::streak_mm(streak_mm)?;
        Ok(match self.pace() {
            Pace::Times(times) => Some(streak * times).filter(|middle| middle.is_finite()),
            Pace::Still => Some(0.0),
            Pace::Endless => None,
        })
    }

    /// How much of the pupil the reflex is as wide as, above 0 and up to 1.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a pupil in millimetres.
    pub fn width(self, pupil_mm: f64) -> Result<f64, OpticsError> {
        let pupil = limits::pupil_mm(pupil_mm)?;
        Ok((2.0 * STREAK / self.from_neutral.abs() / pupil).min(1.0))
    }

    /// What of a pupil of so many millimetres is lit while the streak stands so many millimetres from its middle.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for the streak or the pupil.
    pub fn lit(self, streak_mm: f64, pupil_mm: f64) -> Result<Lit, OpticsError> {
        let streak = limits::streak_mm(streak_mm)?;
        let radius = limits::pupil_mm(pupil_mm)? / 2.0;
        if streak.abs() > radius + PATCH_HALF_MM {
            return Ok(Lit::Dark);
        }
        let (moved, slope) = (streak * self.sweep, self.from_neutral * radius);
        let edges = [(moved - STREAK) / slope, (moved + STREAK) / slope];
        Ok(if edges.iter().all(|edge| edge.is_finite()) {
            band(edges[0].min(edges[1]), edges[0].max(edges[1]))
        } else if moved.abs() <= STREAK {
            Lit::Whole
        } else {
            Lit::Dark
        })
    }

    /// How bright the reflex is to be drawn, above 0, and 1 at neutral. Near neutrality it is bright and far from it
    /// dull, an against duller than a with (teaching pages, in words only); every figure of this is a choice.
    pub fn brightness(self) -> f64 {
        let near = HALF_AS_BRIGHT / (HALF_AS_BRIGHT + self.from_neutral.abs());
        match self.motion() {
            Motion::Against => near * AGAINST,
            _ => near,
        }
    }

    /// The same in the words that are written down.
    pub fn called(self) -> Brightness {
        called(self.brightness())
    }
}

fn called(brightness: f64) -> Brightness {
    if brightness < 0.5 {
        Brightness::Dim
    } else {
        Brightness::Bright
    }
}

/// What lies between two edges, cut off by the pupil.
fn band(from: f64, to: f64) -> Lit {
    if to <= -1.0 || from >= 1.0 {
        Lit::Dark
    } else if from <= -1.0 && to >= 1.0 {
        Lit::Whole
    } else {
        Lit::Band {
            from: from.max(-1.0),
            to: to.min(1.0),
        }
    }
}
