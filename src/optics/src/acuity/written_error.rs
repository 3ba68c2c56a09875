//! Why a written acuity was not taken.

use crate::OpticsError;
use thiserror::Error;

/// What is wrong with a written acuity, and where. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum WrittenError {
    /// Nothing was written.
    #[error("no acuity is written here")]
    Empty,

    /// The text ends too soon.
    #[error("“{text}” stops short: {wanted} is missing")]
    Short {
        /// The text as it came.
        text: String,
        /// What would have come next.
        wanted: &'static str,
    },

    /// The text goes on with something else than it should.
    #[error("“{text}” cannot be read from “{rest}” on: {wanted} goes there")]
    Stopped {
        /// The text as it came.
        text: String,
        /// The part that was not read.
        rest: String,
        /// How many characters were read before it.
        after: usize,
        /// What would have come there.
        wanted: &'static str,
    },

    /// Fingers were counted nobody knows where.
    #[error("“{text}” says not how far away: write it like CF 50 cm")]
    FingersWhere {
        /// The text as it came.
        text: String,
    },

    /// A number is none that an eye reaches.
    #[error(transparent)]
    Number(#[from] OpticsError),
}
