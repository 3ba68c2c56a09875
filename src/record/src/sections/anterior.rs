//! The front of the eye, with the angle of its chamber.

use ::words::record::sections as say;
use optics::limits;
use serde::{Deserialize, Serialize};

use super::kind::eyes_where;
use super::{Filled, Looks};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};

/// The front of both eyes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Anterior {
    /// With what it was looked at: a slit lamp, a loupe and a torch.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub looked_with: String,
    /// Each eye.
    pub eyes: Eyes<AnteriorEye>,
}

/// One eye.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct AnteriorEye {
    /// Lids and lashes.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub lids: Finding<Looks>,
    /// Conjunctiva and sclera.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub conjunctiva: Finding<Looks>,
    /// Cornea and tears.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub cornea: Finding<Looks>,
    /// The chamber: deep and quiet, or not.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub chamber: Finding<Looks>,
    /// The iris.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub iris: Finding<Looks>,
    /// How wide the angle is.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub angle: Finding<Angle>,
}

/// How wide the angle of the chamber is, by the way in which it was judged.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Angle {
    /// The chamber's depth at the limbus in percent of the cornea's thickness (Foster et al. 2000, from memory: 0, 5, 15,
    /// 25, 40, 75, 100 and more). Needs a slit lamp.
    LimbalPercent(f64),
    /// Van Herick's grade, 0 to 4, 4 the widest. Needs a slit lamp.
    VanHerick(u8),
    /// Seen through a gonioscope, by Shaffer's grade, 0 to 4, 4 the widest (from memory).
    Shaffer(u8),
    /// Guessed with a torch from the side: deep. An estimate, never a grade.
    TorchDeep,
    /// Guessed with a torch from the side: shallow. An estimate, never a grade.
    TorchShallow,
}

impl Angle {
    /// Whether it may close. Closure is possible at grade 2, which is a quarter of the cornea, and likely below (teaching
    /// sheets of van Herick's grades); of Shaffer's grades the same (from memory).
    pub fn may_close(self) -> bool {
        match self {
            Self::LimbalPercent(percent) => percent <= 25.0,
            Self::VanHerick(grade) | Self::Shaffer(grade) => grade <= 2,
            Self::TorchDeep => false,
            Self::TorchShallow => true,
        }
    }
}

impl AnteriorEye {
    fn parts(&self) -> [(&'static str, &Finding<Looks>); 5] {
        [
            ("lids", &self.lids),
            ("conjunctiva", &self.conjunctiva),
            ("cornea", &self.cornea),
            ("chamber", &self.chamber),
            ("iris", &self.iris),
        ]
    }

    const fn parts_mut(&mut self) -> [&mut Finding<Looks>; 5] {
        [
            &mut self.lids,
            &mut self.conjunctiva,
            &mut self.cornea,
            &mut self.chamber,
            &mut self.iris,
        ]
    }

    /// Every part normal. How wide the angle is is for judging.
    pub const fn normal() -> Self {
        Self {
            lids: Finding::NORMAL,
            conjunctiva: Finding::NORMAL,
            cornea: Finding::NORMAL,
            chamber: Finding::NORMAL,
            iris: Finding::NORMAL,
            angle: Finding::Blank,
        }
    }
}

impl Anterior {
    /// Both eyes normal.
    pub fn normal() -> Self {
        let mut normal = Self::default();
        normal.fill_normal();
        normal
    }
}

/// The widest of either scale of grades.
const WIDEST: u8 = 4;

impl Filled for Anterior {
    /// How wide the angle is is for judging.
    fn fill_normal(&mut self) -> bool {
        for eye in Eye::BOTH {
            for part in self.eyes.of_mut(eye).parts_mut() {
                part.fill(Looks::Normal);
            }
        }
        true
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        for (eye, found) in self.eyes.each() {
            for (part, finding) in found.parts() {
                checks.looks(eye, part, finding);
            }
            checks.reason(eye, "angle", &found.angle);
            let name = Checks::name(eye, "angle");
            match found.angle.done() {
                Some(Angle::LimbalPercent(percent)) => {
                    checks.range(name, limits::limbal_percent(*percent));
                }
                Some(Angle::VanHerick(grade) | Angle::Shaffer(grade)) if *grade > WIDEST => {
                    checks.say(name, say::angle_grade(&WIDEST));
                }
                _ => {}
            }
        }
        checks.done()
    }

    fn unanswered(&self) -> Vec<Eye> {
        eyes_where(&self.eyes, |eye| *eye == AnteriorEye::default())
    }
}
