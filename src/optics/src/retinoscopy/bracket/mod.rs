//! The bracket: what the sweeps of one meridian say of its power.
//!
//! Each sweep is an observation. From the sweeps of one meridian comes a probability for every power, by Bayes' rule on a
//! grid in closed form; from that the most likely power, an interval that holds the true one nine times in ten, the next lens
//! that would tell most, whether the sweeps contradict one another, and when more sweeping is not worth it. How likely each
//! call is, and how that depends on pupil, media and reflex, is a model: its every figure is in [`constants`] with its source.
//! Powers are refractions in dioptres along the meridian, the distance already taken off; −26 to +26 are possible.
//!
//! ```
//! use optics::retinoscopy::bracket::{Advice, Bracket};
//! use optics::retinoscopy::{Circumstances, Motion, Setup, Sweep, WorkingDistance};
//! use optics::{Meridian, Step};
//!
//! let setup = Setup::new(WorkingDistance::from_cm(67.0)?, None);
//! let vertical = Meridian::new(90.0)?;
//! let seen = [(1.50, Motion::With), (4.00, Motion::Against), (2.75, Motion::With), (3.25, Motion::Neutral)];
//! let mut sweeps = Vec::new();
//! for (lens, motion) in seen {
//!     sweeps.push(Sweep::new(vertical, lens, setup, motion)?);
//! }
//!
//! let bracket = Bracket::new(vertical, &sweeps, None, &Circumstances::default());
//! let interval = bracket.interval();
//! assert!((bracket.likeliest() - 1.75).abs() < 0.15);
//! assert!(interval.low < 1.75 && 1.75 < interval.high);
//! assert!(bracket.contradiction(&setup, Step::Quarter).is_none());
//! # Ok::<(), optics::OpticsError>(())
//! ```

pub mod constants;
mod doubt;
mod next;
mod powers;
pub(super) mod seeing;
mod start;

pub use doubt::Contradiction;
pub use next::Next;
pub use start::{Source, Start};

use super::{Beam, Circumstances, Measured, Motion, Setup, Sweep};
use crate::{Meridian, MeridianPower, OpticsError, Step};
use constants as k;
use powers::Powers;
use seeing::Seeing;
use std::sync::Arc;

/// Two ends between which the true power lies nine times in ten, in dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// The least plus.
    pub low: f64,
    /// The most plus.
    pub high: f64,
}

impl Interval {
    /// How wide it is, in dioptres.
    pub fn width(&self) -> f64 {
        self.high - self.low
    }
}

/// What to do after the sweeps so far.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Advice {
    /// Sweep on, with this lens.
    Sweep(Next),
    /// The interval is as narrow as trial lenses can tell.
    Enough,
    /// The interval is still wide, and another sweep would hardly narrow it.
    NotWorthMore,
}

/// The sweeps of one meridian and what they say.
#[derive(Debug, Clone, PartialEq)]
pub struct Bracket {
    meridian: Meridian,
    sweeps: Vec<Sweep>,
    expected: Option<f64>,
    circumstances: Circumstances,
    powers: Arc<Powers>,
    /// What was thought before each sweep, so that one is taken back as quickly as it is made.
    before: Vec<Arc<Powers>>,
}

impl Bracket {
    /// The bracket of a meridian, from those of the sweeps that test it, in the order in which they were made.
    pub fn new(
        meridian: Meridian,
        sweeps: &[Sweep],
        start: Option<&Start>,
        circumstances: &Circumstances,
    ) -> Self {
        let expected = start.map(|start| start.along(meridian));
        let mut bracket = Self {
            meridian,
            sweeps: Vec::new(),
            powers: Arc::new(Powers::before(expected)),
            before: Vec::new(),
            expected: expected.map(|expected| expected.power),
            circumstances: *circumstances,
        };
        for sweep in sweeps.iter().filter(|sweep| sweep.meridian == meridian) {
            bracket.add(*sweep);
        }
        bracket
    }

    /// Takes one more sweep of this meridian in; a sweep of another is none of its business.
    pub fn add(&mut self, sweep: Sweep) {
        if sweep.meridian != self.meridian {
            return;
        }
        let seeing = Seeing::of(&self.circumstances, sweep.setup.distance);
        let zones = k::ZONE_FACTORS.map(|(factor, _)| seeing.zoned(factor));
        let neutral_for = sweep.neutral_for();
        let mut powers = Powers::clone(&self.powers);
        powers.observe(|power, zone| zones[zone].likelihood(&sweep, power - neutral_for));
        self.before
            .push(std::mem::replace(&mut self.powers, Arc::new(powers)));
        self.sweeps.push(sweep);
    }

