//! What of a change wants a reason in an old or frail person. Each asks, none blocks.

use super::{Change, CylinderChange, Thresholds};
use crate::format::{plain, power};
use crate::{Axis, Cylinder, Eyes};
use ::words::optics::change as say;

/// A difference in floating arithmetic is no difference: 1.75 − 1.00 is not above 0.75.
const DUST: f64 = 1e-9;

/// One caution, with the figures that it speaks of.
#[derive(Debug, Clone, PartialEq)]
pub enum Caution {
    /// The sphere or the mean sphere changes much.
    Sphere {
        /// The larger of the two changes in dioptres, plus or minus.
        by: f64,
        /// Who says that it is much.
        source: String,
    },
    /// The cylinder becomes much stronger or weaker, or is taken out.
    Cylinder {
        /// Stronger by so many dioptres; weaker where negative.
        by: f64,
        /// Who says that it is much.
        source: String,
    },
    /// There was no cylinder before.
    NewCylinder {
        /// The cylinder.
        cylinder: Cylinder,
        /// Who says so.
        source: String,
    },
    /// An oblique axis goes round.
    Axis {
        /// By so many degrees.
        degrees: f64,
        /// What it amounts to, in dioptres.
        blur: f64,
        /// Who says that it is much.
        source: String,
    },
    /// The eyes are set farther apart.
    Anisometropia {
        /// By so many dioptres.
        by: f64,
        /// Who says that it is much.
        source: String,
    },
}

impl Change {
    /// What of this eye's change wants a reason.
    ///
    /// ```
    /// use optics::SphereCyl;
    /// use optics::change::{Change, Thresholds};
    /// let change = Change::between(&SphereCyl::sphere(1.0), &SphereCyl::sphere(2.0))?;
    /// let asked = change.cautions(&Thresholds::default());
    /// assert!(asked[0].question().starts_with("the sphere changes by +1.00 D"));
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    pub fn cautions(&self, thresholds: &Thresholds) -> Vec<Caution> {
        [
            self.sphere_caution(thresholds),
            self.cylinder_caution(thresholds),
            self.new_cylinder_caution(thresholds),
            self.axis_caution(thresholds),
        ]
        .into_iter()
        .flatten()
        .collect()
    }

    fn sphere_caution(&self, thresholds: &Thresholds) -> Option<Caution> {
        let (sphere, mean) = (self.sphere(), self.mean_sphere());
        let by = if sphere.abs() >= mean.abs() {
            sphere
        } else {
            mean
        };
        (by.abs() > thresholds.sphere.value() + DUST).then(|| Caution::Sphere {
            by,
            source: thresholds.sphere.source().to_owned(),
        })
    }

    fn cylinder_caution(&self, thresholds: &Thresholds) -> Option<Caution> {
        let by = self.cylinder_stronger();
        let is_new = matches!(self.cylinder(), CylinderChange::New(_));
        let much = by.abs() >= thresholds.cylinder.value() - DUST;
        (much && by != 0.0 && !is_new).then(|| Caution::Cylinder {
            by,
            source: thresholds.cylinder.source().to_owned(),
        })
    }

    fn new_cylinder_caution(&self, thresholds: &Thresholds) -> Option<Caution> {
        let CylinderChange::New(cylinder) = self.cylinder() else {
            return None;
        };
        let much = cylinder.power().abs() >= thresholds.new_cylinder.value() - DUST;
        much.then(|| Caution::NewCylinder {
            cylinder,
            source: thresholds.new_cylinder.source().to_owned(),
        })
    }

    fn axis_caution(&self, thresholds: &Thresholds) -> Option<Caution> {
        let CylinderChange::Both { from, to } = self.cylinder() else {
            return None;
        };
        let degrees = self.axis_turned().abs();
        let oblique = |axis: Axis| is_oblique(axis, thresholds.oblique_beyond.value());
        let strong = to.power().abs() >= thresholds.axis_cylinder.value() - DUST;
        let far = degrees >= thresholds.axis_degrees.value() - DUST;
        (far && strong && (oblique(from.axis()) || oblique(to.axis()))).then(|| Caution::Axis {
            degrees,
            blur: self.axis_blur(),
            source: thresholds.axis_degrees.source().to_owned(),
        })
    }
}

/// Whether an axis is farther than this from both 90 and 180.
fn is_oblique(axis: Axis, beyond: f64) -> bool {
    let from_ninety = (axis.degrees() - 90.0).abs();
    from_ninety.min(90.0 - from_ninety) > beyond
}

impl Eyes<Change> {
    /// What the change does to the difference between the eyes that wants a reason.
    pub fn caution(&self, thresholds: &Thresholds) -> Option<Caution> {
        let by = self.new_anisometropia();
        (by >= thresholds.new_anisometropia.value() - DUST).then(|| Caution::Anisometropia {
            by,
            source: thresholds.new_anisometropia.source().to_owned(),
        })
    }
}

impl Caution {
    /// Who says that it is much.
    pub fn source(&self) -> &str {
        match self {
            Self::Sphere { source, .. }
            | Self::Cylinder { source, .. }
            | Self::NewCylinder { source, .. }
            | Self::Axis { source, .. }
            | Self::Anisometropia { source, .. } => source,
        }
    }

    /// The caution as one question with its reason.
    pub fn question(&self) -> String {
        match self {
            Self::Sphere { by, source } => say::ask_sphere(&power(*by), &source),
            Self::Cylinder { by, source } => {
                let way = if *by > 0.0 {
                    say::stronger()
                } else {
                    say::weaker()
                };
                let size = by.abs();
                say::ask_cylinder(&format_args!("{size:.2}"), &way, &source)
            }
            Self::NewCylinder { cylinder, source } => {
                say::ask_new_cylinder(&power(cylinder.power()), &source)
            }
            Self::Axis {
                degrees,
                blur,
                source,
            } => say::ask_axis(&plain(*degrees, 1), &format_args!("{blur:.2}"), &source),
            Self::Anisometropia { by, source } => say::ask_apart(&format_args!("{by:.2}"), &source),
        }
    }
}
