//! The reflex across the whole pupil, with the streak at any angle, and what a practised eye would call it.
//!
//! The streak is a line across the meridian that it tests. With n along that meridian and E as a matrix, the point p of
//! the pupil is lit where
//!
//! ```text
//! |n · (E p) − x (1/w − 1/s)| ≤ h
//! ```
//!
//! which along a principal meridian is what [`super::Run`] says. Off one, E n points elsewhere than n: the band stands
//! across E n and not across n, so it is skewed against the streak, and it runs at the length of E n. Derived from the
//! same rays; that the reflex is skewed where the streak stands off the axis is in every text on streak retinoscopy.
//! Chosen, not derived: how much light the media let through and how they soften the band, and the words for both.
//!
//! ```
//! use optics::retinoscopy::reflex::{Bench, Light};
//! use optics::retinoscopy::{Media, WorkingDistance};
//! use optics::{Meridian, SphereCyl};
//!
//! let bench = Bench {
//!     eye: SphereCyl::parse("0.00 / −2.00 × 180")?,
//!     in_path: SphereCyl::sphere(0.0),
//!     distance: WorkingDistance::from_cm(50.0)?,
//!     light: Light::PARALLEL,
//!     tests: Meridian::HORIZONTAL,
//!     pupil_mm: 4.0,
//!     media: Media::Clear,
//! };
//! assert_eq!(bench.look()?.sentence(), "with, slow, narrow, bright");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use super::super::bracket::constants::FAST;
use super::super::bracket::seeing::Seeing;
use super::super::{Beam, Brightness, Circumstances, Media, Motion, Speed, WorkingDistance};
use super::{Light, Lit, Pace, Run, called, run};
use crate::exact;
use crate::format::plain;
use crate::{Meridian, OpticsError, PowerMatrix, PowerVector, SphereCyl, limits};
use ::words::optics::retinoscopy as say;

/// So few dioptres are arithmetic dust, and point nowhere.
const DUST: f64 = 1e-9;

/// Skewed by so many degrees the reflex is seen to stand off the streak. Own choice.
const SKEW_SEEN: f64 = 3.0;

/// A reflex that fills this share of the pupil is called wide. Own choice.
const WIDE: f64 = 0.5;

/// An eye, and how it is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bench {
    /// The refraction of the eye at the trial lens.
    pub eye: SphereCyl,
    /// Everything in the light's path.
    pub in_path: SphereCyl,
    /// From the retinoscope to the trial lens.
    pub distance: WorkingDistance,
    /// The beam.
    pub light: Light,
    /// The meridian that the streak tests: 90 degrees from where it stands.
    pub tests: Meridian,
    /// The width of the pupil, 0.5 to 10 mm.
    pub pupil_mm: f64,
    /// How clear the way of the light is.
    pub media: Media,
}

/// What is seen in the pupil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    along: Run,
    across: Run,
    tests: Meridian,
    skew: f64,
    pupil_mm: f64,
    media: Media,
    motion: Motion,
}

impl Light {
    /// The light of a beam as it is called: parallel, or crossing half way between retinoscope and eye. Own choice: it
    /// runs as fast one way as the other.
    pub fn of(beam: Beam, distance: WorkingDistance) -> Self {
        match beam {
            Beam::Normal => Self::PARALLEL,
            Beam::Reversed => Self {
                vergence: 2.0 * distance.dioptres(),
            },
        }
    }
}

impl Bench {
    /// What is seen.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for an eye that nobody has, or the pupil; [`OpticsError::NotANumber`] for an endless
    /// lens.
    pub fn look(&self) -> Result<Look, OpticsError> {
        let pupil_mm = limits::pupil_mm(self.pupil_mm)?;
        let degrees = self.tests.degrees();
        let [eye, lens] = [self.eye, self.in_path].map(|each| each.power_along(degrees));
        let along = run(self.light, self.distance, eye, lens)?;
        let (from_neutral, skew) = self.band(along.from_neutral);
        Ok(Look {
            along,
            across: Run {
                from_neutral,
                sweep: along.sweep,
            },
            tests: self.tests,
            skew,
            pupil_mm,
            media: self.media,
            motion: self.called(along)?,
        })
    }

    /// The length of E n, below 0 where it points against the sweep, and by how many degrees it is turned from n.
    fn band(&self, along: f64) -> (f64, f64) {
        let needed = PowerVector {
            m: self.distance.dioptres(),
            ..PowerVector::default()
        };
        let matrix = PowerMatrix::from(self.eye.vector() - self.in_path.vector() + needed);
        let angle = self.tests.degrees().to_radians();
        let (sine, cosine) = exact::sin_cos(angle);
        let [x, y] = matrix.times([cosine, sine]);
        let length = exact::hypot(x, y).copysign(along);
        if length.abs() < DUST {
            return (0.0, 0.0);
        }
        let points = exact::atan2(y / length, x / length).to_degrees();
        let turned = points - self.tests.degrees();
        (length, (turned + 90.0).rem_euclid(180.0) - 90.0)
    }

