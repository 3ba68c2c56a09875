//! Rounding a lens to what a trial case holds: asked for, never silent.
//!
//! The axis goes to the nearest whole degree; then the powers that the lens has along and across that axis go each to the
//! nearest step. That is the lens on the step that is nearest by blur strength (its square is half the sum of the squares
//! of what the two powers lose, and of what the turned axis costs, which no step of power can give back), and it is the
//! same lens in minus and in plus form, which rounding sphere and cylinder apart would not be. A cylinder weaker than half
//! a step is dropped into the mean sphere, for its axis would mean nothing (common practice, no source). What was lost is
//! said. Dioptres and degrees; any finite lens is valid.
//!
//! ```
//! use optics::{SphereCyl, Step};
//!
//! let found = SphereCyl::new(2.5075, -1.40, 12.4)?;
//! let rounded = found.rounded(Step::Quarter);
//! assert_eq!(rounded.value.to_string(), "+2.50 / −1.50 × 12");
//! assert!(rounded.lost < 0.08);
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::{SphereCyl, step::Step};

/// A lens on a step, with what the rounding took away.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rounded {
    /// The lens on the step, in the same form as it came.
    pub value: SphereCyl,
    /// The blur strength of the difference in dioptres, 0 where the lens already stood on the step.
    pub lost: f64,
}

impl SphereCyl {
    /// The nearest lens on a trial-lens step, and what was lost.
    pub fn rounded(&self, step: Step) -> Rounded {
        let value = self.on_step(step);
        let lost = value.vector().distance(&self.vector());
        Rounded { value, lost }
    }

    fn on_step(&self, step: Step) -> Self {
        match self.cylinder {
            Some(cylinder) if cylinder.power().abs() >= step.dioptres() / 2.0 => {
                let axis = cylinder.axis().degrees().round();
                let along = step.nearest(self.power_along(axis));
                let across = step.nearest(self.power_along(axis + 90.0));
                Self::derived(along, across - along, axis)
            }
            _ => Self::sphere(step.nearest(self.mean_sphere())),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lens(sphere: f64, cylinder: f64, axis: f64) -> SphereCyl {
        SphereCyl::new(sphere, cylinder, axis).unwrap()
    }

    // Clinical practice rounds the net of 67 cm (+2.5075) to +2.50: computed from the formula.
    #[test]
    fn the_net_at_67_cm_loses_almost_nothing() {
        let rounded = lens(2.5075, -1.5, 180.0).rounded(Step::Quarter);
        assert_eq!(rounded.value, lens(2.5, -1.5, 180.0));
        assert!((rounded.lost - 0.0075).abs() < 1e-4, "{}", rounded.lost);
    }

    #[test]
    fn a_lens_on_the_step_loses_nothing() {
        let exact = lens(-3.25, 1.75, 65.0);
        let rounded = exact.rounded(Step::Quarter);
        assert_eq!(rounded.value, exact);
        assert!(rounded.lost < 1e-12);
    }

    #[test]
    fn a_cylinder_under_half_a_step_has_no_axis() {
        let rounded = lens(1.15, -0.10, 37.0).rounded(Step::Quarter);
        assert_eq!(rounded.value, SphereCyl::sphere(1.0));
    }

    #[test]
    fn the_form_does_not_change_the_lens() {
        let weak = lens(1.10, -0.60, 33.4);
        let minus = weak.rounded(Step::Quarter);
        let plus = weak.transposed().rounded(Step::Quarter);
        assert_eq!(minus.value, plus.value.transposed());
        assert!(plus.value.cylinder_power() > 0.0);
    }

    #[test]
    fn an_axis_near_zero_becomes_180() {
        let rounded = lens(1.0, -1.0, 0.4).rounded(Step::Quarter);
        assert_eq!(rounded.value, lens(1.0, -1.0, 180.0));
    }
}
