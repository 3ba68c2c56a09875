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

    /// A number that only means something above 0 is not.
    #[error("the {what} must be above 0")]
    NotPositive {
        /// The field, in the trade's word.
        what: &'static str,
    },

    /// Few letters were read at 4 m, and nobody counted those at 1 m.
    #[error("{at_4_m} letters at 4 m are fewer than 20: count those at 1 m too")]
    LettersAtOneMetre {
        /// The letters read at 4 m.
        at_4_m: u8,
    },

    /// Letters were given beside a logMAR, which has them counted already.
    #[error("a logMAR has its letters counted already: leave them out, or give the line instead")]
    LettersCountedTwice,

    /// An acuity lies beyond the lines of an even chart.
    #[error("no line of an even chart is near logMAR {}: its lines are −0.3 to 2.0", format::plain(*logmar, 2))]
    NoLineNear {
        /// The acuity in logMAR.
        logmar: f64,
    },

    /// A size of print could not be read.
    #[error("“{text}” cannot be read as a size of print: write it like N8 or 1 M")]
    UnreadablePrint {
        /// The text as it came.
        text: String,
    },

    /// A Jaeger number has no size.
    #[error("“{text}” has no size of its own, since cards differ: write the print as N or M")]
    Jaeger {
        /// The text as it came.
        text: String,
    },
}
