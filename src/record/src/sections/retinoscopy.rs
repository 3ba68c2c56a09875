//! Retinoscopy: what neutralised each eye, and how it was examined. The net is derived, never stored.

use optics::SphereCyl;
use optics::limits;
use optics::retinoscopy::{self, Neutral, Setup, WorkingDistance};
use serde::{Deserialize, Serialize};

use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};

/// What neutralised each eye.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Retinoscopy {
    /// Distance and working lens, common to both eyes.
    pub setup: Setup,
    /// The lenses that neutralised each eye, without the working lens.
    pub eyes: Eyes<Finding<Neutral>>,
}

impl Default for Retinoscopy {
    /// 67 cm, no working lens, nothing found yet.
    fn default() -> Self {
        let distance = WorkingDistance::from_cm(USUAL_CM)
            .expect("the usual working distance lies in the range that is accepted");
        Self {
            setup: Setup::new(distance, None),
            eyes: Eyes::default(),
        }
    }
}

/// About an arm's length. Common practice, no source.
const USUAL_CM: f64 = 67.0;

impl Retinoscopy {
    /// Reckons one eye's net and the way to it. Nothing where that eye was not done.
    pub fn net(&self, eye: Eye) -> Option<retinoscopy::Retinoscopy> {
        let neutral = self.eyes.of(eye).done()?;
        Some(retinoscopy::net(neutral, &self.setup))
    }

    pub(crate) fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.range(
            "cell_spacing_mm",
            limits::cell_spacing_mm(self.setup.cell_spacing_mm),
        );
        for (eye, finding) in self.eyes.each() {
            checks.reason(eye, "retinoscopy", finding);
            match finding.done() {
                Some(Neutral::TwoMeridians { first, second }) => {
                    let [one, other] = ["first", "second"].map(|part| Checks::name(eye, part));
                    checks.range(one, limits::meridian_power(first.power));
                    checks.range(other, limits::meridian_power(*second));
                }
                Some(Neutral::InFrame(lens)) => checks.lens(eye, lens),
                None => {}
            }
        }
        checks.done()
    }
}

impl Checks {
    /// Sphere and cylinder of one eye's lens.
    pub fn lens(&mut self, eye: Eye, lens: &SphereCyl) {
        self.range(Self::name(eye, "sphere"), limits::sphere(lens.sphere));
        self.range(
            Self::name(eye, "cylinder"),
            limits::cylinder(lens.cylinder_power()),
        );
    }
}
