//! What all the sweeps of one eye say: the brackets of its meridians together.
//!
//! ```
//! use optics::retinoscopy::bracket::{Source, Start};
//! use optics::retinoscopy::{Held, Motion, Setup, Sweep, Sweeping, WorkingDistance};
//! use optics::SphereCyl;
//!
//! let lens = SphereCyl::parse("+3.00 / −1.50 × 90").unwrap();
//! let mut sweeping = Sweeping { start: Some(Start { lens, from: Source::LastTime }), ..Sweeping::default() };
//! let setup = Setup::new(WorkingDistance::from_cm(67.0)?, None);
//! let [lying, standing] = sweeping.cross();
//! for (meridian, lens, seen) in [
//!     (lying, 3.00, Motion::Neutral),
//!     (standing, 4.25, Motion::With),
//!     (standing, 4.75, Motion::Against),
//!     (lying, 2.75, Motion::With),
//!     (lying, 3.25, Motion::Against),
//!     (standing, 4.50, Motion::Neutral),
//!     (standing, 4.25, Motion::With),
//! ] {
//!     sweeping.sweeps.push(Sweep::new(meridian, lens, setup, seen)?);
//! }
//!
//! let bracket = sweeping.bracket();
//! let held = Held { setup, lens: 4.50 };
//! assert_eq!(bracket.advice(&held).sentence(), "sweep 180 with +3.00 again");
//! assert_eq!(bracket.neutral(&held).map(|found| found.lens().to_string()).as_deref(), Some("+4.50 / −1.50 × 90"));
//! # Ok::<(), optics::OpticsError>(())
//! ```

use super::bracket::{Advice, Bracket, Contradiction, constants as k};
use super::{Fit, FitError, Measured, Neutral, Setup, Sweeping, meridian_fit};
use crate::format::{plain, power};
use crate::{Meridian, MeridianPower, OpticsError};
use ::words::optics::retinoscopy as say;

/// What the examiner has in hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Distance, working lens and trial lenses.
    pub setup: Setup,
    /// The lens in place, without the working lens, in dioptres.
    pub lens: f64,
}

/// What to do next about an eye.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum EyeAdvice {
    /// Sweep this meridian with this lens.
    Sweep {
        /// The meridian to test.
        meridian: Meridian,
        /// The lens to put in place, without the working lens, in dioptres.
        lens: f64,
        /// Whether it was swept so before.
        again: bool,
    },
    /// Every meridian is as narrow as trial lenses can tell.
    Enough,
    /// A meridian is still wide, and another sweep would hardly narrow it.
    NotWorthMore,
}

impl EyeAdvice {
    /// The advice in words: "sweep 180 with +3.25", "sweep 180 with +3.25 again".
    pub fn sentence(&self) -> String {
        match self {
            Self::Sweep {
                meridian,
                lens,
                again,
            } => {
                let again = if *again { say::again() } else { "" };
                let degrees = plain(meridian.degrees(), 1);
                say::sweep_with(&degrees, &power(*lens), &again)
            }
            Self::Enough => say::enough().to_owned(),
            Self::NotWorthMore => say::not_worth_more().to_owned(),
        }
    }
}

/// The brackets of an eye's meridians.
#[derive(Debug, Clone)]
pub struct EyeBracket {
    of: Sweeping,
    each: Vec<Bracket>,
}

/// The sweeps say all: what follows from them is the same where they are.
impl PartialEq for EyeBracket {
    fn eq(&self, other: &Self) -> bool {
        self.of == other.of
    }
}

impl EyeBracket {
    /// Reckons only the sweeps that `before` knows nothing of.
    pub(super) fn new(sweeping: &Sweeping, before: Option<&Self>) -> Self {
        let before = before.and_then(|before| Some((before, before.of.common(sweeping)?)));
        let mut meridians = sweeping.cross().to_vec();
        for sweep in &sweeping.sweeps {
            if !meridians.contains(&sweep.meridian) {
                meridians.push(sweep.meridian);
            }
        }
        let anew = |meridian| {
            let start = sweeping.start.as_ref();
            Bracket::new(meridian, &sweeping.sweeps, start, &sweeping.circumstances)
        };
        let further = |(before, common): (&Self, usize), meridian| {
            let (kept, new) = sweeping.sweeps.split_at(common);
            let of_it = kept.iter().filter(|sweep| sweep.meridian == meridian);
            let mut bracket = before.of(meridian)?.after_first(of_it.count());
            for sweep in new {
                bracket.add(*sweep);
            }
            Some(bracket)
        };
        let bracket = |meridian| {
            let known = before.and_then(|before| further(before, meridian));
            known.unwrap_or_else(|| anew(meridian))
        };
        Self {
            of: sweeping.clone(),
            each: meridians.into_iter().map(bracket).collect(),
        }
    }

