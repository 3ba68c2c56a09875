//! Binocular: how the eyes work together.

use ::words::record::sections as say;
use optics::limits;
use optics::prism::Prism;
use serde::{Deserialize, Serialize};

use super::Filled;
use super::one_of::one_of;
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};

/// How the eyes work together.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Binocular {
    /// The cover test at far.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub cover_far: Finding<Cover>,
    /// The cover test near by.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub cover_near: Finding<Cover>,
    /// How the eyes follow a light.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub motility: Finding<Motility>,
    /// The prism that aligns the marks of a fixation disparity test before each eye; none where they are aligned.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub disparity: Finding<Eyes<Prism>>,
    /// The prism that was found to help, before each eye.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub prism: Finding<Eyes<Prism>>,
    /// Anything else: double vision, a head posture.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// What a cover test shows; an empty list where no eye moves.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Cover {
    /// Whether the glasses were worn.
    pub with_glasses: bool,
    /// What moves.
    pub deviations: Vec<Deviation>,
}

/// One deviation.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Deviation {
    /// Which way.
    pub turn: Turn,
    /// The eye that turns, where it is seen without covering; none where it is latent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub manifest: Option<Eye>,
    /// How far, in prism dioptres, where it was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub prism_pd: Option<f64>,
    /// How the eye comes back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub recovery: Option<Recovery>,
}

/// Which way an eye turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Turn {
    /// In.
    Eso,
    /// Out.
    Exo,
    /// The right eye up.
    RightHyper,
    /// The left eye up.
    LeftHyper,
}

/// How an eye comes back to fixation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Recovery {
    /// At once.
    Quick,
    /// Slowly.
    Slow,
    /// Not by itself.
    None,
}

/// How the eyes follow.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Motility {
    /// Everywhere.
    Full,
    /// Not everywhere, in words.
    Limited(String),
}

impl Binocular {
    /// Nothing moves under the cover, and the eyes follow everywhere.
    pub fn normal() -> Self {
        let mut normal = Self::default();
        normal.fill_normal();
        normal
    }
}

impl Filled for Binocular {
    fn fill_normal(&mut self) -> bool {
        self.cover_far.fill(Cover::default());
        self.cover_near.fill(Cover::default());
        self.motility.fill(Motility::Full);
        true
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        for (part, finding) in [
            ("cover_far", &self.cover_far),
            ("cover_near", &self.cover_near),
        ] {
            checks.reason_of(part, finding);
            for deviation in finding
                .done()
                .into_iter()
                .flat_map(|cover| &cover.deviations)
            {
                checks.optional(part, deviation.prism_pd, limits::prism);
            }
        }
        checks.reason_of("motility", &self.motility);
        if let Some(Motility::Limited(words)) = self.motility.done() {
            checks.text("motility", words, say::ask_motility());
        }
        for (part, finding) in [("disparity", &self.disparity), ("prism", &self.prism)] {
            checks.reason_of(part, finding);
            for (eye, prism) in finding.done().into_iter().flat_map(Eyes::each) {
                checks.prism(eye, Some(*prism));
            }
        }
        checks.done()
    }
}

one_of! {
    Turn {
        Eso = say::eso,
        Exo = say::exo,
        RightHyper = say::right_hyper,
        LeftHyper = say::left_hyper,
    }
    Recovery {
        Quick = say::recovery_quick,
        Slow = say::recovery_slow,
        None = say::recovery_none,
    }
}
