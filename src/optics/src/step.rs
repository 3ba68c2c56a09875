//! The steps in which trial lenses come.

use serde::{Deserialize, Serialize};

/// A trial-lens step in dioptres: quarters throughout a trial case, eighths among its weakest lenses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// 0.25 D.
    #[default]
    Quarter,
    /// 0.125 D, which the trade writes 0.12.
    Eighth,
}

impl Step {
    /// Both, the coarser first.
    pub const ALL: [Self; 2] = [Self::Quarter, Self::Eighth];

    /// The size of the step in dioptres.
    pub const fn dioptres(self) -> f64 {
        match self {
            Self::Quarter => 0.25,
            Self::Eighth => 0.125,
        }
    }

    /// The nearest power on this step; halves go away from zero.
    pub fn nearest(self, power: f64) -> f64 {
        (power / self.dioptres()).round() * self.dioptres()
    }

    /// The step that a lens of this power belongs to: eighths for an engraved 0.12, 0.37, 0.62 or 0.87, else quarters.
    pub fn of(power: f64) -> Self {
        // An eighth is engraved with its third decimal cut, so 0.12 stands for 0.125.
        const ENGRAVED_WITHIN: f64 = 0.006;
        match Self::odd_eighth(power, ENGRAVED_WITHIN) {
            Some(_) => Self::Eighth,
            None => Self::Quarter,
        }
    }

    /// The eighth that a power stands for, within a tolerance, where that eighth is not a quarter.
    pub(crate) fn odd_eighth(power: f64, within: f64) -> Option<f64> {
        let eighth = Self::Eighth.nearest(power);
        let from_quarter = (Self::Quarter.nearest(eighth) - eighth).abs();
        ((eighth - power).abs() < within && from_quarter > within).then_some(eighth)
    }
}

#[cfg(test)]
#[expect(
    clippy::float_cmp,
    reason = "whole degrees and eighths are exact in binary"
)]
mod tests {
    use super::*;

    #[test]
    fn halves_go_away_from_zero() {
        assert_eq!(Step::Quarter.nearest(1.125), 1.25);
        assert_eq!(Step::Quarter.nearest(-1.125), -1.25);
        assert_eq!(Step::Eighth.nearest(-1.13), -1.125);
    }

    #[test]
    fn an_engraved_eighth_is_known_by_its_cut_decimal() {
        for power in [0.12, 0.125, -1.37, 2.62, -0.87] {
            assert_eq!(Step::of(power), Step::Eighth, "{power}");
        }
        for power in [0.0, 0.25, -3.5, 2.1, 3.6] {
            assert_eq!(Step::of(power), Step::Quarter, "{power}");
        }
    }
}