    /// The same after only the first so many of its sweeps.
    pub(super) fn after_first(&self, count: usize) -> Self {
        let mut bracket = self.clone();
        if let Some(powers) = self.before.get(count) {
            bracket.powers = Arc::clone(powers);
            bracket.before.truncate(count);
            bracket.sweeps.truncate(count);
        }
        bracket
    }

    /// The meridian.
    pub const fn meridian(&self) -> Meridian {
        self.meridian
    }

    /// Its sweeps, in the order in which they were made.
    pub fn sweeps(&self) -> &[Sweep] {
        &self.sweeps
    }

    /// The most likely power.
    pub fn likeliest(&self) -> f64 {
        self.powers.likeliest()
    }

    /// The interval that holds the true power nine times in ten: a twentieth lies beyond either end.
    pub fn interval(&self) -> Interval {
        Interval {
            low: self.powers.quantile(0.05),
            high: self.powers.quantile(0.95),
        }
    }

    /// The interval as a standard deviation in dioptres: what a normal curve with the same ends would have.
    pub fn deviation(&self) -> f64 {
        // 90 % of a normal curve lie within 1.645 standard deviations of its middle.
        self.interval().width() / (2.0 * 1.645)
    }

    /// The most likely power and how surely it is known, for fitting a lens to several meridians.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] where no lens reaches the power.
    pub fn measured(&self) -> Result<Measured, OpticsError> {
        let found = MeridianPower {
            meridian: self.meridian,
            power: self.likeliest(),
        };
        Measured::of(found, self.deviation())
    }

    /// Whether the interval is as narrow as trial lenses can tell, and hardly anything lies far beyond it.
    pub(super) fn is_told(&self) -> bool {
        let interval = self.interval();
        let beyond = || 1.0 - self.powers.between(interval.low - 0.5, interval.high + 0.5);
        interval.width() <= k::NARROW && beyond() <= k::FAR_OFF
    }

    /// Whether further sweeps may still be worth making: it is not told yet, and nobody's patience is at its end.
    pub(super) fn is_open(&self) -> bool {
        !self.is_told() && self.sweeps.len() < k::PATIENCE
    }

    /// What to do next with the lens `in_place` now, under a set-up, with lenses on a step.
    pub fn advice(&self, setup: &Setup, step: Step, in_place: f64) -> Advice {
        if self.is_told() {
            return Advice::Enough;
        }
        let next = self.next(setup, step, in_place);
        if self.sweeps.len() >= k::PATIENCE || next.bits < k::WORTH_BITS {
            return Advice::NotWorthMore;
        }
        Advice::Sweep(next)
    }

    /// The lens whose sweep would tell most.
    pub fn next(&self, setup: &Setup, step: Step, in_place: f64) -> Next {
        let seeing = Seeing::of(&self.circumstances, setup.distance);
        next::next(&self.powers, seeing, setup, step, in_place)
    }

    /// Two sweeps that cannot both be right, if the sweeps contradict one another.
    pub fn contradiction(&self, setup: &Setup, step: Step) -> Option<Contradiction> {
        if self.powers.all_right() >= k::ALL_RIGHT {
            return None;
        }
        let in_place = self.sweeps.last()?.lens;
        let settle = || self.next(setup, step, in_place).lens;
        let seeing = |sweep: &Sweep| Seeing::of(&self.circumstances, sweep.setup.distance);
        doubt::contradiction(&self.sweeps, seeing, settle)
    }

    /// Whether the last sweep is worth repeating with the beam reversed: it was neutral or could not be told with plenty of
    /// plus in place, where a fast, dim, wide against passes for neutral (common practice, no source), and the other sweeps
    /// leave that possible.
    pub fn worth_reversing(&self) -> bool {
        self.sweeps.last().is_some_and(|last| {
            let unsure = matches!(last.seen, Motion::Neutral | Motion::CannotTell);
            let in_place = last.neutral_for();
            let plenty = in_place - self.expected.unwrap_or(0.0) >= k::PLENTY_OF_PLUS;
            let passing = || {
                self.powers
                    .between(f64::NEG_INFINITY, in_place - k::PASSES_FROM)
            };
            last.beam == Beam::Normal && unsure && plenty && passing() >= k::WORTH_REVERSING
        })
    }
}
