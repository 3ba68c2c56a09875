//! Slips of distance, and what each leaves in the net.
//!
//! ```text
//! distance taken for another:  1/true − 1/assumed          forgotten:  1/w          doubled:  −1/w
//! measured to the cornea:      1/(w − v) − 1/w             working lens that does not match:  1/w − lens
//! moved in or out of neutral:  E = 1/new − 1/old
//! ```
//!
//! Dioptres by which the net, or what stays in the frame, is too plus (too minus below 0); distances in metres inside,
//! w and v being the working distance and the vertex distance. All distances are those that [`WorkingDistance`] takes,
//! 10 to 120 cm. Each follows from the one equation; figures are in `tests/published`.
//!
//! ```
//! use optics::retinoscopy::WorkingDistance;
//! use optics::retinoscopy::slips::{Slip, moved};
//!
//! let [near, usual] = [62.0, 67.0].map(|cm| WorkingDistance::from_cm(cm).unwrap());
//! let slip = Slip::WrongDistance { truly: near, assumed: usual };
//! assert!((slip.too_plus() - 0.120).abs() < 5e-4);
//! assert_eq!(slip.sentence(), "at 62 cm with 67 taken off, the net is 0.12 D too plus");
//! assert!(moved(usual, near) > 0.0, "moving in shows with");
//! # Ok::<(), optics::OpticsError>(())
//! ```

use super::WorkingDistance;
use crate::OpticsError;
use crate::format::plain;
use crate::limits;
use ::words::optics::retinoscopy as say;

/// A slip of distance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Slip {
    /// The examiner sat elsewhere than was taken off.
    WrongDistance {
        /// Where the examiner sat.
        truly: WorkingDistance,
        /// What was taken off.
        assumed: WorkingDistance,
    },
    /// The distance was measured to the cornea, which lies behind the lens.
    ToTheCornea {
        /// What was measured and taken off.
        measured: WorkingDistance,
        /// To the lens.
        truly: WorkingDistance,
    },
    /// Nothing was taken off.
    Forgotten(WorkingDistance),
    /// The distance was taken off twice: once as the working lens and once more.
    Doubled(WorkingDistance),
}

impl Slip {
    /// A distance measured to the cornea, with the vertex distance in millimetres.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for the vertex distance, or where the lens would be nearer than 10 cm.
    pub fn to_the_cornea(measured: WorkingDistance, vertex_mm: f64) -> Result<Self, OpticsError> {
        let truly = WorkingDistance::from_cm(measured.cm() - limits::vertex_mm(vertex_mm)? / 10.0)?;
        Ok(Self::ToTheCornea { measured, truly })
    }

    /// By how much the net is too plus, in dioptres; too minus where negative.
    pub fn too_plus(&self) -> f64 {
        match *self {
            Self::WrongDistance {
                truly,
                assumed: taken,
            }
            | Self::ToTheCornea {
                truly,
                measured: taken,
            } => mismatch(truly, taken.dioptres()),
            Self::Forgotten(distance) => mismatch(distance, 0.0),
            Self::Doubled(distance) => mismatch(distance, 2.0 * distance.dioptres()),
        }
    }

    /// The slip and what it does in one plain sentence.
    pub fn sentence(&self) -> String {
        let cm = |distance: WorkingDistance| plain(distance.cm(), 1);
        let slip = match *self {
            Self::WrongDistance { truly, assumed } => say::slip_distance(&cm(truly), &cm(assumed)),
            Self::ToTheCornea { measured, truly } => say::slip_cornea(&cm(measured), &cm(truly)),
            Self::Forgotten(distance) => say::slip_forgotten(&cm(distance)),
            Self::Doubled(distance) => say::slip_doubled(&cm(distance)),
        };
        say::slip_leaves(&slip, &off(self.too_plus()))
    }
}

/// What is left too plus at a distance by taking so many dioptres off for it, whether in the mind or by taking a working
/// lens out.
pub(super) fn mismatch(distance: WorkingDistance, taken_off: f64) -> f64 {
    distance.dioptres() - taken_off
}

/// "0.12 D too plus".
pub(super) fn off(too_plus: f64) -> String {
    let side = if too_plus > 0.0 {
        say::side_plus()
    } else {
        say::side_minus()
    };
    say::off_by(&format_args!("{:.2}", too_plus.abs()), &side)
}

/// How far from neutral the eye is, once an examiner for whom it was neutral has moved, in dioptres: above 0 it shows
/// with, below against, in a normal beam. Moving in must show with and moving out against, in every meridian.
pub fn moved(from: WorkingDistance, to: WorkingDistance) -> f64 {
    mismatch(to, from.dioptres())
}