    /// What a practised eye would most likely call it: within the zone that looks neutral it is neutral.
    fn called(&self, along: Run) -> Result<Motion, OpticsError> {
        let Some(beam) = self.light.beam(self.distance) else {
            return Ok(Motion::CannotTell);
        };
        let circumstances = Circumstances::new(Some(self.pupil_mm), Some(self.media), None)?;
        let shown = match beam {
            Beam::Normal => along.from_neutral,
            Beam::Reversed => -along.from_neutral,
        };
        let [with, neutral, against] = Seeing::of(&circumstances, self.distance).right(shown);
        Ok(if neutral >= with.max(against) {
            Motion::Neutral
        } else if with > against {
            Motion::With
        } else {
            Motion::Against
        })
    }
}

impl Look {
    /// How the reflex runs along the meridian that the streak tests.
    pub const fn along(self) -> Run {
        self.along
    }

    /// Where the band of light stands, in degrees like an axis.
    pub fn stands_at(self) -> f64 {
        self.tests.as_axis().turned(90.0 + self.skew).degrees()
    }

    /// By how many degrees the band stands off the streak, −90 to 90; above 0 it is turned anticlockwise.
    pub const fn skew(self) -> f64 {
        self.skew
    }

    /// What of the pupil is lit while the streak stands so many millimetres from its middle, in pupil radii across the
    /// band, counted the way that the streak is.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for the streak.
    pub fn lit(self, streak_mm: f64) -> Result<Lit, OpticsError> {
        self.across.lit(streak_mm, self.pupil_mm)
    }

    /// How much of the pupil the band is as wide as, above 0 and up to 1.
    ///
    /// # Errors
    /// None beyond those of [`Bench::look`], which has refused such a pupil.
    pub fn width(self) -> Result<f64, OpticsError> {
        self.across.width(self.pupil_mm)
    }

    /// How bright the band is to be drawn, above 0 and up to 1.
    pub fn brightness(self) -> f64 {
        self.along.brightness() * let_through(self.media)
    }

    /// How far beyond its edges the band fades, in pupil radii.
    pub const fn softness(self) -> f64 {
        match self.media {
            Media::Clear => 0.05,
            Media::Slight => 0.12,
            Media::Moderate => 0.22,
            Media::Dense => 0.35,
        }
    }

    /// What a practised eye would most likely call it.
    pub const fn motion(self) -> Motion {
        self.motion
    }

    /// Whether the reflex would be called fast; nothing where it does not run.
    pub fn speed(self) -> Option<Speed> {
        match self.along.pace() {
            Pace::Times(times) if times.abs() >= FAST => Some(Speed::Fast),
            Pace::Times(_) => Some(Speed::Slow),
            Pace::Endless | Pace::Still => None,
        }
    }

    /// What is seen, in the trade's words: "with, slow, narrow, dim".
    pub fn sentence(self) -> String {
        let motion = match self.motion {
            Motion::Neutral => {
                return say::seen_neutral(&self.light());
            }
            Motion::CannotTell => {
                return say::seen_no_motion().to_owned();
            }
            Motion::With => say::seen_with(),
            Motion::Against => say::seen_against(),
        };
        let speed = match self.speed() {
            Some(Speed::Slow) => say::seen_slow(),
            Some(Speed::Fast) | None => say::seen_fast(),
        };
        let width = if self.width().is_ok_and(|width| width < WIDE) {
            say::seen_narrow()
        } else {
            say::seen_wide()
        };
        let skewed = if self.skew.abs() < SKEW_SEEN {
            String::new()
        } else {
            say::seen_skewed(
                &plain(self.stands_at().round(), 0),
                &plain(self.tests.streak_degrees(), 0),
            )
        };
        format!("{motion}, {speed}, {width}, {}{skewed}", self.light())
    }

    fn light(self) -> &'static str {
        match called(self.brightness()) {
            Brightness::Bright => say::seen_bright(),
            Brightness::Dim => say::seen_dim(),
        }
    }
}

/// How much of the light the media let through. Own choice.
const fn let_through(media: Media) -> f64 {
    match media {
        Media::Clear => 1.0,
        Media::Slight => 0.75,
        Media::Moderate => 0.5,
        Media::Dense => 0.3,
    }
}

/// An eye to practise on, from three draws of 0 up to 1: sphere −6.00 to +6.00, in one of four none and else up to −2.75
/// of cylinder, axis by fives. Own choice.
pub fn another_eye([sphere, cylinder, axis]: [f64; 3]) -> SphereCyl {
    let quarters =
        |draw: f64, most: f64| (draw.clamp(0.0, 1.0) * most).floor().min(most - 1.0) / 4.0;
    let power = (quarters(cylinder, 15.0) - 0.75).max(0.0);
    let fives = (axis.clamp(0.0, 1.0) * 36.0).floor() * 5.0;
    SphereCyl::derived(quarters(sphere, 49.0) - 6.0, -power, fives)
}
