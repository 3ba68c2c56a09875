//! The change of both eyes, and what it does to the difference between them.

use super::Change;
use crate::Eyes;
use ::words::optics::change as say;

impl Eyes<Change> {
    /// Eye by eye in words, right first: "right eye: 0.50 D more plus", "left eye: no change".
    pub fn sentences(&self) -> [String; 2] {
        let said =
            |(eye, change): (crate::Eye, &Change)| say::of_eye(&eye.said(), &change.sentence());
        self.each().map(said)
    }

    /// The difference between the eyes in mean sphere before, in dioptres, right less left.
    pub fn anisometropia_before(&self) -> f64 {
        self.right.from().mean_sphere() - self.left.from().mean_sphere()
    }

    /// The difference between the eyes in mean sphere now, in dioptres, right less left.
    pub fn anisometropia_now(&self) -> f64 {
        self.right.to().mean_sphere() - self.left.to().mean_sphere()
    }

    /// How much farther apart the eyes are set by the change, in dioptres of mean sphere; nearer where negative. One that
    /// changes sides counts as new from end to end.
    ///
    /// ```
    /// use optics::change::Change;
    /// use optics::{Eyes, SphereCyl};
    /// let plain = SphereCyl::sphere(1.0);
    /// let both = Eyes {
    ///     right: Change::between(&plain, &SphereCyl::sphere(2.25))?,
    ///     left: Change::between(&plain, &plain)?,
    /// };
    /// assert_eq!(both.new_anisometropia(), 1.25);
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    pub fn new_anisometropia(&self) -> f64 {
        let (before, now) = (self.anisometropia_before(), self.anisometropia_now());
        if before * now < 0.0 {
            (now - before).abs()
        } else {
            now.abs() - before.abs()
        }
    }
}
