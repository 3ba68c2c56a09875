//! What can be wrong with a power, an angle or a written lens.

use crate::Meridian;
use crate::format;
use crate::limits::OutOfRange;
use crate::written::WrittenError;
use thiserror::Error;

/// Why a value from outside was not taken as a lens. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum OpticsError {
    /// A number lies outside what the field accepts.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),

    /// A number is infinite or not a number.
    #[error("the {what} is not a number")]
    NotANumber {
        /// The field, in the trade's word.
        what: &'static str,
    },

    /// A text could not be read as a lens, and at which character.
    #[error(transparent)]
    Written(#[from] WrittenError),

    /// A cylinder was stored whose power is 0, and which therefore has no axis.
    #[error("a cylinder of 0 has no axis")]
    EmptyCylinder,

    /// There are fewer readings than the question needs.
    #[error("this needs at least {needed} readings, and there are {given}")]
    TooFewReadings {
        /// How many it needs.
        needed: usize,
        /// How many there are.
        given: usize,
    },

    /// A lens was moved so far that its focus falls before its new place.
    #[error("a {} D lens comes to a focus within the {} mm that it is moved", format::power(*power), format::plain(by_mm.abs(), 1))]
    PastItsFocus {
        /// Power of the lens in dioptres.
        power: f64,
        /// How far it was moved toward the eye, in millimetres; away from it where negative.
        by_mm: f64,
    },

    /// A prism was wanted from moving a lens along a meridian where it has no power.
    #[error("the lens has no power in the meridian {}, so moving it gives no prism there", format::plain(meridian.degrees(), 1))]
    NoPowerThere {
        /// That meridian.
        meridian: Meridian,
    },
}
