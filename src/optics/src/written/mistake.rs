//! What can be wrong with a written lens, and at which character.

use crate::limits::OutOfRange;
use ::words::optics::lens as say;
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
        let like = say::write_like();
        let piece = &self.piece;
        if self.mistake != Mistake::Empty {
            f.write_str(&say::piece_at(&piece, &(self.at + 1)))?;
        }
        match self.mistake {
            Mistake::Empty => f.write_str(&say::nothing_written(&like)),
            Mistake::Unreadable => f.write_str(&say::unreadable_here(&like)),
            Mistake::Unfinished => f.write_str(&say::unfinished(&like)),
            Mistake::NoSign => f.write_str(&say::no_sign(&piece)),
            Mistake::NoAxis => f.write_str(say::cylinder_without_axis()),
            Mistake::NoCylinder => f.write_str(say::axis_without_cylinder()),
            Mistake::Unmarked => f.write_str(&say::axis_or_decimals(&piece)),
            Mistake::NotAtRightAngles => f.write_str(say::not_at_right_angles()),
            Mistake::Angle(range) => f.write_str(&say::no_angle(&range)),
        }
    }
}
