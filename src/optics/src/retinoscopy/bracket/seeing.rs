//! How likely each motion is to be called, for an eye so far from neutral.
//!
//! ```text
//! with     1 / (1 + exp(−(E − h)/s))       against  1 / (1 + exp(−(−E − h)/s))       neutral  the rest
//! ```
//!
//! E is how much more plus is needed in dioptres, h half the zone that looks neutral, s the spread of judgements as the scale
//! of a logistic curve. A large against passes for neutral now and then; a share of calls is simply wrong. With the beam
//! reversed E changes its sign.

use super::constants as k;
use crate::exact;
use crate::retinoscopy::{
    Beam, Circumstances, Motion, Speed, Sweep, WorkingDistance, off_sight, reflex,
};

/// Where a logistic curve has as good as arrived, in its scale.
const ARRIVED: f64 = 30.0;
/// The scale of a logistic curve of standard deviation 1.
const LOGISTIC: f64 = 0.551_328_895;

/// Both ends of what a call is: right, or right nine times in ten.
#[derive(Clone, Copy)]
pub struct Likelihood {
    /// The chance of the call, had no call ever been wrong.
    pub right: f64,
    /// The chance of the call.
    pub called: f64,
}

/// How well one eye shows itself at one distance.
#[derive(Clone, Copy)]
pub struct Seeing {
    half_zone: f64,
    scale: f64,
    miscall: f64,
    passes: f64,
    distance: f64,
}

impl Seeing {
    /// From the eye's circumstances at a working distance.
    pub fn of(circumstances: &Circumstances, distance: WorkingDistance) -> Self {
        let effects = [
            circumstances.media.map(k::of_media),
            circumstances.reflex.map(k::of_reflex),
        ];
        let said = || effects.iter().flatten();
        let spread = said().fold(k::SPREAD, |spread, effect| spread * effect.spread);
        let spread = exact::hypot(spread, beside(circumstances));
        let pupil = circumstances.pupil_mm().unwrap_or(k::ZONE_PUPIL_MM);
        let [least, most] = k::HALF_ZONE_ENDS;
        let zone =
            k::HALF_ZONE * (k::ZONE_PUPIL_MM / pupil) * (distance.dioptres() / k::ZONE_DISTANCE_D);
        Self {
            half_zone: zone.clamp(least, most),
            scale: spread.min(k::SPREAD_MOST) * LOGISTIC,
            miscall: said().fold(k::MISCALL, |most, effect| most.max(effect.miscall)),
            passes: said().fold(k::PASSES, |most, effect| most.max(effect.passes)),
            distance: distance.dioptres(),
        }
    }

    /// The same eye with a zone so many times as wide.
    pub fn zoned(self, factor: f64) -> Self {
        Self {
            half_zone: self.half_zone * factor,
            ..self
        }
    }

    /// The chances of with, neutral and against at `error` dioptres from neutral as the beam shows it, no call being wrong.
    pub fn right(&self, error: f64) -> [f64; 3] {
        let with = rising((error - self.half_zone) / self.scale);
        let against = rising((-error - self.half_zone) / self.scale);
        let passing = self.passes * rising((-error - k::PASSES_FROM) / k::PASSES_OVER) * against;
        let neutral = (1.0 - with - against).max(0.0) + passing;
        [with, neutral, against - passing]
    }

    /// The errors beyond which the chances change no more, least and greatest.
    pub fn plain_beyond(&self) -> [f64; 2] {
        let told = self.half_zone + ARRIVED * self.scale;
        let passed = k::PASSES_FROM + ARRIVED * k::PASSES_OVER;
        [-told.max(passed), told]
    }

    /// The same chances with the share of wrong calls in them: each goes to one of the other two.
    pub fn called(&self, error: f64) -> [f64; 3] {
        self.right(error).map(|right| self.mixed(right))
    }

    fn mixed(&self, right: f64) -> f64 {
        (1.0 - self.miscall) * right + self.miscall * (1.0 - right) / 2.0
    }

    /// How likely this sweep's calls are where the eye needs `error` dioptres more plus.
    pub fn likelihood(&self, sweep: &Sweep, error: f64) -> Likelihood {
        let shown = match sweep.beam {
            Beam::Normal => error,
            Beam::Reversed => -error,
        };
        let speed = sweep.speed.map_or(1.0, |speed| self.speed(speed, error));
        let Some(at) = index(sweep.seen) else {
            return Likelihood {
                right: speed,
                called: speed,
            };
        };
        let right = self.right(shown)[at];
        Likelihood {
            right: (1.0 - self.miscall) * right * speed,
            called: self.mixed(right) * speed,
        }
    }

    /// How likely it is to be called slow or fast, by the speed of [`reflex`] with a parallel beam.
    fn speed(&self, speed: Speed, error: f64) -> f64 {
        let times = reflex::speed(self.distance, error.abs().max(f64::EPSILON));
        let fast = rising(exact::ln(times / k::FAST) / (k::FAST_SCATTER * LOGISTIC));
        let fast = k::SPEED_MISCALL + (1.0 - 2.0 * k::SPEED_MISCALL) * fast;
        match speed {
            Speed::Fast => fast,
            Speed::Slow => 1.0 - fast,
        }
    }
}

/// How far a reading from beside the line of sight is off, in dioptres. It counts as so much more scatter and corrects
/// nothing: own choice, because the figures are the mean of eight eyes.
fn beside(circumstances: &Circumstances) -> f64 {
    let shift = circumstances
        .off_sight()
        .and_then(|degrees| off_sight::shift(degrees).ok());
    shift.map_or(0.0, |shift| shift.mean_sphere)
}

/// Where a motion stands among the three that say something.
fn index(motion: Motion) -> Option<usize> {
    match motion {
        Motion::With => Some(0),
        Motion::Neutral => Some(1),
        Motion::Against => Some(2),
        Motion::CannotTell => None,
    }
}

/// A logistic curve from 0 to 1. Where it has as good as arrived nothing is left to reckon, and most of the grid lies there.
fn rising(z: f64) -> f64 {
    if z > ARRIVED {
        1.0
    } else if z < -ARRIVED {
        0.0
    } else {
        1.0 / (1.0 + exact::exp(-z))
    }
}
