//! Pupils and media: how wide the pupils are, how they react, and how clear the way of the light is. Before any drops.

use ::words::record::sections as say;
use optics::limits;
use serde::{Deserialize, Serialize};

use super::kind::eyes_where;
use super::one_of::one_of;
use super::{Filled, LensState, OneOf};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};

/// Pupils and media of both eyes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Pupils {
    /// Each eye.
    pub eyes: Eyes<PupilEye>,
    /// The relative afferent defect, a comparison of both.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub afferent: Finding<Afferent>,
}

/// One eye.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct PupilEye {
    /// The width in light, in millimetres.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub light_mm: Finding<f64>,
    /// The width in the dark, in millimetres.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub dark_mm: Finding<f64>,
    /// How it reacts to light in this eye.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub direct: Finding<Reaction>,
    /// How it reacts to light in the other eye.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub consensual: Finding<Reaction>,
    /// How it reacts to looking near.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub near: Finding<Reaction>,
    /// Its lens.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub lens: Finding<LensState>,
    /// Its shape where it is not round, and anything else in the way of the light, in words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// How a pupil reacts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reaction {
    /// At once.
    Brisk,
    /// Slowly or little.
    Sluggish,
    /// Not at all.
    None,
}

/// Which pupil widens when the light swings to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Afferent {
    /// Neither.
    None,
    /// This eye's: its retina or nerve answers less than the other's.
    In(Eye),
}

impl Pupils {
    /// Both react briskly and alike. How wide they are is for measuring, how clear the lens is for looking.
    pub fn normal() -> Self {
        let mut normal = Self::default();
        normal.fill_normal();
        normal
    }
}

impl Filled for Pupils {
    /// How wide the pupils are is for measuring, how clear the lens is for looking.
    fn fill_normal(&mut self) -> bool {
        for eye in Eye::BOTH {
            let eye = self.eyes.of_mut(eye);
            for reaction in [&mut eye.direct, &mut eye.consensual, &mut eye.near] {
                reaction.fill(Reaction::Brisk);
            }
        }
        self.afferent.fill(Afferent::None);
        true
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.reason_of("afferent", &self.afferent);
        for (eye, found) in self.eyes.each() {
            checks.measured(eye, "light_mm", &found.light_mm, limits::pupil_mm);
            checks.measured(eye, "dark_mm", &found.dark_mm, limits::pupil_mm);
            checks.reason(eye, "direct", &found.direct);
            checks.reason(eye, "consensual", &found.consensual);
            checks.reason(eye, "near", &found.near);
            checks.reason(eye, "lens", &found.lens);
            if let Some(lens) = found.lens.done() {
                lens.check(eye, &mut checks);
            }
        }
        checks.done()
    }

    fn unanswered(&self) -> Vec<Eye> {
        eyes_where(&self.eyes, |eye| *eye == PupilEye::default())
    }
}

one_of! {
    Reaction {
        Brisk = say::pupil_brisk,
        Sluggish = say::pupil_sluggish,
        None = say::pupil_none,
    }
}

impl OneOf for Afferent {
    fn all() -> Vec<Self> {
        vec![Self::None, Self::In(Eye::Right), Self::In(Eye::Left)]
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::None => say::defect_neither(),
            Self::In(Eye::Right) => say::defect_right(),
            Self::In(Eye::Left) => say::defect_left(),
        }
    }
}
