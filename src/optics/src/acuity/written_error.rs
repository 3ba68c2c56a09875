//! Why a written acuity was not taken.

use crate::OpticsError;
use ::words::optics::acuity as say;
use thiserror::Error;

/// What is wrong with a written acuity, and where. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum WrittenError {
    /// Nothing was written.
    #[error("{}", say::nothing_written())]
    Empty,

    /// The text ends too soon.
    #[error("{}", say::stops_short(.text, .wanted))]
    Short {
        /// The text as it came.
        text: String,
        /// What would have come next.
        wanted: &'static str,
    },

    /// The text goes on with something else than it should.
    #[error("{}", say::cannot_be_read(.text, .rest, .wanted))]
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
    #[error("{}", say::fingers_where(.text))]
    FingersWhere {
        /// The text as it came.
        text: String,
    },

    /// A number is none that an eye reaches.
    #[error(transparent)]
    Number(#[from] OpticsError),
}
