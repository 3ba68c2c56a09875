//! Prism before both eyes: what one eye has more than the other, and how a prism is shared between them.
//!
//! ```text
//! relative = right − left, by components
//! split    = half before the eye that it is written for, and minus the other half before the other eye
//! ```
//!
//! Components point the same way for both eyes, so the subtraction says all of it: bases of the same name add along the
//! horizontal (in and in) and cancel along the vertical (up and up). The relative prism is written as though all of it
//! stood before the right eye. Prism dioptres and millimetres; any finite prism. How prisms add between the eyes and the
//! even split are common practice, no source.

use super::{Decentration, Prism};
use crate::{Eye, Eyes, OpticsError, SphereCyl, limits};
use ::words::optics::prism as say;

/// From this many Δ a vertical difference at the reading point is worth asking about. Common practice puts it between 1
/// and 1.5.
pub const ASK_FROM: f64 = 1.0;

/// What the right eye has more than the left, as though it all stood before the right eye.
///
/// ```
/// use optics::{Eye, prism::{Base, Prism, relative}};
/// let right = Prism::toward(2.0, Base::In, Eye::Right)?;
/// let left = Prism::toward(1.0, Base::In, Eye::Left)?;
/// assert_eq!(relative(right, left).written(Eye::Right), "3.00 in");
/// # Ok::<(), optics::OpticsError>(())
/// ```
pub fn relative(right: Prism, left: Prism) -> Prism {
    right - left
}

/// A prism written for one eye, shared between both: this share of it, 0 to 1, stays before that eye.
///
/// ```
/// use optics::{Eye, prism::{Prism, split}};
/// let shared = split(Prism::read("3.00 up & 4.00 in", Eye::Right)?, Eye::Right, 0.5)?;
/// assert_eq!(shared.right.written(Eye::Right), "1.50 up & 2.00 in");
/// assert_eq!(shared.left.written(Eye::Left), "1.50 down & 2.00 in");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`OpticsError::OutOfRange`] for a share outside 0 to 1.
pub fn split(whole: Prism, before: Eye, share: f64) -> Result<Eyes<Prism>, OpticsError> {
    let here = limits::share(share)?;
    let (this, other) = (whole * here, whole * (here - 1.0));
    Ok(match before {
        Eye::Right => Eyes {
            right: this,
            left: other,
        },
        Eye::Left => Eyes {
            right: other,
            left: this,
        },
    })
}

/// Where both eyes look through their lenses to read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    down_mm: f64,
    in_mm: f64,
}

impl Reading {
    /// So far below the optical centres, and so far nearer the nose, in millimetres each.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside 0 to 30 mm down or ±40 mm in.
    pub fn new(down_mm: f64, in_mm: f64) -> Result<Self, OpticsError> {
        Ok(Self {
            down_mm: limits::reading_drop_mm(down_mm)?,
            in_mm: limits::decentration_mm(in_mm)?,
        })
    }

    /// What a pair of lenses does there. Additions that are the same before both eyes may be left out: they cancel.
    ///
    /// ```
    /// use optics::{Eyes, SphereCyl, prism::Reading};
    /// let lenses = Eyes { right: SphereCyl::sphere(-4.0), left: SphereCyl::sphere(-1.0) };
    /// let prism = Reading::new(10.0, 0.0)?.through(&lenses)?;
    /// assert_eq!(prism.sentence(), "at the reading point the right eye has 3.00 more base down than the left");
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    ///
    /// # Errors
    /// [`OpticsError::NotANumber`] for a lens of endless power.
    pub fn through(self, lenses: &Eyes<SphereCyl>) -> Result<ReadingPrism, OpticsError> {
        let at = |eye: Eye| {
            let gaze = Decentration::of_gaze(eye, self.in_mm, self.down_mm)?;
            Prism::of_decentred(lenses.of(eye), gaze)
        };
        Ok(ReadingPrism {
            each: Eyes {
                right: at(Eye::Right)?,
                left: at(Eye::Left)?,
            },
        })
    }
}

/// The prism of both lenses at the reading point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingPrism {
    /// Before each eye.
    pub each: Eyes<Prism>,
}

impl ReadingPrism {
    /// What the right eye has more than the left: its vertical part is the imbalance.
    pub fn relative(&self) -> Prism {
        relative(self.each.right, self.each.left)
    }

    /// Whether the vertical difference reaches [`ASK_FROM`].
    pub fn asks(&self) -> bool {
        self.relative().v().abs() >= ASK_FROM
    }

    /// The vertical difference in words.
    pub fn sentence(&self) -> String {
        let more = self.relative().vertical();
        say::more_base(
            &format_args!("{:.2}", (more.amount * 100.0).round() / 100.0),
            &more.base.said(),
        )
    }
}
