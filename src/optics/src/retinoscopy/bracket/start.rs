//! What an eye is expected to be before the first sweep.

use super::constants as k;
use crate::{Meridian, SphereCyl};
use serde::{Deserialize, Serialize};

/// Where an expectation comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// Last time's finding.
    LastTime,
    /// The glasses worn.
    Worn,
    /// A machine's reading.
    Machine,
    /// The fellow eye's result.
    FellowEye,
}

/// What sweeping starts from.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Start {
    /// The refraction expected.
    pub lens: SphereCyl,
    /// Where it comes from.
    pub from: Source,
}

/// A power expected in one meridian, with its standard deviation, in dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expected {
    pub power: f64,
    pub deviation: f64,
}

impl Start {
    /// What it lets expect along a meridian.
    pub(super) fn along(&self, meridian: Meridian) -> Expected {
        let deviation = match self.from {
            Source::LastTime => k::LAST_TIME,
            Source::Worn => k::WORN,
            Source::Machine => k::MACHINE,
            Source::FellowEye => k::FELLOW,
        };
        Expected {
            power: self.lens.power_along(meridian.degrees()),
            deviation,
        }
    }
}