    /// The brackets: the two across one another first, then any other meridian that was swept.
    pub fn each(&self) -> &[Bracket] {
        &self.each
    }

    /// The bracket of one meridian.
    pub fn of(&self, meridian: Meridian) -> Option<&Bracket> {
        self.each
            .iter()
            .find(|bracket| bracket.meridian() == meridian)
    }

    /// Whether every meridian is as narrow as trial lenses can tell.
    pub(super) fn is_told(&self) -> bool {
        self.each.iter().all(Bracket::is_told)
    }

    /// What to do next. A sweep of the other meridian with the lens that is in place goes before a change of lens, where it
    /// tells nearly as much.
    pub fn advice(&self, held: &Held) -> EyeAdvice {
        let advised: Vec<(&Bracket, Advice)> = self
            .each
            .iter()
            .map(|bracket| {
                (
                    bracket,
                    bracket.advice(&held.setup, held.setup.step, held.lens),
                )
            })
            .collect();
        let sweeps = || {
            advised.iter().filter_map(|(bracket, advice)| match advice {
                Advice::Sweep(next) => Some((*bracket, *next)),
                Advice::Enough | Advice::NotWorthMore => None,
            })
        };
        let as_it_is = sweeps()
            .filter(|(_, next)| next.bits_in_place >= k::AS_IT_IS * next.bits)
            .max_by(|(_, a), (_, b)| a.bits_in_place.total_cmp(&b.bits_in_place))
            .map(|(bracket, _)| (bracket, held.lens));
        let best = || {
            let most = sweeps().max_by(|(_, a), (_, b)| a.bits.total_cmp(&b.bits));
            most.map(|(bracket, next)| (bracket, next.lens))
        };
        if let Some((bracket, lens)) = as_it_is.or_else(best) {
            let swept = |lens: f64| {
                bracket
                    .sweeps()
                    .iter()
                    .any(|sweep| power(sweep.lens) == power(lens))
            };
            return EyeAdvice::Sweep {
                meridian: bracket.meridian(),
                lens,
                again: swept(lens),
            };
        }
        let enough = advised
            .iter()
            .all(|(_, advice)| matches!(advice, Advice::Enough));
        if enough {
            EyeAdvice::Enough
        } else {
            EyeAdvice::NotWorthMore
        }
    }

    /// Two sweeps of one meridian that cannot both be right, as long as further sweeps of it are worth making: once they have
    /// settled it, which of the two was wrong is plain.
    pub fn contradiction(&self, held: &Held) -> Option<Contradiction> {
        let (setup, step) = (&held.setup, held.setup.step);
        let mut open = self.each.iter().filter(|bracket| bracket.is_open());
        open.find_map(|bracket| bracket.contradiction(setup, step))
    }

    /// The lenses, on the step, that the sweeps say would neutralise the eye, without the working lens. None while a meridian
    /// is still wide open.
    pub fn neutral(&self, held: &Held) -> Option<Neutral> {
        let [lying, standing, others @ ..] = self.each.as_slice() else {
            return None;
        };
        let known = |bracket: &Bracket| {
            !bracket.sweeps().is_empty() && bracket.interval().width() <= k::PROPOSE_WITHIN
        };
        if !known(lying) || !known(standing) {
            return None;
        }
        let lens = |bracket: &Bracket| {
            let exact = held.setup.lens_for(bracket.likeliest());
            held.setup.step.nearest(exact)
        };
        if others.is_empty() {
            let first = MeridianPower {
                meridian: lying.meridian(),
                power: lens(lying),
            };
            return Some(Neutral::TwoMeridians {
                first,
                second: lens(standing),
            });
        }
        let fitted = self.fit().ok()?.lens;
        let in_frame = fitted.with_sphere_changed(held.setup.lens_for(0.0));
        Some(Neutral::InFrame(in_frame.rounded(held.setup.step).value))
    }

    /// The refraction that fits the sweeps of all meridians best, with how surely it is known.
    ///
    /// # Errors
    /// [`FitError`], by what the sweeps lack.
    pub fn fit(&self) -> Result<Fit, FitError> {
        let swept = self
            .each
            .iter()
            .filter(|bracket| !bracket.sweeps().is_empty());
        let found: Result<Vec<Measured>, OpticsError> = swept.map(Bracket::measured).collect();
        meridian_fit(&found?)
    }
}
