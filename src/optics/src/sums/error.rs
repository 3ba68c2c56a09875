//! Why a sum did not answer.

use super::Ask;
use crate::OpticsError;
use crate::acuity;
use crate::limits::Unit;
use crate::prism;
use crate::retinoscopy::FitError;
use ::words::optics::sums as say;
use thiserror::Error;

/// Why a sum did not answer. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SumError {
    /// One of the asks is not answered yet.
    #[error("{}", say::missing(&ask.name(), &ask.example()))]
    Missing {
        /// Which.
        ask: &'static Ask,
    },
    /// A text could not be taken for its ask.
    #[error("{}", say::wrong(&ask.name(), .why))]
    At {
        /// Which.
        ask: &'static Ask,
        /// Why not.
        why: Unread,
    },
    /// Every text is good by itself, and still there is no answer.
    #[error(transparent)]
    Together(#[from] OpticsError),
    /// Single meridians that make no lens.
    #[error(transparent)]
    Meridians(#[from] FitError),
    /// There are more texts than asks.
    #[error("{}", say::too_many(.taken, .given))]
    TooMany {
        /// How many it takes.
        taken: usize,
        /// How many there are.
        given: usize,
    },
}

impl SumError {
    /// The ask that it is about, if about one.
    pub const fn ask(&self) -> Option<&'static Ask> {
        match self {
            Self::Missing { ask } | Self::At { ask, .. } => Some(ask),
            Self::Together(_) | Self::Meridians(_) | Self::TooMany { .. } => None,
        }
    }

    /// Whether all that is wrong is that something was not given yet.
    pub const fn is_missing(&self) -> bool {
        matches!(self, Self::Missing { .. })
    }
}

/// Why a text was not taken. Each prints one plain sentence that stands beside the field.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Unread {
    /// A lens, a power, a print or a number outside its range.
    #[error(transparent)]
    Optics(#[from] OpticsError),
    /// An acuity.
    #[error(transparent)]
    Acuity(#[from] acuity::WrittenError),
    /// A prism.
    #[error(transparent)]
    Prism(#[from] prism::ReadError),
    /// A plain number.
    #[error("{}", not_a_number(.text, *.unit))]
    NotANumber {
        /// The text as it came.
        text: String,
        /// What it is a number of, if of anything.
        unit: Option<NumberOf>,
    },
    /// A count.
    #[error("{}", say::not_whole(.text))]
    NotWhole {
        /// The text as it came.
        text: String,
    },
    /// One of a few words.
    #[error("{}", say::none_of(.text, .words))]
    NoneOf {
        /// The text as it came.
        text: String,
        /// The words.
        words: String,
    },
    /// A power without its meridian.
    #[error("{}", say::no_meridian(.text))]
    NoMeridian {
        /// The text as it came.
        text: String,
    },
    /// A category where a line is wanted.
    #[error("{}", say::no_line(.text))]
    NotMeasured {
        /// The text as it came.
        text: String,
    },
}

/// What a plain number is a number of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumberOf {
    /// What its limit is in.
    Unit(Unit),
    /// Feet, where metres are asked.
    Feet,
}

fn not_a_number(text: &str, of: Option<NumberOf>) -> String {
    let unit = match of {
        None => "",
        Some(NumberOf::Unit(unit)) => unit.symbol().trim(),
        Some(NumberOf::Feet) => say::unit_feet(),
    };
    if unit.is_empty() {
        say::not_a_number(&text)
    } else {
        say::not_a_number_of(&text, &unit)
    }
}

impl From<crate::OutOfRange> for Unread {
    fn from(range: crate::OutOfRange) -> Self {
        Self::Optics(range.into())
    }
}

impl From<crate::OutOfRange> for SumError {
    fn from(range: crate::OutOfRange) -> Self {
        Self::Together(range.into())
    }
}
