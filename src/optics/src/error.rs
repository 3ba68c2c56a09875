//! What can be wrong with a power, an angle or a written lens.

use crate::Meridian;
use crate::format;
use crate::limits::OutOfRange;
use crate::written::WrittenError;
use ::words::optics::lens as say;
use thiserror::Error;

/// Why a value from outside was not taken as a lens. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum OpticsError {
    /// A number lies outside what the field accepts.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),

    /// A number is infinite or not a number.
    #[error("{}", say::not_a_number(.what))]
    NotANumber {
        /// The field, in the trade's word.
        what: &'static str,
    },

    /// A text could not be read as a lens, and at which character.
    #[error(transparent)]
    Written(#[from] WrittenError),

    /// A cylinder was stored whose power is 0, and which therefore has no axis.
    #[error("{}", say::no_axis())]
    EmptyCylinder,

    /// There are fewer readings than the question needs.
    #[error("{}", say::needs_readings(.needed, .given))]
    TooFewReadings {
        /// How many it needs.
        needed: usize,
        /// How many there are.
        given: usize,
    },

    /// A lens was moved so far that its focus falls before its new place.
    #[error("{}", say::past_its_focus(&format::power(*power), &format::plain(by_mm.abs(), 1)))]
    PastItsFocus {
        /// Power of the lens in dioptres.
        power: f64,
        /// How far it was moved toward the eye, in millimetres; away from it where negative.
        by_mm: f64,
    },

    /// A prism was wanted from moving a lens along a meridian where it has no power.
    #[error("{}", say::no_power_there(&format::plain(meridian.degrees(), 1)))]
    NoPowerThere {
        /// That meridian.
        meridian: Meridian,
    },

    /// A number that only means something above 0 is not.
    #[error("{}", say::not_positive(.what))]
    NotPositive {
        /// The field, in the trade's word.
        what: &'static str,
    },

    /// Few letters were read at 4 m, and nobody counted those at 1 m.
    #[error("{}", say::too_few_letters(.at_4_m))]
    LettersAtOneMetre {
        /// The letters read at 4 m.
        at_4_m: u8,
    },

    /// Letters were given beside a logMAR, which has them counted already.
    #[error("{}", say::letters_counted())]
    LettersCountedTwice,

    /// An acuity lies beyond the lines of an even chart.
    #[error("{}", say::no_line_near(&format::plain(*logmar, 2)))]
    NoLineNear {
        /// The acuity in logMAR.
        logmar: f64,
    },

    /// A size of print could not be read.
    #[error("{}", say::unreadable_print(.text))]
    UnreadablePrint {
        /// The text as it came.
        text: String,
    },

    /// A Jaeger number has no size.
    #[error("{}", say::jaeger(.text))]
    Jaeger {
        /// The text as it came.
        text: String,
    },
}
