//! A lens while it is being entered, before it can be written.

use ::words::app::widgets as say;
use optics::{Cylinder, SphereCyl};

/// The three numbers as far as they go.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Half {
    /// Dioptres.
    pub sphere: Option<f64>,
    /// Dioptres; nought and none both mean no cylinder.
    pub cylinder: Option<f64>,
    /// Degrees; kept while the cylinder passes through nought, so that a slip past it costs nothing.
    pub axis: Option<f64>,
}

/// What is missing before the numbers are a lens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lacks {
    /// A cylinder stands without a sphere.
    Sphere,
    /// A cylinder stands without an axis.
    Axis,
}

impl Lacks {
    /// The question, with its reason.
    pub fn question(self) -> &'static str {
        match self {
            Self::Sphere => say::what_sphere_lens_once_one(),
            Self::Axis => say::what_axis_lens_once_one(),
        }
    }
}

impl Half {
    /// The numbers of a lens.
    pub fn of(lens: Option<SphereCyl>) -> Self {
        let Some(lens) = lens else {
            return Self::default();
        };
        let cylinder = lens.cylinder;
        Self {
            sphere: Some(lens.sphere),
            cylinder: cylinder.map(Cylinder::power),
            axis: cylinder.map(|c| c.axis().degrees()),
        }
    }

    /// The cylinder where it is one.
    pub fn standing_cylinder(&self) -> Option<f64> {
        self.cylinder.filter(|&power| power != 0.0)
    }

    /// The lens, or none where nothing is entered.
    ///
    /// # Errors
    /// [`Lacks`] where the numbers are only half a lens.
    pub fn whole(&self) -> Result<Option<SphereCyl>, Lacks> {
        match (self.sphere, self.standing_cylinder(), self.axis) {
            (None, None, _) => Ok(None),
            (None, Some(_), _) => Err(Lacks::Sphere),
            (Some(sphere), None, _) => Ok(Some(SphereCyl::sphere(sphere))),
            (Some(_), Some(_), None) => Err(Lacks::Axis),
            (Some(sphere), Some(cylinder), Some(axis)) => SphereCyl::new(sphere, cylinder, axis)
                .map(Some)
                .map_err(|_| Lacks::Axis),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Half, Lacks};
    use optics::SphereCyl;

    #[test]
    fn nothing_is_no_lens() {
        assert_eq!(Half::default().whole(), Ok(None));
    }

    #[test]
    fn a_sphere_is_a_lens_and_a_nought_cylinder_is_none() {
        let half = Half {
            sphere: Some(2.5),
            cylinder: Some(0.0),
            axis: Some(90.0),
        };
        assert_eq!(half.whole(), Ok(Some(SphereCyl::sphere(2.5))));
    }

    #[test]
    fn half_a_lens_is_a_question() {
        let half = Half {
            sphere: Some(2.5),
            cylinder: Some(-1.5),
            axis: None,
        };
        assert_eq!(half.whole(), Err(Lacks::Axis));
        let half = Half {
            sphere: None,
            cylinder: Some(-1.5),
            axis: Some(90.0),
        };
        assert_eq!(half.whole(), Err(Lacks::Sphere));
    }

    #[test]
    fn a_lens_comes_apart_and_together() {
        let lens = SphereCyl::new(4.75, -1.5, 90.0).unwrap();
        assert_eq!(Half::of(Some(lens)).whole(), Ok(Some(lens)));
    }
}
