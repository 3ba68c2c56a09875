//! The back of the eye: how it was viewed, how well, and what was seen.

use ::words::record::sections as say;
use optics::limits;
use serde::{Deserialize, Serialize};

use super::kind::eyes_where;
use super::one_of::one_of;
use super::{Filled, Looks};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};

/// The back of both eyes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Posterior {
    /// Each eye.
    pub eyes: Eyes<PosteriorEye>,
}

/// One eye.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct PosteriorEye {
    /// With what it was viewed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub viewed: Option<Viewed>,
    /// Whether the pupil had been widened.
    pub dilated: bool,
    /// How good the view was.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub view: Finding<View>,
    /// The cup's height as a part of the disc's, 0 to 1.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub cup_to_disc: Finding<f64>,
    /// How large the disc is, without which the cup says little.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub disc_size: Option<DiscSize>,
    /// The disc: rim, colour, haemorrhage.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub disc: Finding<Looks>,
    /// The macula.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub macula: Finding<Looks>,
    /// The vessels.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub vessels: Finding<Looks>,
    /// The periphery, as far as it was seen.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub periphery: Finding<Looks>,
}

/// With what the back of the eye was viewed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Viewed {
    /// A direct ophthalmoscope.
    Direct,
    /// A lens held before a slit lamp.
    SlitLamp,
    /// An indirect ophthalmoscope worn on the head.
    HeadWorn,
    /// A camera.
    Camera,
}

/// How good the view was.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum View {
    /// Clear.
    Clear,
    /// Hazy.
    Hazy,
    /// Hardly anything seen.
    Poor,
    /// Nothing seen.
    None,
}

/// How large a disc is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DiscSize {
    /// Small.
    Small,
    /// Ordinary.
    Medium,
    /// Large.
    Large,
}

impl PosteriorEye {
    fn parts(&self) -> [(&'static str, &Finding<Looks>); 4] {
        [
            ("disc", &self.disc),
            ("macula", &self.macula),
            ("vessels", &self.vessels),
            ("periphery", &self.periphery),
        ]
    }

    const fn parts_mut(&mut self) -> [&mut Finding<Looks>; 4] {
        [
            &mut self.disc,
            &mut self.macula,
            &mut self.vessels,
            &mut self.periphery,
        ]
    }

    /// A clear view with every part normal. How it was viewed and how large the cup is are for saying.
    pub fn normal() -> Self {
        Self {
            view: Finding::Done(View::Clear),
            disc: Finding::NORMAL,
            macula: Finding::NORMAL,
            vessels: Finding::NORMAL,
            periphery: Finding::NORMAL,
            ..Self::default()
        }
    }
}

impl Posterior {
    /// Both eyes normal.
    pub fn normal() -> Self {
        let mut normal = Self::default();
        normal.fill_normal();
        normal
    }
}

impl Filled for Posterior {
    /// How it was viewed and how large the cup is are for saying.
    fn fill_normal(&mut self) -> bool {
        for eye in Eye::BOTH {
            let eye = self.eyes.of_mut(eye);
            eye.view.fill(View::Clear);
            for part in eye.parts_mut() {
                part.fill(Looks::Normal);
            }
        }
        true
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        for (eye, found) in self.eyes.each() {
            checks.reason(eye, "view", &found.view);
            checks.measured(eye, "cup_to_disc", &found.cup_to_disc, limits::cup_to_disc);
            for (part, finding) in found.parts() {
                checks.looks(eye, part, finding);
            }
        }
        checks.done()
    }

    fn unanswered(&self) -> Vec<Eye> {
        eyes_where(&self.eyes, |eye| *eye == PosteriorEye::default())
    }
}

one_of! {
    Viewed {
        Direct = say::viewed_direct,
        SlitLamp = say::viewed_slit_lamp,
        HeadWorn = say::viewed_head,
        Camera = say::viewed_camera,
    }
    View {
        Clear = say::view_clear,
        Hazy = say::view_hazy,
        Poor = say::view_poor,
        None = say::view_none,
    }
    DiscSize {
        Small = say::disc_small,
        Medium = say::disc_ordinary,
        Large = say::disc_large,
    }
}
