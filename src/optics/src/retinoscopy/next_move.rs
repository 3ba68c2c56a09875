//! What to do next about an eye, the most pressing first: settle a contradiction, look again with the beam reversed, sweep on.
//!
//! ```
//! use optics::SphereCyl;
//! use optics::retinoscopy::{Beam, Held, Motion, NextMove, Setup, Sweep, Sweeping, WorkingDistance};
//!
//! let setup = Setup::new(WorkingDistance::from_cm(67.0)?, None);
//! let mut sweeping = Sweeping::default();
//! let [lying, _] = sweeping.cross();
//! sweeping.sweeps.push(Sweep::new(lying, 6.0, setup, Motion::Neutral)?);
//! let next = NextMove::of(&sweeping.bracket(), &sweeping.sweeps, &Held { setup, lens: 6.0 });
//! assert_eq!(next.sentence(), "is it a large against? sweep 180 once with the beam reversed");
//! assert_eq!(next.take().and_then(|take| take.beam), Some(Beam::Reversed));
//! # Ok::<(), optics::OpticsError>(())
//! ```

use super::bracket::Contradiction;
use super::{Beam, EyeAdvice, EyeBracket, Held, Sweep};
use crate::Meridian;
use crate::format::plain;
use ::words::optics::retinoscopy as say;

/// What to do next about an eye.
#[derive(Debug, Clone, PartialEq)]
pub enum NextMove {
    /// Two sweeps can't both be right.
    Settle(Contradiction),
    /// A neutral or doubtful sweep with plenty of plus in place.
    Reverse(Meridian),
    /// What the bracket advises; after one sweep with the beam reversed it goes back to normal.
    Advised {
        /// What to do.
        advice: EyeAdvice,
        /// The beam to do it with, where it is to be changed.
        beam: Option<Beam>,
    },
}

/// What the hand takes up; what is not said stays as it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Take {
    /// The meridian to test.
    pub meridian: Meridian,
    /// The lens to put in place, without the working lens, in dioptres.
    pub lens: Option<f64>,
    /// The beam.
    pub beam: Option<Beam>,
}

impl NextMove {
    /// From what the sweeps say, and the sweeps in the order in which they were made.
    pub fn of(bracket: &EyeBracket, sweeps: &[Sweep], held: &Held) -> Self {
        let beam = answered(sweeps).then_some(Beam::Normal);
        if bracket.is_told() {
            let advice = EyeAdvice::Enough;
            return Self::Advised { advice, beam };
        }
        if let Some(contradiction) = bracket.contradiction(held) {
            return Self::Settle(contradiction);
        }
        let last = sweeps.last().and_then(|last| bracket.of(last.meridian));
        match last.filter(|last| last.worth_reversing()) {
            Some(doubtful) => Self::Reverse(doubtful.meridian()),
            None => Self::Advised {
                advice: bracket.advice(held),
                beam,
            },
        }
    }

    /// In one sentence.
    pub fn sentence(&self) -> String {
        match self {
            Self::Settle(contradiction) => contradiction.sentence(),
            Self::Reverse(meridian) => say::reverse(&plain(meridian.degrees(), 1)),
            Self::Advised { advice, beam } => match (self.take(), beam) {
                (None, _) => advice.sentence(),
                (Some(_), None) => say::next(&advice.sentence()),
                (Some(_), Some(_)) => say::next_beam_normal(&advice.sentence()),
            },
        }
    }

    /// What a hand takes up that follows; nothing where there is nothing more to do.
    pub const fn take(&self) -> Option<Take> {
        match self {
            Self::Settle(contradiction) => Some(Take {
                meridian: contradiction.one.meridian,
                lens: Some(contradiction.settle),
                beam: None,
            }),
            Self::Reverse(meridian) => Some(Take {
                meridian: *meridian,
                lens: None,
                beam: Some(Beam::Reversed),
            }),
            Self::Advised {
                advice: EyeAdvice::Sweep { meridian, lens, .. },
                beam,
            } => Some(Take {
                meridian: *meridian,
                lens: Some(*lens),
                beam: *beam,
            }),
            Self::Advised { .. } => None,
        }
    }

    /// Whether the sweeps tell as closely as can be.
    pub const fn is_enough(&self) -> bool {
        matches!(
            self,
            Self::Advised {
                advice: EyeAdvice::Enough,
                ..
            }
        )
    }

    /// Whether it doubts a sweep.
    pub const fn doubts(&self) -> bool {
        matches!(self, Self::Settle(_) | Self::Reverse(_))
    }
}

/// Whether the last sweep was the one before it again, with the beam reversed: a doubt that is answered now.
fn answered(sweeps: &[Sweep]) -> bool {
    let [.., doubtful, last] = sweeps else {
        return false;
    };
    let turned = doubtful.beam == Beam::Normal && last.beam == Beam::Reversed;
    turned && doubtful.meridian == last.meridian
}
