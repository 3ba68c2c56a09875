//! Drops: what was given, from which bottle, when, what was made sure of before, and what was told afterwards.
//!
//! Before a pupil is widened: the angle and the pressure, most of all in old and in hypermetropic people (summary of product
//! characteristics of tropicamide, UK). After it: blur and glare for hours, and the signs of a closing angle, told to the
//! staff of a care home as well, for blur makes people fall.

use ::words::record::sections as say;
use chrono::{NaiveDate, NaiveTime};
use optics::limits;
use serde::{Deserialize, Serialize};

use super::Filled;
use super::one_of::one_of;
use crate::check::{Checks, FieldError, blank};
use crate::finding::{Eye, Finding};

/// Drops that were given.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Drops {
    /// Each drop; not done with its reason where none was given though one was thought of.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub given: Finding<Vec<Given>>,
    /// Whether allergies were asked for before.
    pub allergies_asked: bool,
    /// Whether the depth of the angle was judged before; what was seen stands in the anterior section.
    pub angle_judged: bool,
    /// What the person was told.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub told_person: String,
    /// What the staff was told.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub told_staff: String,
    /// How the eyes bore it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub reaction: String,
}

/// One drop.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Given {
    /// What.
    pub drug: Drug,
    /// How strong, in percent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strength_percent: Option<f64>,
    /// The batch number on the bottle.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub batch: String,
    /// The last day on which it may be used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub expires: Option<NaiveDate>,
    /// When, where the tablet was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<NaiveTime>,
    /// Into which eye.
    pub into: WhichEyes,
    /// By whom, where not by the examiner.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub by: String,
}

/// One eye or both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WhichEyes {
    /// The right.
    Right,
    /// The left.
    Left,
    /// Both.
    Both,
}

impl WhichEyes {
    /// Whether this eye is among them.
    pub const fn includes(self, eye: Eye) -> bool {
        matches!(
            (self, eye),
            (Self::Both, _) | (Self::Right, Eye::Right) | (Self::Left, Eye::Left)
        )
    }
}

/// What is in a drop.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Drug {
    /// Widens the pupil for hours.
    Tropicamide,
    /// Widens the pupil and stops accommodation for a day.
    Cyclopentolate,
    /// Widens the pupil.
    Phenylephrine,
    /// Numbs the surface.
    Proxymetacaine,
    /// Numbs the surface.
    Oxybuprocaine,
    /// Stains the surface.
    Fluorescein,
    /// Another, by its name.
    Other(String),
}

impl Drug {
    /// Its name.
    pub fn name(&self) -> &str {
        match self {
            Self::Tropicamide => say::tropicamide(),
            Self::Cyclopentolate => say::cyclopentolate(),
            Self::Phenylephrine => say::phenylephrine(),
            Self::Proxymetacaine => say::proxymetacaine(),
            Self::Oxybuprocaine => say::oxybuprocaine(),
            Self::Fluorescein => say::fluorescein(),
            Self::Other(name) => name,
        }
    }

    /// Whether it widens the pupil. Of one that is not known here nobody can say.
    pub const fn dilates(&self) -> bool {
        matches!(
            self,
            Self::Tropicamide | Self::Cyclopentolate | Self::Phenylephrine
        )
    }
}

impl Drops {
    /// Every drop that was given.
    pub fn each(&self) -> impl Iterator<Item = &Given> {
        self.given.done().into_iter().flatten()
    }
}

impl Filled for Drops {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.reason_of("given", &self.given);
        for drop in self.each() {
            if matches!(&drop.drug, Drug::Other(name) if blank(name)) {
                checks.say("drug", say::ask_which_drug());
            }
            let strength = drop.strength_percent;
            checks.optional("strength_percent", strength, limits::strength_percent);
        }
        checks.done()
    }
}

one_of! {
    WhichEyes {
        Both = say::drops_both_eyes,
        Right = say::drops_right_eye,
        Left = say::drops_left_eye,
    }
}
