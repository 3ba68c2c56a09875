//! The line that says what to do next, and what a tap on it takes up.

use super::desk::InHand;
use optics::Meridian;
use optics::retinoscopy::bracket::Contradiction;
use optics::retinoscopy::{Beam, EyeAdvice, EyeBracket, Held};

/// What to do next about an eye, the most pressing first.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// Two sweeps can't both be right.
    Settle(Contradiction),
    /// A neutral or doubtful sweep with plenty of plus in place.
    Reverse(Meridian),
    /// What the bracket advises.
    Advised(EyeAdvice),
}

impl Next {
    /// From what the sweeps say; `swept` is the meridian swept last.
    pub fn of(bracket: &EyeBracket, swept: Option<Meridian>, held: &Held) -> Self {
        let advice = bracket.advice(held);
        if advice == EyeAdvice::Enough {
            return Self::Advised(advice);
        }
        if let Some(contradiction) = bracket.contradiction(held) {
            return Self::Settle(contradiction);
        }
        let last = swept.and_then(|swept| bracket.of(swept));
        match last.filter(|last| last.worth_reversing()) {
            Some(doubtful) => Self::Reverse(doubtful.meridian()),
            None => Self::Advised(advice),
        }
    }

    /// In one sentence.
    pub fn sentence(&self) -> String {
        match self {
            Self::Settle(contradiction) => contradiction.sentence(),
            Self::Reverse(meridian) => format!(
                "is it a large against? sweep {} once with the beam reversed",
                super::words::degrees(*meridian)
            ),
            Self::Advised(advice @ EyeAdvice::Sweep { .. }) => {
                format!("Next: {}", advice.sentence())
            }
            Self::Advised(advice) => advice.sentence(),
        }
    }

    /// Whether there is something to take up.
    pub const fn can_be_taken(&self) -> bool {
        !matches!(
            self,
            Self::Advised(EyeAdvice::Enough | EyeAdvice::NotWorthMore)
        )
    }

    /// Whether the sweeps are told as closely as can be.
    pub const fn is_enough(&self) -> bool {
        matches!(self, Self::Advised(EyeAdvice::Enough))
    }

    /// Puts into the hands what it asks for.
    pub fn put(&self, hand: &mut InHand) {
        match self {
            Self::Settle(contradiction) => {
                hand.meridian = contradiction.one.meridian;
                hand.lens = contradiction.settle;
            }
            Self::Reverse(meridian) => {
                hand.meridian = *meridian;
                hand.beam = Beam::Reversed;
            }
            Self::Advised(EyeAdvice::Sweep { meridian, lens, .. }) => {
                hand.meridian = *meridian;
                hand.lens = *lens;
            }
            Self::Advised(EyeAdvice::Enough | EyeAdvice::NotWorthMore) => {}
        }
    }
}
