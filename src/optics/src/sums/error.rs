//! Why a sum did not answer.

use super::Ask;
use crate::OpticsError;
use crate::acuity;
use crate::prism;
use crate::retinoscopy::FitError;
use thiserror::Error;

/// Why a sum did not answer. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SumError {
    /// One of the asks is not answered yet.
    #[error("the {} is missing: write it like {}", ask.name, ask.example)]
    Missing {
        /// Which.
        ask: &'static Ask,
    },
    /// A text could not be taken for its ask.
    #[error("the {}: {why}", ask.name)]
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
    #[error("this sum takes {taken} and no more, and {given} are given")]
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
    #[error("“{text}” is not a number{unit}")]
    NotANumber {
        /// The text as it came.
        text: String,
        /// " of cm", or nothing.
        unit: String,
    },
    /// A count.
    #[error("“{text}” is not a whole number")]
    NotWhole {
        /// The text as it came.
        text: String,
    },
    /// One of a few words.
    #[error("“{text}” is none of these: {words}")]
    NoneOf {
        /// The text as it came.
        text: String,
        /// The words.
        words: String,
    },
    /// A power without its meridian.
    #[error("“{text}” names no meridian: write it like +2.00 @ 90")]
    NoMeridian {
        /// The text as it came.
        text: String,
    },
    /// A category where a line is wanted.
    #[error("“{text}” is no line of a chart, so there is no size to reckon with")]
    NotMeasured {
        /// The text as it came.
        text: String,
    },
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
