//! What can be wrong with a written lens, and at which character.

use crate::limits::OutOfRange;
use std::error::Error;
use std::fmt;

/// Why a text was not taken as a lens. Prints one plain sentence that says where.
///
/// ```
/// use optics::{OpticsError, SphereCyl, written::Mistake};
///
/// let Err(OpticsError::Written(error)) = SphereCyl::parse("+2.00 / −1.00") else { panic!() };
/// assert_eq!((error.mistake, error.at, error.piece.as_str()), (Mistake::NoAxis, 8, "−1.00"));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct WrittenError {
    /// What is wrong.
    pub mistake: Mistake,
    /// The piece of the text that is wrong, as it was given.
    pub piece: String,
    /// How many characters (not bytes) of the given text stand before the piece.
    pub at: usize,
}

/// What is wrong with a piece of a written lens.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mistake {
    /// There is nothing but spaces.
    Empty,
    /// It makes no sense where it stands.
    Unreadable,
    /// What must follow does not: a number after a sign or after the mark of an axis, a cylinder after a stroke.
    Unfinished,
    /// A power without its sign.
    NoSign,
    /// A cylinder without an axis.
    NoAxis,
    /// An axis without a cylinder.
    NoCylinder,
    /// A number that could be an axis or the decimals of the cylinder before it.
    Unmarked,
    /// The second of two cylinders or meridians that are not at right angles.
    NotAtRightAngles,
    /// An axis or a meridian outside half a turn.
    Angle(OutOfRange),
}

impl Error for WrittenError {}

impl fmt::Display for WrittenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        const LIKE: &str = "write a lens like +2.00 / −1.00 × 30";
        let piece = &self.piece;
        if self.mistake != Mistake::Empty {
            write!(f, "“{piece}” (character {}) ", self.at + 1)?;
        }
        match self.mistake {
            Mistake::Empty => write!(f, "nothing is written: {LIKE}"),
            Mistake::Unreadable => write!(f, "cannot be read here: {LIKE}"),
            Mistake::Unfinished => write!(f, "is not finished: {LIKE}"),
            Mistake::NoSign => write!(f, "has no sign: write +{piece} or −{piece}"),
            Mistake::NoAxis => f.write_str("is a cylinder without an axis: add it, like × 90"),
            Mistake::NoCylinder => {
                f.write_str("is an axis without a cylinder: which cylinder is it the axis of?")
            }
            Mistake::Unmarked => {
                write!(f, "may be an axis or decimals: write × {piece} or a point")
            }
            Mistake::NotAtRightAngles => f.write_str("is not at right angles to the one before it"),
            Mistake::Angle(range) => write!(f, "is no angle for a lens: {range}"),
        }
    }
}
